package lampwright.app.workshop.view.ribbon;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.paint.Paint;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import javafx.scene.text.TextAlignment;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.model.ribbon.RibbonLayout;
import lampwright.app.workshop.model.ribbon.RibbonsModel;
import lampwright.app.workshop.model.ribbon.Strip;
import lampwright.app.workshop.model.ribbon.TimeAxis;
import lampwright.app.workshop.view.Inks;
import lampwright.app.workshop.words.Titles;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.scene.Blend;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;

/** Draws the ribbons that are in sight. */
final class RibbonPainter {
  private final RibbonsModel model;
  private final Inks<Ink> inks;
  private Map<Integer, Strip> imagesOf = Map.of();
  private final Map<Integer, WritableImage> images = new HashMap<>();
  private Font font = Font.getDefault();
  private Font bold = Font.getDefault();
  private Font small = Font.getDefault();

  RibbonPainter(RibbonsModel model, Inks<Ink> inks) {
    this.model = model;
    this.inks = inks;
  }

  /** Takes the size of text. */
  void font(Font base) {
    font = base;
    bold = Font.font(base.getFamily(), FontWeight.BOLD, base.getSize());
    small = Font.font(base.getFamily(), base.getSize() * 0.85);
  }

  /** Draws the titles of the rows in sight. */
  void titles(GraphicsContext g, double width, double height) {
    g.setFill(inks.of(Ink.PAPER));
    g.fillRect(0, 0, width, height);
    Optional<RibbonLayout> layout = model.layout();
    if (layout.isEmpty()) {
      return;
    }
    Set<String> chosen = model.bench().selection().lamps();
    for (RibbonLayout.Row row : layout.get().between(model.top(), model.top() + height)) {
      double y = row.y() - model.top();
      Lamp lamp = row.lamp();
      boolean on = chosen.contains(lamp.id());
      if (on) {
        g.setFill(inks.of(Ink.ROW_CHOSEN));
        g.fillRect(0, y, width, row.height() - 3);
      }
      double middle = y + row.stripHeight() / 2;
      g.setTextBaseline(VPos.CENTER);
      g.setTextAlign(TextAlignment.LEFT);
      g.setFill(inks.of(Ink.TEXT));
      g.setFont(font);
      g.fillText(model.isUnfolded(lamp.id()) ? "▾" : "▸", 4, middle);
      g.setFont(on ? bold : font);
      clipped(g, (on ? "● " : "") + Titles.of(lamp), 18, middle, width - 24);
      if (lamp.function() != lampwright.engine.rig.LampFunction.OTHER) {
        g.setFont(small);
        g.setFill(inks.of(Ink.TEXT_SOFT));
        clipped(
            g,
            lamp.function().key().replace('-', ' '),
            18,
            y + row.stripHeight() + row.laneHeight() / 2,
            width - 24);
      }
    }
    g.setStroke(inks.of(Ink.LINE));
    g.strokeLine(width - 0.5, 0, width - 0.5, height);
  }

  // Cut by an estimate of the letters' width: clipping every text is slow in software.
  private static void clipped(GraphicsContext g, String text, double x, double y, double width) {
    int room = (int) (width / (g.getFont().getSize() * 0.56));
    if (room >= text.length()) {
      g.fillText(text, x, y);
    } else if (room >= 2) {
      g.fillText(text.substring(0, room - 1) + "…", x, y);
    }
  }

  /** Draws the time line. */
  void timeLine(GraphicsContext g, double width, double height) {
    g.setFill(inks.of(Ink.PAPER));
    g.fillRect(0, 0, width, height);
    TimeAxis axis = model.axis();
    g.setFont(small);
    g.setTextBaseline(VPos.TOP);
    g.setTextAlign(TextAlignment.LEFT);
    for (TimeAxis.Tick tick : axis.ticks(width)) {
      double x = Math.round(axis.x(tick.ms())) + 0.5;
      boolean named = !tick.label().isEmpty();
      g.setStroke(inks.of(Ink.LINE));
      g.strokeLine(x, named ? height * 0.35 : height * 0.75, x, height);
      if (named) {
        g.setFill(inks.of(Ink.TEXT_SOFT));
        g.fillText(tick.label(), x + 3, 2);
      }
    }
    model
        .bench()
        .scene()
        .ifPresent(
            scene -> {
              double end = axis.x(scene.lengthMs().doubleValue());
              g.setFill(inks.of(Ink.CUE_CHOSEN_EDGE));
              g.fillPolygon(
                  new double[] {end, end - 7, end}, new double[] {height, height, height - 9}, 3);
            });
    g.setStroke(inks.of(Ink.LINE));
    g.strokeLine(0, height - 0.5, width, height - 0.5);
  }

