package lampwright.app.workshop.model;

import java.util.List;
import java.util.Optional;
import lampwright.exporters.picture.DisplayList;
import lampwright.exporters.picture.Ink;
import lampwright.exporters.picture.Mark;
import lampwright.exporters.picture.Stroke;

/**
 * A gauge as a rule: its whole length is the limit and a fifth more, hatched; a pointer below shows
 * the present share, a hollow one above the greatest.
 */
public final class GaugeRule {
  private static final double PAST = 1.2;
  private static final int TICKS = 12;
  private static final double POINTER = 4;

  private GaugeRule() {}

  /** The drawing of a gauge. */
  public static DisplayList of(Gauge gauge, double width, double height) {
    DisplayList.Builder list = new DisplayList.Builder(width, height);
    double y = Math.floor(height / 2) + 0.5;
    double left = POINTER;
    double length = width - 2 * POINTER;
    Stroke thin = new Stroke(GaugeInk.TICK, 1);
    for (int i = 0; i <= TICKS; i++) {
      double x = Math.floor(left + length * i / TICKS) + 0.5;
      list.line(x, y, x, y - (i == TICKS - 2 ? 5 : 3), thin);
    }
    list.line(left, y, left + length, y, thin);
    double limit = left + length / PAST;
    double share = Math.min(PAST, gauge.share().orElse(0)) / PAST;
    if (gauge.share().isPresent()) {
      list.line(left, y, left + length * share, y, new Stroke(GaugeInk.RULE, 3));
    }
    if (gauge.state() == Gauge.State.OVER) {
      Stroke over = new Stroke(GaugeInk.OVER, 1.4);
      list.line(limit, y, left + length, y, over);
      for (double x = limit + 2; x < left + length; x += 4) {
        list.line(x, y + 4, x + 3, y - 4, over);
      }
    }
    if (gauge.share().isPresent()) {
      list.add(
          pointer(
              left + length * share, y + 2, 1, Optional.of(GaugeInk.POINTER), Optional.empty()));
    }
    if (gauge.mark().isPresent()) {
      double most = gauge.mark().getAsDouble();
      Stroke line = new Stroke(most > 1 ? GaugeInk.OVER : GaugeInk.PEAK, 1.2);
      double x = left + length * Math.min(PAST, most) / PAST;
      list.add(pointer(x, y - 2, -1, Optional.empty(), Optional.of(line)));
    }
    return list.build();
  }

  /** A triangle whose tip is at a point; down is 1 if it is below it, -1 if above. */
  private static Mark.Path pointer(
      double x, double y, int down, Optional<Ink> fill, Optional<Stroke> stroke) {
    double foot = y + down * 1.6 * POINTER;
    return new Mark.Path(
        List.of(
            new Mark.Point(x, y),
            new Mark.Point(x - POINTER, foot),
            new Mark.Point(x + POINTER, foot)),
        true,
        fill,
        stroke);
  }
}
