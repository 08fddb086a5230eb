package lampwright.app.workshop.model.ribbon;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.exporters.picture.DisplayList;
import lampwright.exporters.picture.Mark;
import lampwright.exporters.picture.Stroke;

/** Draws the duty of each emitter of a lamp over time: a curve an emitter, all in one box. */
final class CurveDrawing {
  private final RibbonsModel model;
  private final DisplayList.Builder list;
  private final double top;
  private final double height;

  private CurveDrawing(DisplayList.Builder list, RibbonsModel model, RibbonLayout.Row row) {
    this.list = list;
    this.model = model;
    this.top = row.curvesY() - model.top() + 2;
    this.height = row.curves() - 4;
  }

  static void add(
      DisplayList.Builder list, RibbonsModel model, RibbonLayout.Row row, double textSize) {
    new CurveDrawing(list, model, row).add(row, textSize);
  }

  private void add(RibbonLayout.Row row, double textSize) {
    list.strokeRect(0.5, top, list.width() - 1, height, Stroke.thin(RibbonInk.LINE));
    Strip strip = model.stripsProperty().get().get(row.lights());
    if (strip == null) {
      return;
    }
    List<String> letters = letters(row.lamp());
    for (int c = 0; c < strip.curves(); c++) {
      String letter = letters.get(c % letters.size());
      RibbonInk ink = ink(letter);
      curve(strip, c, Stroke.thin(ink));
      if (c < letters.size()) {
        list.text(3 + c * 14, top + 2, letter, textSize, Mark.Height.TOP, ink);
      }
    }
  }

  // In steps, as each frame is held until the next; a gap where the duty is not known.
  private void curve(Strip strip, int curve, Stroke stroke) {
    TimeAxis axis = model.axis();
    double shift = axis.x(strip.axis().leftMs());
    double scale = strip.axis().msPerPixel() / axis.msPerPixel();
    List<Mark.Point> points = new ArrayList<>();
    int before = -1;
    for (int x = 0; x < strip.width(); x++) {
      int duty = strip.duty(curve, x);
      double at = shift + x * scale;
      if (duty < 0) {
        end(points, stroke);
      } else if (points.isEmpty()) {
        points.add(new Mark.Point(at, y(duty)));
      } else if (duty != before || x == strip.width() - 1) {
        points.add(new Mark.Point(at, y(before)));
        points.add(new Mark.Point(at, y(duty)));
      }
      before = duty;
    }
    end(points, stroke);
  }

  private double y(int duty) {
    return top + height - duty / 255.0 * height;
  }

  private void end(List<Mark.Point> points, Stroke stroke) {
    if (points.size() > 1) {
      list.add(new Mark.Path(points, false, Optional.empty(), Optional.of(stroke)));
    }
    points.clear();
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

  private static RibbonInk ink(String letter) {
    return switch (letter) {
      case "R" -> RibbonInk.CURVE_R;
      case "G" -> RibbonInk.CURVE_G;
      case "B" -> RibbonInk.CURVE_B;
      default -> RibbonInk.CURVE_W;
    };
  }
}