  /** Draws the rows in sight. */
  void rows(GraphicsContext g, double width, double height) {
    g.setFill(inks.of(Ink.PAPER));
    g.fillRect(0, 0, width, height);
    Optional<RibbonLayout> layout = model.layout();
    Optional<Scene> scene = model.bench().scene();
    if (layout.isEmpty() || scene.isEmpty()) {
      return;
    }
    TimeAxis axis = model.axis();
    Set<String> lamps = model.bench().selection().lamps();
    for (RibbonLayout.Row row : layout.get().between(model.top(), model.top() + height)) {
      double y = row.y() - model.top();
      if (lamps.contains(row.lamp().id())) {
        g.setFill(inks.of(Ink.ROW_CHOSEN));
        g.fillRect(0, y, width, row.height() - 3);
      }
      strip(g, row, y, width);
      for (int lane = 0; lane < row.lanes().size(); lane++) {
        lane(g, row, lane, scene.get(), axis, width);
      }
      if (row.curves() > 0) {
        curves(g, row, width);
      }
    }
    double end = axis.x(scene.get().lengthMs().doubleValue());
    if (end < width) {
      g.setFill(inks.of(Ink.PAST_END));
      g.fillRect(Math.max(0, end), 0, width - Math.max(0, end), height);
      g.setStroke(inks.of(Ink.CUE_CHOSEN_EDGE));
      g.strokeLine(Math.round(end) + 0.5, 0, Math.round(end) + 0.5, height);
    }
  }

  private void strip(GraphicsContext g, RibbonLayout.Row row, double y, double width) {
    double height = row.stripHeight() - 4;
    g.setFill(inks.of(Ink.UNLIT));
    g.fillRect(0, y + 2, width, height);
    Map<Integer, Strip> strips = model.stripsProperty().get();
    if (strips != imagesOf) {
      images.clear();
      imagesOf = strips;
    }
    Strip strip = strips.get(row.index());
    if (strip == null) {
      return;
    }
    WritableImage image = images.computeIfAbsent(row.index(), i -> image(strip));
    // A strip that was painted for another look at time is stretched until the next one is there.
    TimeAxis axis = model.axis();
    double x = axis.x(strip.axis().leftMs());
    double shown = image.getWidth() * strip.axis().msPerPixel() / axis.msPerPixel();
    g.setImageSmoothing(false);
    g.drawImage(image, 0, 0, image.getWidth(), 1, x, y + 2, shown, height);
  }

  private static WritableImage image(Strip strip) {
    WritableImage image = new WritableImage(strip.argb().length, 1);
    image
        .getPixelWriter()
        .setPixels(
            0,
            0,
            strip.argb().length,
            1,
            PixelFormat.getIntArgbInstance(),
            strip.argb(),
            0,
            strip.argb().length);
    return image;
  }

  private void lane(
      GraphicsContext g, RibbonLayout.Row row, int lane, Scene scene, TimeAxis axis, double width) {
    int track = row.lanes().get(lane);
    List<Cue> cues = scene.tracks().get(track).cues();
    List<Integer> order = new ArrayList<>();
    double to = axis.ms(width);
    for (int c = 0; c < cues.size(); c++) {
      Cue cue = cues.get(c);
      double start = cue.startMs().doubleValue();
      if (start < to && start + cue.lengthMs().doubleValue() > axis.leftMs()) {
        order.add(c);
      }
    }
    order.sort(java.util.Comparator.comparing(c -> cues.get(c).startMs()));
    Set<CueRef> chosen = model.bench().selection().cues();
    boolean shared = scene.tracks().get(track).lamps().size() > 1;
    double drawnTo = Double.NEGATIVE_INFINITY;
    for (int c : order) {
      Cue cue = cues.get(c);
      RibbonLayout.Handle handle = RibbonLayout.handle(row, lane, cue, axis);
      boolean on = chosen.contains(new CueRef(track, c));
      // Thousands of cues on a few pixels look like one.
      if (!on && handle.x() + handle.width() <= drawnTo + 0.5) {
        continue;
      }
      drawnTo = handle.x() + handle.width();
      cue(g, cue, handle, on, shared, axis, width);
    }
  }

