package lampwright.exporters;

import java.util.List;
import java.util.stream.Collectors;
import lampwright.engine.light.Fault;

/** Thrown where a format cannot hold what it is asked to; carries every reason. */
public final class ExportRefusedException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final String format;
  private final String scene;
  private final transient List<Fault> faults;

  /**
   * A refusal.
   *
   * @param format the exporter's key
   * @param scene the scene's id
   */
  public ExportRefusedException(String format, String scene, List<Fault> faults) {
    super(
        faults.stream()
            .map(Fault::toString)
            .collect(Collectors.joining("; ", format + " of scene " + scene + ": ", "")));
    this.format = format;
    this.scene = scene;
    this.faults = List.copyOf(faults);
  }

  /** The exporter's key. */
  public String format() {
    return format;
  }

  /** The scene's id. */
  public String scene() {
    return scene;
  }

  /** Every reason, at least one. */
  public List<Fault> faults() {
    return faults;
  }
}
