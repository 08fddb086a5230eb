package lampwright.exporters;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import lampwright.engine.check.Fault;
import lampwright.engine.review.Finding;

/** Thrown where a format cannot hold what it is asked to; carries every reason. */
public final class ExportRefusedException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final String format;
  private final transient Optional<String> scene;
  private final transient List<Finding> refusals;

  /**
   * A refusal.
   *
   * @param format the exporter's key
   * @param scene the scene's id; none if several scenes together were to go into one folder
   * @param refusals every reason, at least one
   */
  public ExportRefusedException(String format, Optional<String> scene, List<Finding> refusals) {
    super(message(scene.map(id -> "scene " + id + ": ").orElse(format + ": "), refusals));
    this.format = format;
    this.scene = scene;
    this.refusals = List.copyOf(refusals);
  }

  /** A refusal of one scene for faults of its table. */
  public ExportRefusedException(String format, String scene, List<Fault> faults) {
    this(format, Optional.of(scene), ExportFacts.refused(format, faults));
  }

  /**
   * Refuses if there is a reason to.
   *
   * @param format the exporter's key
   * @param scene the scene's id; none if several scenes together were to go into one folder
   * @throws ExportRefusedException with every reason
   */
  public static void throwIfAny(String format, Optional<String> scene, List<Finding> refusals) {
    if (!refusals.isEmpty()) {
      throw new ExportRefusedException(format, scene, refusals);
    }
  }

  private static String message(String scene, List<Finding> refusals) {
    return refusals.stream().map(Finding::text).collect(Collectors.joining("; ", scene, ""));
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
  public List<Finding> refusals() {
    return refusals;
  }
}