  private void cue(
      GraphicsContext g,
      Cue cue,
      RibbonLayout.Handle handle,
      boolean on,
      boolean shared,
      TimeAxis axis,
      double width) {
    double y = handle.y() - model.top();
    double left = Math.max(handle.x(), -4);
    double right = Math.min(handle.x() + handle.width(), width + 4);
    g.setFill(inks.of(on ? Ink.CUE_CHOSEN : Ink.CUE));
    g.fillRect(left, y, right - left, handle.height());
    edge(g, inks.of(on ? Ink.CUE_CHOSEN_EDGE : Ink.CUE_EDGE), left, y, right, handle, on ? 2 : 1);
    g.setStroke(inks.of(on ? Ink.CUE_CHOSEN_EDGE : Ink.CUE_EDGE));
    double inX = axis.x(cue.startMs().add(cue.fadeInMs()).doubleValue());
    double outX = axis.x(cue.endMs().subtract(cue.fadeOutMs()).doubleValue());
    double bottom = y + handle.height();
    if (cue.fadeInMs().signum() > 0) {
      g.strokeLine(handle.x(), bottom, inX, y);
    }
    if (cue.fadeOutMs().signum() > 0) {
      g.strokeLine(outX, y, handle.x() + handle.width(), bottom);
    }
    if (on && handle.width() >= 20) {
      g.setFill(inks.of(Ink.CUE_CHOSEN_EDGE));
      g.fillRect(inX - 3, y, 6, 4);
      g.fillRect(outX - 3, y, 6, 4);
    }
    if (right - left > 30) {
      g.setFill(inks.of(Ink.CUE_TEXT));
      g.setFont(small);
      g.setTextBaseline(VPos.CENTER);
      g.setTextAlign(TextAlignment.LEFT);
      String text = (shared ? "⇅ " : "") + blend(cue.blend()) + model.kind(cue);
      clipped(
          g, text, Math.max(left, 0) + 5, y + handle.height() / 2, right - Math.max(left, 0) - 8);
    }
  }

  // Filled, as strokes are slow in software.
  private static void edge(
      GraphicsContext g,
      Paint ink,
      double left,
      double y,
      double right,
      RibbonLayout.Handle handle,
      double line) {
    double x = Math.round(left);
    double wide = Math.max(line, Math.round(right) - x);
    g.setFill(ink);
    g.fillRect(x, y, wide, line);
    g.fillRect(x, y + handle.height() - line, wide, line);
    g.fillRect(x, y, line, handle.height());
    g.fillRect(x + wide - line, y, line, handle.height());
  }

  private static String blend(Blend blend) {
    return switch (blend) {
      case COVER -> "";
      case ADD -> "+ ";
      case BRIGHTER -> "∨ ";
      case SCALE -> "× ";
    };
  }

  private void curves(GraphicsContext g, RibbonLayout.Row row, double width) {
    Strip strip = model.stripsProperty().get().get(row.index());
    double top = row.curvesY() - model.top() + 2;
    double height = row.curves() - 4;
    g.setStroke(inks.of(Ink.LINE));
    g.strokeRect(0.5, top, width - 1, height);
    if (strip == null || strip.curves() == 0) {
      return;
    }
    TimeAxis axis = model.axis();
    double shift = axis.x(strip.axis().leftMs());
    double scale = strip.axis().msPerPixel() / axis.msPerPixel();
    List<String> letters = letters(row.lamp());
    // All pixels of a lamp share the box: a curve an emitter, its letter at the left.
    for (int c = 0; c < strip.curves(); c++) {
      String letter = letters.get(c % letters.size());
      Paint ink = inks.of(ink(letter));
      g.setStroke(ink);
      g.beginPath();
      boolean pen = false;
      int before = -1;
      for (int x = 0; x < strip.width(); x++) {
        int duty = strip.duty(c, x);
        double at = shift + x * scale;
        double y = top + height - duty / 255.0 * height;
        if (duty < 0) {
          pen = false;
        } else if (!pen) {
          g.moveTo(at, y);
          pen = true;
        } else if (duty != before || x == strip.width() - 1) {
          g.lineTo(at, top + height - before / 255.0 * height);
          g.lineTo(at, y);
        }
        before = duty;
      }
      g.stroke();
      if (c < letters.size()) {
        g.setFill(ink);
        g.setFont(small);
        g.setTextBaseline(VPos.TOP);
        g.fillText(letter, 3 + c * 14, top + 2);
      }
    }
  }

  private List<String> letters(Lamp lamp) {
    if (lamp.fitting() instanceof Fitting.Pixels pixels) {
      String chain = pixels.runs().get(0).chain();
      return model.bench().project().rig().chains().stream()
          .filter(c -> c.id().equals(chain))
          .findFirst()
          .map(c -> c.order().letters().chars().mapToObj(Character::toString).toList())
          .orElse(List.of("W"));
    }
    return List.of("W");
  }

  private static Ink ink(String letter) {
    return switch (letter) {
      case "R" -> Ink.CURVE_R;
      case "G" -> Ink.CURVE_G;
      case "B" -> Ink.CURVE_B;
      default -> Ink.CURVE_W;
    };
  }
}
