package lampwright.exporters;

import java.util.List;
import lampwright.engine.light.Fault;

/**
 * What can be said of an export beforehand.
 *
 * @param tableBytes bytes of the frame table: frames x bytes a frame
 * @param files names of the files that it writes, in that order
 * @param cautions what to know before they are used
 * @param faults why it cannot be done; empty if it can
 */
public record ExportFacts(
    long tableBytes, List<String> files, List<Caution> cautions, List<Fault> faults) {
  public ExportFacts {
    files = List.copyOf(files);
    cautions = List.copyOf(cautions);
    faults = List.copyOf(faults);
  }
}
