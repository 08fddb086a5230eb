package lampwright.exporters.picture;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** One thing that is drawn. Lengths are pixels; x grows to the right and y downwards. */
public sealed interface Mark {
  /** A point. */
  record Point(double x, double y) {}

  /** A straight line. */
  record Line(double x1, double y1, double x2, double y2, Stroke stroke) implements Mark {}

  /**
   * A rectangle.
   *
   * @param x of its left edge
   * @param y of its upper edge
   */
  record Rect(
      double x, double y, double width, double height, Optional<Ink> fill, Optional<Stroke> stroke)
      implements Mark {}

  /** An ellipse around a point. */
  record Ellipse(
      double x,
      double y,
      double radiusX,
      double radiusY,
      Optional<Ink> fill,
      Optional<Stroke> stroke)
      implements Mark {}

  /**
   * Straight lines from corner to corner.
   *
   * @param corners at least three of a closed path, two of an open one
   * @param closed whether a line leads back to the first
   * @param fill none of an open path
   */
  record Path(List<Point> corners, boolean closed, Optional<Ink> fill, Optional<Stroke> stroke)
      implements Mark {
    public Path {
      corners = List.copyOf(corners);
      int least = closed ? 3 : 2;
      if (corners.size() < least) {
        throw new IllegalArgumentException(
            "corners: " + corners.size() + ": must be at least " + least);
      }
    }
  }

  /**
   * Lines and curves written as the path data of SVG.
   *
   * @param data in units of its own
   * @param x of its origin
   * @param y of its origin
   * @param scale pixels for a unit, above 0
   * @param stroke whose width is in pixels, whatever the scale
   */
  record Curves(
      String data, double x, double y, double scale, Optional<Ink> fill, Optional<Stroke> stroke)
      implements Mark {}

  /** Which side of a text its point is on. */
  enum Side {
    LEFT,
    MIDDLE
  }

  /** Which height of a text its point is at. */
  enum Height {
    TOP,
    CENTRE,
    BOTTOM
  }

  /**
   * One line of text.
   *
   * @param size of the type
   * @param bold whether it is of heavy type
   * @param most wider text is squeezed to this
   */
  record Text(
      double x,
      double y,
      String text,
      double size,
      boolean bold,
      Side side,
      Height height,
      Ink ink,
      OptionalDouble most)
      implements Mark {}

  /**
   * One line of text on a plate above a point, shifted so that it stays within the drawing.
   *
   * @param x of the plate's middle
   * @param bottom of the plate
   * @param size of the type
   */
  record Label(double x, double bottom, String text, double size, Ink ink, Ink plate)
      implements Mark {
    /** Room of the plate to the left and to the right of the text. */
    public static final double ROOM = 4;

    /** What the plate keeps from the drawing's edges. */
    public static final double EDGE = 2;

    /** The plate's left edge, for text of this width in a drawing of this width. */
    public double left(double textWidth, double drawingWidth) {
      double most = drawingWidth - textWidth - 2 * ROOM - EDGE;
      return Math.max(EDGE, Math.min(most, x - textWidth / 2 - ROOM));
    }

    /** The plate's upper edge, for text of this height. */
    public double top(double textHeight) {
      return Math.max(EDGE, bottom - textHeight - EDGE);
    }
  }

  /** Colours side by side, as a strip of light; each is as wide as the others. */
  record Strip(double x, double y, double width, double height, ColourRow colours)
      implements Mark {}
}
