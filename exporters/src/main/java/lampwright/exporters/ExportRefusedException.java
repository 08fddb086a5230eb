package lampwright.exporters;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import lampwright.engine.light.Fault;

/** Thrown where a format cannot hold what it is asked to; carries every reason. */
public final class ExportRefusedException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final String format;
  private final transient Optional<String> scene;
  private final transient List<Fault> faults;

  /**
   * A refusal.
   *
   * @param format the exporter's key
   * @param scene the scene's id
   */
  public ExportRefusedException(String format, String scene, List<Fault> faults) {
    super(message(format + " of scene " + scene, faults));
    this.format = format;
    this.scene = Optional.of(scene);
    this.faults = List.copyOf(faults);
  }

  /**
   * A refusal of several scenes together.
   *
   * @param format the exporter's key
   */
  public ExportRefusedException(String format, List<Fault> faults) {
    super(message(format, faults));
    this.format = format;
    this.scene = Optional.empty();
    this.faults = List.copyOf(faults);
  }

  private static String message(String what, List<Fault> faults) {
    return faults.stream().map(Fault::toString).collect(Collectors.joining("; ", what + ": ", ""));
  }

  /** The exporter's key. */
  public String format() {
    return format;
  }

  /** The scene's id; none if all scenes were to go into one folder. */
  public Optional<String> scene() {
    return scene;
  }

  /** Every reason, at least one. */
  public List<Fault> faults() {
    return faults;
  }
}
