package lampwright.app.workshop.view.drawing;

import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Paint;
import lampwright.app.workshop.model.drawing.Dots;
import lampwright.engine.rig.View;

/** A plain vehicle of our own, drawn where there is no picture of the model. */
final class Outline {
  private Outline() {}

  /** Width of the drawing by its height. */
  static double aspect(View view) {
    return switch (view) {
      case FRONT, REAR -> 1.0;
      case SIDE -> 1.75;
      case TOP -> 1 / 1.75;
    };
  }

  static void draw(GraphicsContext g, View view, Dots.Frame f, Paint body, Paint line) {
    g.save();
    g.translate(f.x(), f.y());
    g.scale(f.width(), f.height());
    g.setFill(body);
    g.setStroke(line);
    g.setLineWidth(1.4 / Math.min(f.width(), f.height()));
    switch (view) {
      case SIDE -> side(g);
      case FRONT -> end(g, true);
      case REAR -> end(g, false);
      case TOP -> top(g);
    }
    g.restore();
  }

  // Facing left.
  private static void side(GraphicsContext g) {
    shape(
        g, 0.05, 0.74, 0.05, 0.52, 0.08, 0.48, 0.11, 0.24, 0.14, 0.20, 0.30, 0.20, 0.32, 0.23, 0.32,
        0.56, 0.35, 0.60, 0.35, 0.46, 0.93, 0.46, 0.95, 0.50, 0.95, 0.74);
    shape(g, 0.115, 0.46, 0.14, 0.26, 0.20, 0.26, 0.20, 0.46);
    shape(g, 0.215, 0.46, 0.215, 0.26, 0.295, 0.26, 0.295, 0.46);
    g.strokeLine(0.207, 0.23, 0.207, 0.72);
    g.strokeLine(0.05, 0.66, 0.32, 0.66);
    wheel(g, 0.17, 0.76, 0.060, 0.105);
    wheel(g, 0.68, 0.76, 0.060, 0.105);
    wheel(g, 0.82, 0.76, 0.060, 0.105);
  }

  private static void end(GraphicsContext g, boolean front) {
    shape(
        g, 0.18, 0.80, 0.16, 0.52, 0.20, 0.46, 0.24, 0.20, 0.28, 0.15, 0.72, 0.15, 0.76, 0.20, 0.80,
        0.46, 0.84, 0.52, 0.82, 0.80);
    if (front) {
      shape(g, 0.25, 0.45, 0.28, 0.22, 0.72, 0.22, 0.75, 0.45);
      for (int i = 0; i < 4; i++) {
        g.strokeLine(0.34, 0.54 + i * 0.04, 0.66, 0.54 + i * 0.04);
      }
    } else {
      shape(g, 0.36, 0.40, 0.36, 0.24, 0.64, 0.24, 0.64, 0.40);
      g.strokeRect(0.18, 0.48, 0.64, 0.06);
      g.strokeLine(0.5, 0.54, 0.5, 0.70);
    }
    g.strokeRect(0.14, 0.72, 0.72, 0.08);
    g.fillRect(0.20, 0.80, 0.14, 0.12);
    g.strokeRect(0.20, 0.80, 0.14, 0.12);
    g.fillRect(0.66, 0.80, 0.14, 0.12);
    g.strokeRect(0.66, 0.80, 0.14, 0.12);
  }

  // Front above, as one looks at a plan.
  private static void top(GraphicsContext g) {
    shape(
        g, 0.30, 0.05, 0.24, 0.07, 0.22, 0.32, 0.26, 0.34, 0.74, 0.34, 0.78, 0.32, 0.76, 0.07, 0.70,
        0.05);
    shape(g, 0.28, 0.36, 0.28, 0.95, 0.72, 0.95, 0.72, 0.36);
    shape(g, 0.30, 0.10, 0.32, 0.14, 0.68, 0.14, 0.70, 0.10);
    g.strokeRect(0.32, 0.17, 0.36, 0.14);
    g.strokeLine(0.5, 0.34, 0.5, 0.36);
    g.strokeRect(0.33, 0.40, 0.34, 0.51);
  }

  private static void wheel(GraphicsContext g, double x, double y, double rx, double ry) {
    g.fillOval(x - rx, y - ry, 2 * rx, 2 * ry);
    g.strokeOval(x - rx, y - ry, 2 * rx, 2 * ry);
    g.strokeOval(x - rx * 0.5, y - ry * 0.5, rx, ry);
  }

  private static void shape(GraphicsContext g, double... points) {
    double[] x = new double[points.length / 2];
    double[] y = new double[points.length / 2];
    for (int i = 0; i < x.length; i++) {
      x[i] = points[2 * i];
      y[i] = points[2 * i + 1];
    }
    g.fillPolygon(x, y, x.length);
    g.strokePolygon(x, y, x.length);
  }
}
