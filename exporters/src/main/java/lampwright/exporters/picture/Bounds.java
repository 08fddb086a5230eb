package lampwright.exporters.picture;

/** The least rectangle around something drawn, lines taken as if they had no width. */
public record Bounds(double left, double top, double right, double bottom) {
  /** Around this point alone. */
  static Bounds at(double x, double y) {
    return new Bounds(x, y, x, y);
  }

  Bounds with(double x, double y) {
    return new Bounds(Math.min(left, x), Math.min(top, y), Math.max(right, x), Math.max(bottom, y));
  }

  /** Around this and another. */
  public Bounds with(Bounds other) {
    return with(other.left, other.top).with(other.right, other.bottom);
  }

  public double width() {
    return right - left;
  }

  public double height() {
    return bottom - top;
  }
}
