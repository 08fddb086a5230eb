package lampwright.exporters.picture;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Writes a drawing as SVG 1.1 (W3C Recommendation, second edition). */
public final class SvgPainter {
  private final Function<Ink, String> colours;
  private final StringBuilder svg = new StringBuilder();

  private SvgPainter(Function<Ink, String> colours) {
    this.colours = colours;
  }

  /**
   * A drawing as a document.
   *
   * @param colours as CSS writes them, such as {@code #24211a}
   */
  public static String write(DisplayList list, Function<Ink, String> colours) {
    return new SvgPainter(colours).document(list);
  }

  private String document(DisplayList list) {
    String wide = number(list.width());
    String high = number(list.height());
    svg.append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg");
    attribute("xmlns", "http://www.w3.org/2000/svg");
    attribute("width", wide);
    attribute("height", high);
    attribute("viewBox", "0 0 " + wide + " " + high);
    attribute("font-family", "sans-serif");
    svg.append(">\n");
    list.marks().forEach(mark -> mark(mark, list.width()));
    return svg.append("</svg>\n").toString();
  }

  private void mark(Mark mark, double width) {
    if (mark instanceof Mark.Line line) {
      svg.append("<line");
      attribute("x1", number(line.x1()));
      attribute("y1", number(line.y1()));
      attribute("x2", number(line.x2()));
      attribute("y2", number(line.y2()));
      paint(Optional.empty(), Optional.of(line.stroke()));
    } else if (mark instanceof Mark.Rect rect) {
      svg.append("<rect");
      box(rect.x(), rect.y(), rect.width(), rect.height());
      paint(rect.fill(), rect.stroke());
    } else if (mark instanceof Mark.Ellipse ellipse) {
      svg.append("<ellipse");
      attribute("cx", number(ellipse.x()));
      attribute("cy", number(ellipse.y()));
      attribute("rx", number(ellipse.radiusX()));
      attribute("ry", number(ellipse.radiusY()));
      paint(ellipse.fill(), ellipse.stroke());
    } else if (mark instanceof Mark.Path path) {
      svg.append(path.closed() ? "<polygon" : "<polyline");
      attribute(
          "points",
          path.corners().stream()
              .map(p -> number(p.x()) + "," + number(p.y()))
              .collect(Collectors.joining(" ")));
      paint(path.fill(), path.stroke());
    } else if (mark instanceof Mark.Curves curves) {
      svg.append("<path");
      attribute("d", curves.data());
      attribute(
          "transform",
          "translate("
              + number(curves.x())
              + " "
              + number(curves.y())
              + ") scale("
              + Double.toString(curves.scale())
              + ")");
      attribute("vector-effect", "non-scaling-stroke");
      attribute("stroke-linejoin", "round");
      attribute("stroke-linecap", "round");
      paint(curves.fill(), curves.stroke());
    } else if (mark instanceof Mark.Text text) {
      text(text);
    } else if (mark instanceof Mark.Label label) {
      label(label, width);
    } else if (mark instanceof Mark.Strip strip) {
      strip(strip);
    }
  }

  private void box(double x, double y, double width, double height) {
    attribute("x", number(x));
    attribute("y", number(y));
    attribute("width", number(Math.max(0, width)));
    attribute("height", number(Math.max(0, height)));
  }

  private void paint(Optional<Ink> fill, Optional<Stroke> stroke) {
    attribute("fill", fill.map(colours).orElse("none"));
    stroke.ifPresent(
        s -> {
          attribute("stroke", colours.apply(s.ink()));
          attribute("stroke-width", number(s.width()));
        });
    svg.append("/>\n");
  }

  private void text(Mark.Text text) {
    svg.append("<text");
    attribute("x", number(text.x()));
    attribute("y", number(text.y() + dropped(text)));
    attribute("font-size", number(text.size()));
    if (text.bold()) {
      attribute("font-weight", "bold");
    }
    if (text.side() == Mark.Side.MIDDLE) {
      attribute("text-anchor", "middle");
    }
    // Only where it would surely be wider: nothing here can measure type.
    double about = TypeMeasure.ESTIMATE.width(text.text(), text.size());
    if (text.most().isPresent() && about > text.most().getAsDouble()) {
      attribute("textLength", number(text.most().getAsDouble()));
      attribute("lengthAdjust", "spacingAndGlyphs");
    }
    attribute("fill", colours.apply(text.ink()));
    svg.append('>').append(escaped(text.text())).append("</text>\n");
  }

  // Viewers disagree on dominant-baseline, so the baseline is placed here: in usual type capitals
  // are 0.72 of the size high, letters go 0.2 below the line, and lines begin 0.93 above it.
  private static double dropped(Mark.Text text) {
    return switch (text.height()) {
      case TOP -> 0.93 * text.size();
      case CENTRE -> 0.36 * text.size();
      case BOTTOM -> -0.2 * text.size();
    };
  }

  // Nothing here can measure type: letters are half as wide as they are high on average.
  private void label(Mark.Label label, double width) {
    double wide = label.text().length() * label.size() * 0.55;
    double high = label.size() * 1.2;
    double left = label.left(wide, width);
    double top = label.top(high);
    svg.append("<rect");
    box(left, top, wide + 2 * Mark.Label.ROOM, high + Mark.Label.EDGE);
    paint(Optional.of(label.plate()), Optional.empty());
    text(
        new Mark.Text(
            left + Mark.Label.ROOM,
            top + 1,
            label.text(),
            label.size(),
            false,
            Mark.Side.LEFT,
            Mark.Height.TOP,
            label.ink(),
            OptionalDouble.empty()));
  }

  // Neighbours of one colour are one rectangle.
  private void strip(Mark.Strip strip) {
    ColourRow row = strip.colours();
    double step = strip.width() / Math.max(1, row.size());
    for (int from = 0, to; from < row.size(); from = to) {
      int colour = row.argb(from);
      to = from + 1;
      while (to < row.size() && row.argb(to) == colour) {
        to++;
      }
      int alpha = colour >>> 24;
      if (alpha > 0) {
        svg.append("<rect");
        box(strip.x() + from * step, strip.y(), (to - from) * step, strip.height());
        attribute("fill", String.format(Locale.ROOT, "#%06x", colour & 0xFFFFFF));
        if (alpha < 255) {
          attribute("fill-opacity", number(alpha / 255.0));
        }
        svg.append("/>\n");
      }
    }
  }

  private void attribute(String name, String value) {
    svg.append(' ').append(name).append("=\"").append(escaped(value)).append('"');
  }

  private static String number(double value) {
    String text = String.format(Locale.ROOT, "%.2f", value);
    return text.contains(".") ? text.replaceAll("\\.?0+$", "") : text;
  }

  /** Text as XML has it; what XML 1.0 (W3C, production Char) does not allow becomes U+FFFD. */
  private static String escaped(String text) {
    StringBuilder safe = new StringBuilder();
    text.codePoints()
        .forEach(
            c -> {
              switch (c) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                case '"' -> safe.append("&quot;");
                default -> safe.appendCodePoint(allowed(c) ? c : 0xFFFD);
              }
            });
    return safe.toString();
  }

  private static boolean allowed(int c) {
    return c == '\t'
        || c == '\n'
        || c == '\r'
        || (c >= 0x20 && c < 0xD800)
        || (c >= 0xE000 && c < 0xFFFE)
        || c >= 0x10000;
  }
}
