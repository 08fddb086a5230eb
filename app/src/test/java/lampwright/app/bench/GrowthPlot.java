package lampwright.app.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwright.exporters.picture.ChartInk;
import lampwright.exporters.picture.DisplayList;
import lampwright.exporters.picture.Ink;
import lampwright.exporters.picture.Mark;
import lampwright.exporters.picture.Stroke;
import lampwright.exporters.picture.SvgPainter;

/** Draws how work grows: a panel for each thing that grows, both scales logarithmic. */
final class GrowthPlot {
  private static final double WIDE = 230;
  private static final double HIGH = 300;
  private static final double LEFT = 62;
  private static final double TOP = 74;
  private static final double NAMES = 66;
  private static final double BOTTOM = 54;

  // Milliseconds as powers of ten, at the foot and at the head of a panel.
  private static final int LEAST = -1;
  private static final int MOST = 5;
  private static final double LINE_HEIGHT = 13;
  private static final double DOT = 3;

  /** Of each step; at least 4.5:1 on white, and each line has its name beside it. */
  private enum StepInk implements Ink {
    OPEN("#5a6470"),
    RENDER("#8a4b00"),
    CHECK("#00606f"),
    MEASURE("#5b3fa0"),
    PACK("#1b2733");

    private final String css;

    StepInk(String css) {
      this.css = css;
    }
  }

  private final DisplayList.Builder list;

  private GrowthPlot(DisplayList.Builder list) {
    this.list = list;
  }

  /** The drawing, seconds by kind, count and step. */
  static String svg(Map<GrowthProjects, List<Map<Growth.Step, OptionalDouble>>> seconds) {
    double panel = WIDE + NAMES;
    var list = new DisplayList.Builder(LEFT + panel * seconds.size() + 10, TOP + HIGH + BOTTOM);
    GrowthPlot plot = new GrowthPlot(list);
    list.fillRect(0, 0, list.width(), list.height(), ChartInk.PAPER);
    list.text(8, 8, "Processor time of one thread", 16, Mark.Height.TOP, ChartInk.TEXT);
    list.text(
        8,
        30,
        "Both scales are logarithmic; the dashed line is work that grows as the count does.",
        11,
        Mark.Height.TOP,
        ChartInk.SOFT);
    int at = 0;
    for (var entry : seconds.entrySet()) {
      plot.panel(LEFT + panel * at++, entry.getKey(), entry.getValue());
    }
    return SvgPainter.write(
        list.build(), ink -> ink instanceof StepInk own ? own.css : ((ChartInk) ink).css());
  }

  private void panel(
      double left, GrowthProjects kind, List<Map<Growth.Step, OptionalDouble>> rows) {
    for (int power = LEAST; power <= MOST; power++) {
      double y = y(Math.pow(10, power) / 1000);
      list.line(left, y, left + WIDE, y, Stroke.thin(ChartInk.GRID));
      if (left == LEFT) {
        list.centred(left - 28, y, time(power), 10, ChartInk.SOFT);
      }
    }
    for (int i = 0; i < Growth.COUNTS.length; i++) {
      double x = x(left, i);
      list.line(x, TOP, x, TOP + HIGH, Stroke.thin(ChartInk.GRID));
      String count = String.format(Locale.ROOT, "%,d", Growth.COUNTS[i]);
      list.centred(x, TOP + HIGH + 12, count, 10, ChartInk.SOFT);
    }
    list.centred(left + WIDE / 2, TOP - 12, kind.words(), 12, ChartInk.TEXT);
    guide(left);
    List<Name> names = new ArrayList<>();
    for (Growth.Step step : Growth.Step.values()) {
      curve(left, step, rows).ifPresent(names::add);
    }
    names(names);
  }

  /** A line of which ten times the count takes ten times as long. */
  private void guide(double left) {
    int dashes = 30;
    for (int i = 0; i < dashes; i += 2) {
      double from = 3.0 * i / dashes;
      double to = 3.0 * (i + 1) / dashes;
      list.line(
          x(left, from),
          y(Math.pow(10, from) / 1000),
          x(left, to),
          y(Math.pow(10, to) / 1000),
          Stroke.thin(ChartInk.SOFT));
    }
  }

  private record Name(StepInk ink, double x, double y, String word) {}

  private Optional<Name> curve(
      double left, Growth.Step step, List<Map<Growth.Step, OptionalDouble>> rows) {
    StepInk ink = StepInk.valueOf(step.name());
    List<Mark.Point> points = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      OptionalDouble seconds = rows.get(i).get(step);
      if (seconds.isPresent() && seconds.getAsDouble() > 0) {
        points.add(new Mark.Point(x(left, i), y(seconds.getAsDouble())));
      }
    }
    if (points.isEmpty()) {
      return Optional.empty();
    }
    if (points.size() > 1) {
      list.add(new Mark.Path(points, false, Optional.empty(), Optional.of(new Stroke(ink, 1.5))));
    }
    for (Mark.Point point : points) {
      list.add(
          new Mark.Ellipse(point.x(), point.y(), DOT, DOT, Optional.of(ink), Optional.empty()));
    }
    Mark.Point last = points.get(points.size() - 1);
    return Optional.of(new Name(ink, last.x(), last.y(), step.word()));
  }

  /** Names beside the ends of the lines, moved apart where lines end close together. */
  private void names(List<Name> names) {
    List<Name> fromAbove = new ArrayList<>(names);
    fromAbove.sort(Comparator.comparingDouble(Name::x).thenComparingDouble(Name::y));
    double least = TOP;
    double x = 0;
    for (Name name : fromAbove) {
      double y = name.x() == x ? Math.max(least, name.y()) : name.y();
      x = name.x();
      list.text(x + 8, y, name.word(), 10, Mark.Height.CENTRE, name.ink());
      least = y + LINE_HEIGHT;
    }
  }

  private static double x(double left, double power) {
    return left + WIDE * power / (Growth.COUNTS.length - 1);
  }

  private static double y(double seconds) {
    double power = Math.max(LEAST, Math.log10(seconds * 1000));
    return TOP + HIGH * (MOST - power) / (MOST - LEAST);
  }

  private static String time(int power) {
    return power < 0
        ? "0.1 ms"
        : power < 3 ? (int) Math.pow(10, power) + " ms" : (int) Math.pow(10, power - 3) + " s";
  }
}
