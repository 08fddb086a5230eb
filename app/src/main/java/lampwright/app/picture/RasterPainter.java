package lampwright.app.picture;

import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Paint;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.font.FontRenderContext;
import java.awt.font.LineMetrics;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.Optional;
import lampwright.exporters.picture.DisplayList;
import lampwright.exporters.picture.Ink;
import lampwright.exporters.picture.Mark;
import lampwright.exporters.picture.PathData;
import lampwright.exporters.picture.Stroke;

/** Paints a drawing into an image, without a screen. */
public final class RasterPainter {
  /** The colours of inks. */
  @FunctionalInterface
  public interface Paints {
    /**
     * What an ink is painted with.
     *
     * @param area what is painted with it, for paints that change across it
     */
    Paint of(Ink ink, Rectangle2D area);
  }

  private final Paints paints;
  private final Font type;
  private final Graphics2D g;

  private RasterPainter(Paints paints, Font type, Graphics2D g) {
    this.paints = paints;
    this.type = type;
    this.g = g;
  }

  /**
   * A drawing as an image.
   *
   * @param type the face, of any size
   * @param scale pixels of the image for one of the drawing, from 1
   */
  public static BufferedImage paint(DisplayList list, Paints paints, Font type, int scale) {
    BufferedImage image =
        new BufferedImage(
            (int) Math.ceil(list.width() * scale),
            (int) Math.ceil(list.height() * scale),
            BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    try {
      g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
      g.setRenderingHint(
          RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
      g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
      g.scale(scale, scale);
      RasterPainter painter = new RasterPainter(paints, type, g);
      list.marks().forEach(mark -> painter.mark(mark, list.width()));
    } finally {
      g.dispose();
    }
    return image;
  }

  private void mark(Mark mark, double width) {
    if (mark instanceof Mark.Line line) {
      stroke(new Line2D.Double(line.x1(), line.y1(), line.x2(), line.y2()), line.stroke());
    } else if (mark instanceof Mark.Rect r) {
      shape(new Rectangle2D.Double(r.x(), r.y(), r.width(), r.height()), r.fill(), r.stroke());
    } else if (mark instanceof Mark.Ellipse e) {
      shape(
          new Ellipse2D.Double(
              e.x() - e.radiusX(), e.y() - e.radiusY(), 2 * e.radiusX(), 2 * e.radiusY()),
          e.fill(),
          e.stroke());
    } else if (mark instanceof Mark.Path path) {
      shape(corners(path), path.fill(), path.stroke());
    } else if (mark instanceof Mark.Curves curves) {
      shape(curves(curves), curves.fill(), curves.stroke());
    } else if (mark instanceof Mark.Text text) {
      text(text);
    } else if (mark instanceof Mark.Label label) {
      label(label, width);
    } else if (mark instanceof Mark.Strip strip) {
      strip(strip);
    }
  }

  private static Shape corners(Mark.Path path) {
    Path2D.Double lines = new Path2D.Double();
    lines.moveTo(path.corners().get(0).x(), path.corners().get(0).y());
    path.corners().stream().skip(1).forEach(corner -> lines.lineTo(corner.x(), corner.y()));
    if (path.closed()) {
      lines.closePath();
    }
    return lines;
  }

  private static Shape curves(Mark.Curves curves) {
    AffineTransform place = AffineTransform.getTranslateInstance(curves.x(), curves.y());
    place.scale(curves.scale(), curves.scale());
    return place.createTransformedShape(PathShape.of(new PathData(curves.data())));
  }

  private void shape(Shape shape, Optional<Ink> fill, Optional<Stroke> stroke) {
    fill.ifPresent(
        ink -> {
          g.setPaint(paints.of(ink, shape.getBounds2D()));
          g.fill(shape);
        });
    stroke.ifPresent(line -> stroke(shape, line));
  }

  private void stroke(Shape shape, Stroke line) {
    g.setPaint(paints.of(line.ink(), shape.getBounds2D()));
    g.setStroke(
        new BasicStroke((float) line.width(), BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND));
    g.draw(shape);
  }

  private Font font(double size, boolean bold) {
    return type.deriveFont(bold ? Font.BOLD : Font.PLAIN, (float) size);
  }

  private void text(Mark.Text text) {
    Font font = font(text.size(), text.bold());
    FontRenderContext context = g.getFontRenderContext();
    double wide = font.getStringBounds(text.text(), context).getWidth();
    double squeezed = Math.min(1, text.most().orElse(wide) / Math.max(1, wide));
    LineMetrics metrics = font.getLineMetrics(text.text(), context);
    double baseline =
        switch (text.height()) {
          case TOP -> text.y() + metrics.getAscent();
          case CENTRE -> text.y() + (metrics.getAscent() - metrics.getDescent()) / 2;
          case BOTTOM -> text.y() - metrics.getDescent();
        };
    double left = text.side() == Mark.Side.MIDDLE ? text.x() - wide * squeezed / 2 : text.x();
    AffineTransform before = g.getTransform();
    g.translate(left, baseline);
    g.scale(squeezed, 1);
    g.setPaint(paints.of(text.ink(), new Rectangle2D.Double(0, 0, wide, text.size())));
    g.setFont(font);
    g.drawString(text.text(), 0, 0);
    g.setTransform(before);
  }

  private void label(Mark.Label label, double width) {
    Font font = font(label.size(), false);
    FontRenderContext context = g.getFontRenderContext();
    double wide = font.getStringBounds(label.text(), context).getWidth();
    LineMetrics metrics = font.getLineMetrics(label.text(), context);
    double left = label.left(wide, width);
    double top = label.top(metrics.getHeight());
    Rectangle2D plate =
        new Rectangle2D.Double(
            left, top, wide + 2 * Mark.Label.ROOM, metrics.getHeight() + Mark.Label.EDGE);
    g.setPaint(paints.of(label.plate(), plate));
    g.fill(plate);
    g.setPaint(paints.of(label.ink(), plate));
    g.setFont(font);
    g.drawString(
        label.text(), (float) (left + Mark.Label.ROOM), (float) (top + 1 + metrics.getAscent()));
  }

  /** Each colour in its own place, without smoothing between neighbours. */
  private void strip(Mark.Strip strip) {
    int size = strip.colours().size();
    if (size == 0) {
      return;
    }
    BufferedImage row = new BufferedImage(size, 1, BufferedImage.TYPE_INT_ARGB);
    row.setRGB(0, 0, size, 1, strip.colours().toArray(), 0, size);
    AffineTransform place = AffineTransform.getTranslateInstance(strip.x(), strip.y());
    place.scale(strip.width() / size, strip.height());
    g.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_NEAREST_NEIGHBOR);
    g.drawImage(row, place, null);
  }
}
