package lampwright.exporters.picture;

import org.jspecify.annotations.Nullable;

/**
 * Lines of a drawing, written as the path data of SVG in absolute coordinates: M, L, H, V, C, Q, A
 * and Z, each with its letter.
 *
 * @param text the path data
 */
public record PathData(String text) {
  /** Is led along the lines; curves as points along them, within a hundredth of a unit. */
  public interface Trace {
    /** Begins at a point, without a line to it. */
    void begin(double x, double y);

    /** A line from the point before. */
    void line(double x, double y);

    /** A line to where it began last. */
    void close();
  }

  /**
   * Lines of a drawing.
   *
   * @throws IllegalArgumentException if the text is no such path data; its message says where
   */
  public PathData {
    PathReader.follow(text, new Around());
  }

  /** Follows all lines in their order. */
  public void follow(Trace trace) {
    PathReader.follow(text, trace);
  }

  /** The least rectangle around it. */
  public Bounds bounds() {
    Around around = new Around();
    follow(around);
    return java.util.Objects.requireNonNull(around.bounds, "a path begins somewhere");
  }

  private static final class Around implements Trace {
    private @Nullable Bounds bounds;

    @Override
    public void begin(double x, double y) {
      line(x, y);
    }

    @Override
    public void line(double x, double y) {
      bounds = bounds == null ? Bounds.at(x, y) : bounds.with(x, y);
    }

    @Override
    public void close() {
      // It leads to a point that is within already.
    }
  }
}
