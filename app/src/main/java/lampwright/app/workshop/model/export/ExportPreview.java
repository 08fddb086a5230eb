package lampwright.app.workshop.model.export;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import lampwright.engine.review.Finding;

/**
 * What an export will write, before anything is written.
 *
 * @param sizes of the scenes selected
 * @param places files and folders that it will write, and which of them stand already
 * @param findings what to know before they are used, gravest first
 * @param refusals why it can't be done; empty if it can, as far as is known
 * @param complete whether all is measured, or there is more to come
 */
public record ExportPreview(
    List<Size> sizes,
    List<Place> places,
    List<Finding> findings,
    List<String> refusals,
    boolean complete) {
  /** Nothing is known yet. */
  public static final ExportPreview NOTHING =
      new ExportPreview(List.of(), List.of(), List.of(), List.of(), false);

  /**
   * The size of one scene.
   *
   * @param scene id
   * @param rawBytes of its frame table
   * @param packedBytes none if it can't be packed, or is not packed yet
   * @param rawShare of the controller's program memory, 1 all of it; none if there is none to share
   * @param packedShare likewise
   */
  public record Size(
      String scene,
      long rawBytes,
      OptionalLong packedBytes,
      OptionalDouble rawShare,
      OptionalDouble packedShare) {}

  /**
   * Where something will be written.
   *
   * @param path of the file or folder
   * @param stands whether something stands there that will be replaced
   */
  public record Place(Path path, boolean stands) {}

  public ExportPreview {
    sizes = List.copyOf(sizes);
    places = List.copyOf(places);
    findings = List.copyOf(findings);
    refusals = List.copyOf(refusals);
  }
}
