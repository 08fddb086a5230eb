package lampwright.app.workshop.model.ribbon;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Which part of a scene's time is in sight.
 *
 * @param leftMs time at the left edge, at least 0
 * @param msPerPixel above 0
 */
public record TimeAxis(double leftMs, double msPerPixel) {
  /** The closest look: a frame at 1,000 frames/s is 25 pixels wide. */
  public static final double LEAST_MS_PER_PIXEL = 0.04;

  /** The widest look: a day on 100 pixels. */
  public static final double MOST_MS_PER_PIXEL = 864_000;

  private static final double MINUTE_MS = 60_000;
  private static final double HOUR_MS = 3_600_000;
  private static final double[] STEPS_MS = {
    1,
    2,
    5,
    10,
    20,
    50,
    100,
    200,
    500,
    1000,
    2000,
    5000,
    10_000,
    15_000,
    30_000,
    60_000,
    120_000,
    300_000,
    600_000,
    900_000,
    1_800_000,
    3_600_000,
    7_200_000,
    10_800_000,
    21_600_000,
    43_200_000
  };

  /**
   * A mark on the time line.
   *
   * @param label its time in words; empty for a mark between
   */
  public record Tick(double ms, String label) {}

  public TimeAxis {
    msPerPixel = Math.max(LEAST_MS_PER_PIXEL, Math.min(MOST_MS_PER_PIXEL, msPerPixel));
    leftMs = Math.max(0, leftMs);
  }

  /** An axis on which this stretch fills the width, with a little room. */
  public static TimeAxis fitting(double fromMs, double toMs, double width) {
    double room = Math.max(1, width - 24);
    return new TimeAxis(fromMs, Math.max(1, toMs - fromMs) / room);
  }

  public double x(double ms) {
    return (ms - leftMs) / msPerPixel;
  }

  public double ms(double x) {
    return leftMs + x * msPerPixel;
  }

  /** Looks closer, or less close with a factor below 1; the time at {@code x} stays there. */
  public TimeAxis zoomed(double factor, double x) {
    double fixed = ms(x);
    TimeAxis zoomed = new TimeAxis(leftMs, msPerPixel / factor);
    return new TimeAxis(fixed - x * zoomed.msPerPixel, zoomed.msPerPixel);
  }

  /** Looks further along, by pixels. */
  public TimeAxis panned(double pixels) {
    return new TimeAxis(leftMs + pixels * msPerPixel, msPerPixel);
  }

  /** The marks in sight, at least some 80 pixels between those with a label. */
  public List<Tick> ticks(double width) {
    double step = STEPS_MS[STEPS_MS.length - 1];
    for (int i = STEPS_MS.length - 1; i >= 0; i--) {
      if (STEPS_MS[i] / msPerPixel >= 80) {
        step = STEPS_MS[i];
      }
    }
    int parts = 5;
    List<Tick> ticks = new ArrayList<>();
    long first = (long) Math.floor(leftMs / step) * parts;
    for (long i = first; i * step / parts <= ms(width); i++) {
      double at = i * step / parts;
      if (at >= leftMs) {
        ticks.add(new Tick(at, i % parts == 0 ? label(at) : ""));
      }
    }
    return ticks;
  }

  /** A time as it stands on the time line: 1.25 s, 2:05, 1:00:00. */
  public static String label(double ms) {
    if (ms < MINUTE_MS) {
      String text = String.format(Locale.ROOT, "%.3f", ms / 1000);
      return text.replaceAll("\\.?0+$", "") + " s";
    }
    long seconds = (long) (ms / 1000);
    double rest = ms / 1000 - seconds;
    String part =
        rest < 0.0005
            ? ""
            : String.format(Locale.ROOT, "%.3f", rest).substring(1).replaceAll("0+$", "");
    return ms < HOUR_MS
        ? String.format(Locale.ROOT, "%d:%02d%s", seconds / 60, seconds % 60, part)
        : String.format(
            Locale.ROOT, "%d:%02d:%02d%s", seconds / 3600, seconds / 60 % 60, seconds % 60, part);
  }
}
