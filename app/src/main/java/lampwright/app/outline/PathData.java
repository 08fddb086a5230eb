package lampwright.app.outline;

/**
 * Lines of a drawing, written as the path data of SVG in absolute coordinates: M, L, H, V, C, Q, A
 * and Z, each with its letter.
 *
 * @param text the path data
 */
public record PathData(String text) {
  /**
   * Lines of a drawing.
   *
   * @throws IllegalArgumentException if the text is no such path data; its message says where
   */
  public PathData {
    PathReader.bounds(text);
  }

  /** The least rectangle around it; curves by points along them, within a hundredth of a unit. */
  public Bounds bounds() {
    return PathReader.bounds(text);
  }
}
