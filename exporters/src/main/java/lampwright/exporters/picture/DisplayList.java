package lampwright.exporters.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A drawing: marks from the lowest to the uppermost.
 *
 * @param width in pixels
 * @param height in pixels
 */
public record DisplayList(double width, double height, List<Mark> marks) {
  public DisplayList {
    marks = List.copyOf(marks);
  }

  /** Collects marks. */
  public static final class Builder {
    private final double width;
    private final double height;
    private final List<Mark> marks = new ArrayList<>();

    /** An empty drawing of this size, in pixels. */
    public Builder(double width, double height) {
      this.width = width;
      this.height = height;
    }

    public double width() {
      return width;
    }

    public double height() {
      return height;
    }

    /** Adds a mark above all others. */
    public Builder add(Mark mark) {
      marks.add(mark);
      return this;
    }

    public Builder line(double x1, double y1, double x2, double y2, Stroke stroke) {
      return add(new Mark.Line(x1, y1, x2, y2, stroke));
    }

    public Builder fillRect(double x, double y, double wide, double high, Ink fill) {
      return add(new Mark.Rect(x, y, wide, high, Optional.of(fill), Optional.empty()));
    }

    public Builder strokeRect(double x, double y, double wide, double high, Stroke stroke) {
      return add(new Mark.Rect(x, y, wide, high, Optional.empty(), Optional.of(stroke)));
    }

    /** Adds text that begins at a point. */
    public Builder text(double x, double y, String text, double size, Mark.Height height, Ink ink) {
      return add(
          new Mark.Text(
              x, y, text, size, false, Mark.Side.LEFT, height, ink, OptionalDouble.empty()));
    }

    /** Adds text that begins at a point and is squeezed to a width. */
    public Builder text(
        double x, double y, String text, double size, Mark.Height height, Ink ink, double most) {
      return add(
          new Mark.Text(
              x, y, text, size, false, Mark.Side.LEFT, height, ink, OptionalDouble.of(most)));
    }

    /** Adds text around a point. */
    public Builder centred(double x, double y, String text, double size, Ink ink) {
      return add(
          new Mark.Text(
              x,
              y,
              text,
              size,
              false,
              Mark.Side.MIDDLE,
              Mark.Height.CENTRE,
              ink,
              OptionalDouble.empty()));
    }

    public DisplayList build() {
      return new DisplayList(width, height, marks);
    }
  }
}
