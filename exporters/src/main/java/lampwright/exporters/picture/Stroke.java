package lampwright.exporters.picture;

/**
 * A line's look.
 *
 * @param width in pixels
 */
public record Stroke(Ink ink, double width) {
  /** A line of one pixel. */
  public static Stroke thin(Ink ink) {
    return new Stroke(ink, 1);
  }
}
