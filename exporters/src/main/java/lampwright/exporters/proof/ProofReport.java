package lampwright.exporters.proof;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;

/**
 * What a proof found out.
 *
 * @param passed whether nothing was wrong, and all frames came
 * @param figures by JSON pointer
 * @param faults what was wrong, in words; the first few
 */
public record ProofReport(
    boolean passed, ImmutableMap<String, String> figures, ImmutableList<String> faults) {}
