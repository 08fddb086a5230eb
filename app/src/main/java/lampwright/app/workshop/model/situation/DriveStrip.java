package lampwright.app.workshop.model.situation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import lampwright.app.workshop.words.Texts;
import lampwright.exporters.picture.DisplayList;
import lampwright.exporters.picture.Mark;
import lampwright.exporters.picture.Stroke;

/**
 * The strip of a drive: a scale of time, a line for each input, a row with bars for each situation,
 * the highest on the ladder first.
 *
 * @param width of the whole, pixels
 * @param em height of a line of text, pixels
 */
public record DriveStrip(DriveRun run, List<String> ladder, double width, double em) {
  private static final double NAMES = 10;
  private static final double TRACE = 2.2;
  private static final double BAR = 1.25;
  private static final double SCALE = 1.5;
  private static final double SMALL = 0.87;
  private static final int TICKS = 8;
  private static final double[] STEPS = {0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30, 60, 120, 300, 600};

  public DriveStrip {
    ladder = List.copyOf(ladder);
  }

  /** The height that it needs. */
  public double height() {
    return Math.ceil(em * (SCALE + TRACE * run.inputs().size() + BAR * run.bars().size() + 0.3));
  }

  private double left() {
    return NAMES * em;
  }

  private double right() {
    return Math.max(left() + 1, width - em);
  }

  /** Where a frame begins. */
  public double x(double frame) {
    return left() + (right() - left()) * frame / run.frames();
  }

  /** The frame at a place, or the nearest. */
  public int frame(double x) {
    double at = (x - left()) / (right() - left()) * run.frames();
    return (int) Math.max(0, Math.min(run.frames() - 1, Math.floor(at)));
  }

  /**
   * Draws it.
   *
   * @param frame where the playhead is; none while the drive is not played
   */
  public DisplayList draw(Optional<Integer> frame) {
    DisplayList.Builder list = new DisplayList.Builder(width, height());
    scale(list);
    double y = SCALE * em;
    for (DriveRun.Trace trace : run.inputs()) {
      trace(list, trace, y);
      y += TRACE * em;
    }
    for (String id : ladder) {
      for (DriveRun.Bar bar : run.bars()) {
        if (bar.situation().equals(id)) {
          bar(list, bar, y);
          y += BAR * em;
        }
      }
    }
    double bottom = y;
    frame.ifPresent(
        f -> list.line(x(f + 0.5), 0, x(f + 0.5), bottom, new Stroke(DriveInk.PLAYHEAD, 2)));
    return list.build();
  }

  private void name(DisplayList.Builder list, String name, double middle) {
    list.text(
        0.6 * em, middle, name, SMALL * em, Mark.Height.CENTRE, DriveInk.TEXT, left() - 1.2 * em);
  }

  private void scale(DisplayList.Builder list) {
    double seconds = run.frames() / run.rate();
    double step = STEPS[STEPS.length - 1];
    for (double candidate : STEPS) {
      if (seconds / candidate <= TICKS) {
        step = candidate;
        break;
      }
    }
    step = Math.max(step, seconds / TICKS);
    for (int k = 0; k * step < seconds; k++) {
      double x = x(k * step * run.rate());
      list.line(x, em, x, height(), Stroke.thin(DriveInk.LINE));
      String text = String.format(Locale.ROOT, step < 1 ? "%.1f" : "%.0f", k * step);
      list.text(
          x + 2,
          0.6 * em,
          Texts.of("situations").get("drive.seconds", text),
          SMALL * em,
          Mark.Height.CENTRE,
          DriveInk.TEXT_SOFT);
    }
  }

  // Lost is a gap.
  private void trace(DisplayList.Builder list, DriveRun.Trace trace, double y) {
    double low = y + (TRACE - 0.3) * em;
    double high = y + 0.3 * em;
    name(list, trace.input(), (low + high) / 2);
    List<Mark.Point> corners = new ArrayList<>();
    for (int i = 0; i < trace.steps().size(); i++) {
      DriveRun.Step step = trace.steps().get(i);
      if (step.value() == DriveRun.LOST) {
        path(list, corners);
        continue;
      }
      int end = i + 1 < trace.steps().size() ? trace.steps().get(i + 1).frame() : run.frames();
      double height = low + (high - low) * level(trace, step.value());
      corners.add(new Mark.Point(x(step.frame()), height));
      corners.add(new Mark.Point(x(end), height));
    }
    path(list, corners);
  }

  private static double level(DriveRun.Trace trace, int value) {
    double level =
        trace.stick()
            ? (value - InputControl.LEAST_US)
                / (double) (InputControl.GREATEST_US - InputControl.LEAST_US)
            : value;
    return Math.max(0, Math.min(1, level));
  }

  private static void path(DisplayList.Builder list, List<Mark.Point> corners) {
    if (corners.size() > 1) {
      list.add(
          new Mark.Path(
              corners, false, Optional.empty(), Optional.of(new Stroke(DriveInk.TRACE, 1.5))));
    }
    corners.clear();
  }

  private void bar(DisplayList.Builder list, DriveRun.Bar bar, double y) {
    double middle = y + BAR * em / 2;
    name(list, bar.situation(), middle);
    list.line(left(), middle, right(), middle, Stroke.thin(DriveInk.LINE));
    for (DriveRun.Span span : bar.spans()) {
      double from = x(span.from());
      double wide = Math.max(1, x(span.to()) - from);
      list.fillRect(from, y + 0.2 * em, wide, (BAR - 0.4) * em, DriveInk.BAR);
    }
  }
}
