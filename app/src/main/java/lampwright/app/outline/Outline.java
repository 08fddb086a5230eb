package lampwright.app.outline;

import java.util.List;
import java.util.function.Predicate;
import lampwright.exporters.picture.Bounds;
import lampwright.exporters.picture.PathData;

/**
 * One side of a model as a drawing. Lengths are units of the drawing; x grows to the right and y
 * downwards. All sides of a kind have the same scale.
 *
 * @param width of the drawing, above 0
 * @param height of the drawing, above 0
 * @param pieces from the lowest to the uppermost, at least one
 */
public record Outline(double width, double height, List<Piece> pieces) {
  /** One area or a set of lines. */
  public record Piece(Tone tone, PathData path) {}

  public Outline {
    pieces = List.copyOf(pieces);
    if (!(width > 0) || !(height > 0) || pieces.isEmpty()) {
      throw new IllegalArgumentException(
          width + " x " + height + ", " + pieces.size() + " pieces: needs a size and pieces");
    }
  }

  /**
   * The least rectangle around some of its pieces.
   *
   * @throws IllegalArgumentException if there are none
   */
  public Bounds bounds(Predicate<Piece> which) {
    return pieces.stream()
        .filter(which)
        .map(piece -> piece.path().bounds())
        .reduce(Bounds::with)
        .orElseThrow(() -> new IllegalArgumentException("no such piece"));
  }
}
