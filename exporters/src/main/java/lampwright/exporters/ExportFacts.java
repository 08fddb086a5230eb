package lampwright.exporters;

import com.google.common.collect.ImmutableList;
import java.util.List;
import lampwright.engine.light.Fault;
import lampwright.engine.review.Code;
import lampwright.engine.review.Figure;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Subject;

/**
 * What can be said of an export beforehand.
 *
 * @param format the exporter's key
 * @param tableBytes bytes of the frame table: frames x bytes per frame
 * @param files names of the files that it writes, in that order
 * @param cautions what to know before they are used
 * @param faults why it cannot be done; empty if it can
 */
public record ExportFacts(
    String format,
    long tableBytes,
    List<String> files,
    List<Finding> cautions,
    List<Fault> faults) {
  public ExportFacts {
    files = List.copyOf(files);
    cautions = List.copyOf(cautions);
    faults = List.copyOf(faults);
  }

  /** The facts of an export of which there is nothing to know. */
  public ExportFacts(String format, long tableBytes, List<String> files) {
    this(format, tableBytes, files, List.of(), List.of());
  }

  /** Why it can't be done, and what to know before its files are used. */
  public List<Finding> findings() {
    ImmutableList.Builder<Finding> all = ImmutableList.builder();
    for (Fault fault : faults) {
      all.add(
          Finding.of(Code.EXPORT_REFUSED, new Subject.OneExport(format))
              .with("value", Figure.words(fault.field() + ": " + fault.value()))
              .with("allowed", Figure.words(fault.allowed()))
              .make());
    }
    return all.addAll(cautions).build();
  }
}
