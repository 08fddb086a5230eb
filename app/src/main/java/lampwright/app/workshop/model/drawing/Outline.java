package lampwright.app.workshop.model.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.app.picture.DisplayList;
import lampwright.app.picture.Ink;
import lampwright.app.picture.Mark;
import lampwright.app.picture.Stroke;
import lampwright.engine.rig.View;

/** A plain vehicle of our own, drawn where there is no picture of the model. */
public final class Outline {
  private static final double LINE_WIDTH = 1.4;

  private final DisplayList.Builder list;
  private final Dots.Frame frame;
  private final Ink body;
  private final Stroke line;

  private Outline(DisplayList.Builder list, Dots.Frame frame, Ink body, Ink line) {
    this.list = list;
    this.frame = frame;
    this.body = body;
    this.line = new Stroke(line, LINE_WIDTH);
  }

  /** Width of the drawing by its height. */
  public static double aspect(View view) {
    return switch (view) {
      case FRONT, REAR -> 1.0;
      case SIDE -> 1.75;
      case TOP -> 1 / 1.75;
    };
  }

  /** Adds one side of it to a drawing. */
  public static void add(
      DisplayList.Builder list, View view, Dots.Frame frame, Ink body, Ink line) {
    Outline outline = new Outline(list, frame, body, line);
    switch (view) {
      case SIDE -> outline.side();
      case FRONT -> outline.end(true);
      case REAR -> outline.end(false);
      case TOP -> outline.top();
    }
  }

  // Facing left.
  private void side() {
    shape(
        0.05, 0.74, 0.05, 0.52, 0.08, 0.48, 0.11, 0.24, 0.14, 0.20, 0.30, 0.20, 0.32, 0.23, 0.32,
        0.56, 0.35, 0.60, 0.35, 0.46, 0.93, 0.46, 0.95, 0.50, 0.95, 0.74);
    shape(0.115, 0.46, 0.14, 0.26, 0.20, 0.26, 0.20, 0.46);
    shape(0.215, 0.46, 0.215, 0.26, 0.295, 0.26, 0.295, 0.46);
    line(0.207, 0.23, 0.207, 0.72);
    line(0.05, 0.66, 0.32, 0.66);
    wheel(0.17, 0.76, 0.060, 0.105);
    wheel(0.68, 0.76, 0.060, 0.105);
    wheel(0.82, 0.76, 0.060, 0.105);
  }

  private void end(boolean front) {
    shape(
        0.18, 0.80, 0.16, 0.52, 0.20, 0.46, 0.24, 0.20, 0.28, 0.15, 0.72, 0.15, 0.76, 0.20, 0.80,
        0.46, 0.84, 0.52, 0.82, 0.80);
    if (front) {
      shape(0.25, 0.45, 0.28, 0.22, 0.72, 0.22, 0.75, 0.45);
      for (int i = 0; i < 4; i++) {
        line(0.34, 0.54 + i * 0.04, 0.66, 0.54 + i * 0.04);
      }
    } else {
      shape(0.36, 0.40, 0.36, 0.24, 0.64, 0.24, 0.64, 0.40);
      rect(false, 0.18, 0.48, 0.64, 0.06);
      line(0.5, 0.54, 0.5, 0.70);
    }
    rect(false, 0.14, 0.72, 0.72, 0.08);
    rect(true, 0.20, 0.80, 0.14, 0.12);
    rect(true, 0.66, 0.80, 0.14, 0.12);
  }

  // Front above, as one looks at a plan.
  private void top() {
    shape(
        0.30, 0.05, 0.24, 0.07, 0.22, 0.32, 0.26, 0.34, 0.74, 0.34, 0.78, 0.32, 0.76, 0.07, 0.70,
        0.05);
    shape(0.28, 0.36, 0.28, 0.95, 0.72, 0.95, 0.72, 0.36);
    shape(0.30, 0.10, 0.32, 0.14, 0.68, 0.14, 0.70, 0.10);
    rect(false, 0.32, 0.17, 0.36, 0.14);
    line(0.5, 0.34, 0.5, 0.36);
    rect(false, 0.33, 0.40, 0.34, 0.51);
  }

  private void wheel(double x, double y, double radiusX, double radiusY) {
    ellipse(x, y, radiusX, radiusY, Optional.of(body));
    ellipse(x, y, radiusX / 2, radiusY / 2, Optional.empty());
  }

  private void ellipse(double x, double y, double radiusX, double radiusY, Optional<Ink> fill) {
    list.add(
        new Mark.Ellipse(
            x(x),
            y(y),
            radiusX * frame.width(),
            radiusY * frame.height(),
            fill,
            Optional.of(line)));
  }

  private void line(double x1, double y1, double x2, double y2) {
    list.line(x(x1), y(y1), x(x2), y(y2), line);
  }

  private void rect(boolean filled, double x, double y, double width, double height) {
    list.add(
        new Mark.Rect(
            x(x),
            y(y),
            width * frame.width(),
            height * frame.height(),
            filled ? Optional.of(body) : Optional.empty(),
            Optional.of(line)));
  }

  private void shape(double... points) {
    List<Mark.Point> corners = new ArrayList<>();
    for (int i = 0; i < points.length; i += 2) {
      corners.add(new Mark.Point(x(points[i]), y(points[i + 1])));
    }
    list.add(new Mark.Path(corners, true, Optional.of(body), Optional.of(line)));
  }

  // Of the drawing's width and height, 0 to 1, to pixels.
  private double x(double share) {
    return frame.x() + share * frame.width();
  }

  private double y(double share) {
    return frame.y() + share * frame.height();
  }
}
