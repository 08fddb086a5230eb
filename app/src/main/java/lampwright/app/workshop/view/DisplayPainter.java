package lampwright.app.workshop.view;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.paint.Paint;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.shape.StrokeLineJoin;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import javafx.scene.text.Text;
import javafx.scene.text.TextAlignment;
import lampwright.exporters.picture.ColourRow;
import lampwright.exporters.picture.DisplayList;
import lampwright.exporters.picture.Ink;
import lampwright.exporters.picture.Mark;
import lampwright.exporters.picture.Stroke;

/** Paints drawings on canvases; keeps what takes long to make for the next time. */
public final class DisplayPainter {
  private record Type(double size, boolean bold) {}

  private final Function<Ink, Paint> inks;
  private final Map<Type, Font> fonts = new HashMap<>();
  private Map<ColourRow, WritableImage> images = new HashMap<>();
  private Map<ColourRow, WritableImage> imagesBefore = new HashMap<>();
  private String family = Font.getDefault().getFamily();

  public DisplayPainter(Function<Ink, Paint> inks) {
    this.inks = inks;
  }

  /** Takes the family of the type. */
  public void family(String now) {
    family = now;
    fonts.clear();
  }

  /** Paints a drawing over what is there. */
  public void paint(DisplayList list, GraphicsContext g) {
    // What the last drawing had and this one has not is let go.
    imagesBefore = images;
    images = new HashMap<>();
    On on = new On(g);
    g.save();
    list.marks().forEach(mark -> on.mark(mark, list.width()));
    g.restore();
  }

  private Font font(double size, boolean bold) {
    return fonts.computeIfAbsent(
        new Type(size, bold),
        type -> Font.font(family, bold ? FontWeight.BOLD : FontWeight.NORMAL, size));
  }

  private WritableImage image(ColourRow row) {
    WritableImage known = imagesBefore.get(row);
    WritableImage image = known == null ? drawn(row) : known;
    images.put(row, image);
    return image;
  }

  private static WritableImage drawn(ColourRow row) {
    WritableImage image = new WritableImage(row.size(), 1);
    image
        .getPixelWriter()
        .setPixels(
            0, 0, row.size(), 1, PixelFormat.getIntArgbInstance(), row.toArray(), 0, row.size());
    return image;
  }

  private final class On {
    private final GraphicsContext g;

    On(GraphicsContext g) {
      this.g = g;
    }

    private void mark(Mark mark, double width) {
      if (mark instanceof Mark.Line line) {
        stroke(line.stroke());
        g.strokeLine(line.x1(), line.y1(), line.x2(), line.y2());
      } else if (mark instanceof Mark.Rect r) {
        paint(
            r.fill(),
            () -> g.fillRect(r.x(), r.y(), r.width(), r.height()),
            r.stroke(),
            () -> g.strokeRect(r.x(), r.y(), r.width(), r.height()));
      } else if (mark instanceof Mark.Ellipse e) {
        double left = e.x() - e.radiusX();
        double top = e.y() - e.radiusY();
        paint(
            e.fill(),
            () -> g.fillOval(left, top, 2 * e.radiusX(), 2 * e.radiusY()),
            e.stroke(),
            () -> g.strokeOval(left, top, 2 * e.radiusX(), 2 * e.radiusY()));
      } else if (mark instanceof Mark.Path path) {
        double[] x = path.corners().stream().mapToDouble(Mark.Point::x).toArray();
        double[] y = path.corners().stream().mapToDouble(Mark.Point::y).toArray();
        paint(
            path.fill(),
            () -> g.fillPolygon(x, y, x.length),
            path.stroke(),
            () -> {
              if (path.closed()) {
                g.strokePolygon(x, y, x.length);
              } else {
                g.strokePolyline(x, y, x.length);
              }
            });
      } else if (mark instanceof Mark.Curves curves) {
        curves(curves);
      } else if (mark instanceof Mark.Text text) {
        text(text);
      } else if (mark instanceof Mark.Label label) {
        label(label, width);
      } else if (mark instanceof Mark.Strip strip) {
        strip(strip);
      }
    }

    private void curves(Mark.Curves curves) {
      g.save();
      g.translate(curves.x(), curves.y());
      g.scale(curves.scale(), curves.scale());
      g.setLineJoin(StrokeLineJoin.ROUND);
      g.setLineCap(StrokeLineCap.ROUND);
      g.beginPath();
      g.appendSVGPath(curves.data());
      curves
          .fill()
          .ifPresent(
              ink -> {
                g.setFill(inks.apply(ink));
                g.fill();
              });
      curves
          .stroke()
          .ifPresent(
              line -> {
                g.setStroke(inks.apply(line.ink()));
                g.setLineWidth(line.width() / curves.scale());
                g.stroke();
              });
      g.restore();
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

    private void text(Mark.Text text) {
      g.setFill(inks.apply(text.ink()));
      g.setFont(font(text.size(), text.bold()));
      g.setTextAlign(text.side() == Mark.Side.MIDDLE ? TextAlignment.CENTER : TextAlignment.LEFT);
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

    private void label(Mark.Label label, double width) {
      Text measured = new Text(label.text());
      measured.setFont(font(label.size(), false));
      double wide = measured.getLayoutBounds().getWidth();
      double high = measured.getLayoutBounds().getHeight();
      double left = label.left(wide, width);
      double top = label.top(high);
      g.setFill(inks.apply(label.plate()));
      g.fillRect(left, top, wide + 2 * Mark.Label.ROOM, high + Mark.Label.EDGE);
      g.setFill(inks.apply(label.ink()));
      g.setFont(measured.getFont());
      g.setTextAlign(TextAlignment.LEFT);
      g.setTextBaseline(VPos.TOP);
      g.fillText(label.text(), left + Mark.Label.ROOM, top + 1);
    }

    private void strip(Mark.Strip strip) {
      if (strip.colours().size() > 0) {
        WritableImage image = image(strip.colours());
        g.setImageSmoothing(false);
        g.drawImage(
            image, 0, 0, image.getWidth(), 1, strip.x(), strip.y(), strip.width(), strip.height());
      }
    }
  }
}
