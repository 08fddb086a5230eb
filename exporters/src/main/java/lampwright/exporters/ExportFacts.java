package lampwright.exporters;

import com.google.common.collect.ImmutableList;
import java.util.List;
import lampwright.engine.check.Fault;
import lampwright.engine.review.Code;
import lampwright.engine.review.Figure;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Severity;
import lampwright.engine.review.Subject;

/**
 * What can be said of an export beforehand.
 *
 * @param format the exporter's key
 * @param tableBytes bytes of the frame table: frames x bytes per frame
 * @param files names of the files that it writes, in that order
 * @param findings why it can't be done, and what to know before its files are used
 */
public record ExportFacts(
    String format, long tableBytes, List<String> files, List<Finding> findings) {
  public ExportFacts {
    files = List.copyOf(files);
    findings = List.copyOf(findings);
  }

  /** The facts of an export of which there is nothing to know. */
  public ExportFacts(String format, long tableBytes, List<String> files) {
    this(format, tableBytes, files, List.of());
  }

  /** The facts of an export with what it refuses and what to know. */
  public ExportFacts(
      String format,
      long tableBytes,
      List<String> files,
      List<Finding> cautions,
      List<Fault> faults) {
    this(
        format,
        tableBytes,
        files,
        ImmutableList.<Finding>builder().addAll(refused(format, faults)).addAll(cautions).build());
  }

  /** The same with more findings before the others. */
  public ExportFacts with(List<Finding> more) {
    return new ExportFacts(
        format,
        tableBytes,
        files,
        ImmutableList.<Finding>builder().addAll(more).addAll(findings).build());
  }

  /** Why it can't be done; empty if it can. */
  public List<Finding> refusals() {
    return findings.stream().filter(f -> f.severity() == Severity.ERROR).toList();
  }

  /** What a format refuses, as findings. */
  public static List<Finding> refused(String format, List<Fault> faults) {
    return faults.stream()
        .map(
            fault ->
                Finding.of(Code.EXPORT_REFUSED, new Subject.OneExport(format))
                    .with("value", Figure.words(fault.field() + ": " + fault.value()))
                    .with("allowed", Figure.words(fault.allowed()))
                    .make())
        .toList();
  }
}
