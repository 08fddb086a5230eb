package lampwright.app.workshop.view;

import java.util.Optional;
import java.util.function.Function;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Paint;
import javafx.scene.text.Font;
import javafx.scene.text.Text;
import javafx.scene.text.TextAlignment;
import lampwright.app.picture.DisplayList;
import lampwright.app.picture.Ink;
import lampwright.app.picture.Shape;
import lampwright.app.picture.Stroke;

/** Paints a drawing on a canvas. */
public final class DisplayPainter {
  private final GraphicsContext g;
  private final Function<Ink, Paint> inks;

  private DisplayPainter(GraphicsContext g, Function<Ink, Paint> inks) {
    this.g = g;
    this.inks = inks;
  }

  /** Paints it over what is there. */
  public static void paint(DisplayList list, GraphicsContext g, Function<Ink, Paint> inks) {
    DisplayPainter painter = new DisplayPainter(g, inks);
    g.save();
    list.shapes().forEach(shape -> painter.shape(shape, list.width()));
    g.restore();
  }

  private void shape(Shape shape, double width) {
    if (shape instanceof Shape.Line line) {
      stroke(line.stroke());
      g.strokeLine(line.x1(), line.y1(), line.x2(), line.y2());
    } else if (shape instanceof Shape.Rect r) {
      paint(
          r.fill(),
          () -> g.fillRect(r.x(), r.y(), r.width(), r.height()),
          r.stroke(),
          () -> g.strokeRect(r.x(), r.y(), r.width(), r.height()));
    } else if (shape instanceof Shape.Ellipse e) {
      double left = e.x() - e.radiusX();
      double top = e.y() - e.radiusY();
      paint(
          e.fill(),
          () -> g.fillOval(left, top, 2 * e.radiusX(), 2 * e.radiusY()),
          e.stroke(),
          () -> g.strokeOval(left, top, 2 * e.radiusX(), 2 * e.radiusY()));
    } else if (shape instanceof Shape.Path path) {
      double[] x = path.corners().stream().mapToDouble(Shape.Point::x).toArray();
      double[] y = path.corners().stream().mapToDouble(Shape.Point::y).toArray();
      paint(
          path.fill(),
          () -> g.fillPolygon(x, y, x.length),
          path.stroke(),
          () -> g.strokePolygon(x, y, x.length));
    } else if (shape instanceof Shape.Text text) {
      text(text);
    } else if (shape instanceof Shape.Label label) {
      label(label, width);
    } else if (shape instanceof Shape.Strip strip) {
      strip(strip);
    }
  }

  private void paint(
      Optional<Ink> fill, Runnable filled, Optional<Stroke> stroke, Runnable stroked) {
    fill.ifPresent(
        ink -> {
          g.setFill(inks.apply(ink));
          filled.run();
        });
    stroke.ifPresent(
        line -> {
          stroke(line);
          stroked.run();
        });
  }

  private void stroke(Stroke stroke) {
    g.setStroke(inks.apply(stroke.ink()));
    g.setLineWidth(stroke.width());
  }

  private void text(Shape.Text text) {
    g.setFill(inks.apply(text.ink()));
    g.setFont(Font.font(text.size()));
    g.setTextAlign(text.side() == Shape.Side.MIDDLE ? TextAlignment.CENTER : TextAlignment.LEFT);
    g.setTextBaseline(
        switch (text.height()) {
          case TOP -> VPos.TOP;
          case CENTRE -> VPos.CENTER;
          case BOTTOM -> VPos.BOTTOM;
        });
    if (text.most().isPresent()) {
      g.fillText(text.text(), text.x(), text.y(), text.most().getAsDouble());
    } else {
      g.fillText(text.text(), text.x(), text.y());
    }
  }

  private void label(Shape.Label label, double width) {
    Text measured = new Text(label.text());
    measured.setFont(Font.font(label.size()));
    double wide = measured.getLayoutBounds().getWidth();
    double high = measured.getLayoutBounds().getHeight();
    double left = label.left(wide, width);
    double top = label.top(high);
    g.setFill(inks.apply(label.plate()));
    g.fillRect(left, top, wide + 2 * Shape.Label.ROOM, high + Shape.Label.EDGE);
    g.setFill(inks.apply(label.ink()));
    g.setFont(measured.getFont());
    g.setTextAlign(TextAlignment.LEFT);
    g.setTextBaseline(VPos.TOP);
    g.fillText(label.text(), left + Shape.Label.ROOM, top + 1);
  }

  private void strip(Shape.Strip strip) {
    double step = strip.width() / Math.max(1, strip.argb().size());
    for (int i = 0; i < strip.argb().size(); i++) {
      int argb = strip.argb().get(i);
      g.setFill(
          javafx.scene.paint.Color.rgb(
              argb >> 16 & 0xFF, argb >> 8 & 0xFF, argb & 0xFF, (argb >>> 24) / 255.0));
      g.fillRect(strip.x() + i * step, strip.y(), step, strip.height());
    }
  }
}
