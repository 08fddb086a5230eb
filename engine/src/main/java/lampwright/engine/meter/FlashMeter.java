package lampwright.engine.meter;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwright.engine.check.Checks;
import lampwright.engine.facts.TradeNumbers;

/** The work of {@link FlashTrain#measure}: all times here are in frames, and cost is linear. */
final class FlashMeter {
  // No standard says where a flash begins in a light of any shape, so the five below are ours,
  // such that every pattern is measured as it is set; FlashTrainTest checks them.

  /**
   * A rise or fall of less than this share of the brightest light is no edge of a flash. With less,
   * flicker counts as flashes; with more, the weaker flashes of a group are missed.
   */
  private static final double LEAST_SWING = 0.3;

  /**
   * Between two flashes the light falls to this share of both peaks or lower. With more, a light
   * that only dips counts as flashing; with less, flashes that a warm-up or a tail joins are one.
   */
  private static final double MOST_VALLEY = 0.4;

  /**
   * Where the shorter edge, from 10 to 90 %, takes longer than this many seconds, and than {@link
   * #SWELL_SHARE} of the time from flash to flash, the light swells and does not flash: a fade, a
   * colour cycle. With less, the flash of a slow beacon is left out.
   */
  private static final double SWELL_SECONDS = 0.5;

  private static final double SWELL_SHARE = 0.2;

  /**
   * The gap after a group is longer by this factor than those within it, at least. With less,
   * uneven flashes fall apart into groups; with more, groups with short gaps are told as single
   * flashes.
   */
  private static final double GROUP_RATIO = 1.5;

  /** Periods that differ from their mean by this share at most are regular to the eye. */
  private static final double EVEN = 0.25;

  /** A regular period may be off by a frame, and by half a frame of rounding. */
  private static final double EVEN_FRAMES = 1.5;

  private static final double LIT = TradeNumbers.number("special warning lamp", "on above");

  /**
   * One flash.
   *
   * @param on where it rises through half of its height
   * @param off where it falls through half of its height
   * @param edge how long the shorter of its rise and fall takes, from 10 to 90 %
   * @param whole whether it ends before the signal does
   * @param lit the first frame of a tenth of the greatest light or more
   * @param dark the first frame of less again, or the valley after it
   */
  private record Flash(double on, double off, double edge, boolean whole, int lit, int dark) {
    double length() {
      return off - on;
    }
  }

  private final double[] light;
  private final double framesPerSecond;
  private final boolean loop;
  private final int frames;
  // The frame at which looking starts: the darkest of a loop, so that no flash is cut.
  private final int origin;
  private final double swing;
  private final double lit;

  FlashMeter(double[] light, double framesPerSecond, boolean loop) {
    if (light.length == 0) {
      throw new IllegalArgumentException("light: no frame: must have at least one");
    }
    Checks.require("frames per second", framesPerSecond, 1e-6, 1000);
    double most = 0;
    int darkest = 0;
    for (int i = 0; i < light.length; i++) {
      Checks.require("light of a frame", light[i], 0, Double.MAX_VALUE);
      most = Math.max(most, light[i]);
      if (light[i] < light[darkest]) {
        darkest = i;
      }
    }
    this.light = light;
    this.framesPerSecond = framesPerSecond;
    this.loop = loop;
    this.frames = light.length;
    this.origin = loop ? darkest : 0;
    this.swing = LEAST_SWING * most;
    this.lit = LIT * most;
  }

  Optional<FlashTrain> measure() {
    List<Flash> flashes = withoutSwells(flashes());
    return flashes.isEmpty() ? Optional.empty() : Optional.of(describe(flashes));
  }

  private double at(int frame) {
    // A loop is looked at from its darkest frame to that frame again; the second is the first.
    int place = origin + frame;
    return light[place < frames ? place : place - frames];
  }

  private int last() {
    return loop ? frames : frames - 1;
  }

  /** Follows the light from valley to peak to valley, passing over lesser turns. */
  private List<Flash> flashes() {
    List<Flash> found = new ArrayList<>();
    if (swing == 0) {
      return found;
    }
    // A signal that plays once may start lit: that is a flash once it falls.
    boolean startsLit = !loop && at(0) >= swing;
    boolean rising = !startsLit;
    int foot = 0;
    int peak = startsLit ? 0 : -1;
    int valley = 0;
    for (int i = 1; i <= last(); i++) {
      double now = at(i);
      if (!rising) {
        if (now > at(peak)) {
          peak = i;
        } else if (at(peak) - now >= swing && now <= MOST_VALLEY * at(peak)) {
          rising = true;
          valley = i;
        }
      } else if (now < at(valley)) {
        valley = i;
      } else if (now - at(valley) >= swing && at(valley) <= MOST_VALLEY * now) {
        if (peak >= 0) {
          found.add(flash(foot, peak, valley));
        }
        rising = false;
        foot = valley;
        peak = i;
      }
    }
    if (peak >= 0 && rising) {
      found.add(flash(foot, peak, valley));
    } else if (!rising && !found.isEmpty()) {
      found.add(flash(foot, peak, peak));
    }
    return found;
  }

  /**
   * A flash between two valleys; one that the start or end of the signal cuts has its peak there.
   */
  private Flash flash(int foot, int peak, int valley) {
    // Frames are held: the first begins half a frame before its middle, the last ends after it.
    double on = foot == peak ? -0.5 : cross(foot, peak, 0.5);
    boolean whole = valley != peak;
    double off = whole ? cross(valley, peak, 0.5) : last() + 0.5;
    double rise = foot == peak ? 0 : cross(foot, peak, 0.9) - cross(foot, peak, 0.1);
    double fall = whole ? cross(valley, peak, 0.1) - cross(valley, peak, 0.9) : 0;
    int first = foot;
    while (at(first) < lit) {
      first++;
    }
    int end = peak;
    while (end <= last() && (!whole || end < valley) && at(end) >= lit) {
      end++;
    }
    return new Flash(on, off, Math.min(rise, fall), whole, first, end);
  }

  /**
   * Where the light first passes a share of the way up, going from a valley before or after the
   * peak to the peak; between frames by a straight line.
   */
  private double cross(int valley, int peak, double share) {
    double level = at(valley) + share * (at(peak) - at(valley));
    int step = valley < peak ? 1 : -1;
    int i = valley + step;
    while (at(i) < level) {
      i += step;
    }
    double outer = at(i - step);
    return i - step * (at(i) - level) / (at(i) - outer);
  }

  private List<Flash> withoutSwells(List<Flash> flashes) {
    double apart = (double) frames / Math.max(1, flashes.size());
    double most = Math.max(SWELL_SECONDS * framesPerSecond, SWELL_SHARE * apart);
    return flashes.stream().filter(f -> f.edge() <= most).toList();
  }

  private FlashTrain describe(List<Flash> flashes) {
    int count = flashes.size();
    // Time from each flash to the next; in a loop the last one's goes round the seam.
    int steps = loop ? count : count - 1;
    double[] step = new double[steps];
    for (int i = 0; i < steps; i++) {
      step[i] = start(flashes, i + 1) - start(flashes, i);
    }
    double split = split(step);
    List<Integer> firsts = firsts(step, split, count);
    int groups = firsts.size();
    double[] period = new double[loop ? groups : groups - 1];
    int[] size = new int[groups];
    double[] lit = new double[groups];
    double[] off = new double[period.length];
    double gaps = 0;
    double offs = 0;
    int offCount = 0;
    for (int i = 0; i < steps; i++) {
      double dark = step[i] - flashes.get(i).length();
      if (step[i] > split) {
        offs += dark;
        offCount++;
      } else {
        gaps += dark;
      }
    }
    for (int g = 0; g < groups; g++) {
      int next = g + 1 < groups ? firsts.get(g + 1) : loop ? firsts.get(0) + count : count;
      size[g] = next - firsts.get(g);
      int end = dark(flashes, next - 1);
      lit[g] = end - lit(flashes, firsts.get(g));
      if (g < period.length) {
        period[g] = start(flashes, next) - start(flashes, firsts.get(g));
        off[g] = lit(flashes, next) - end;
      }
    }
    double on = flashes.stream().mapToDouble(Flash::length).sum();
    int usual = usual(size);
    double mean = period.length == 0 ? 0 : evenMean(period);
    return new FlashTrain(
        count,
        groups,
        usual,
        regular(size, usual, period, mean),
        period.length == 0
            ? OptionalDouble.empty()
            : OptionalDouble.of(60 * framesPerSecond / mean),
        flashes.stream().filter(Flash::whole).mapToDouble(Flash::length).average().orElse(on)
            / framesPerSecond,
        steps == offCount ? 0 : gaps / (steps - offCount) / framesPerSecond,
        offCount == 0 ? 0 : offs / offCount / framesPerSecond,
        on / frames,
        Arrays.stream(lit).average().orElse(0) / framesPerSecond,
        Arrays.stream(off).average().orElse(0) / framesPerSecond);
  }

  private double start(List<Flash> flashes, int i) {
    int count = flashes.size();
    return i < count ? flashes.get(i).on() : flashes.get(i - count).on() + frames;
  }

  private int lit(List<Flash> flashes, int i) {
    int count = flashes.size();
    return i < count ? flashes.get(i).lit() : flashes.get(i - count).lit() + frames;
  }

  private int dark(List<Flash> flashes, int i) {
    int count = flashes.size();
    return i < count ? flashes.get(i).dark() : flashes.get(i - count).dark() + frames;
  }

  /** The step above which the next flash begins a group; 0 if all steps are alike. */
  private static double split(double[] step) {
    double[] sorted = step.clone();
    Arrays.sort(sorted);
    double widest = GROUP_RATIO;
    double split = 0;
    for (int i = 1; i < sorted.length; i++) {
      // Steps of few frames differ by a frame without meaning to.
      double ratio = sorted[i] / (sorted[i - 1] + 1);
      if (ratio > widest) {
        widest = ratio;
        split = (sorted[i] + sorted[i - 1]) / 2;
      }
    }
    return split;
  }

  private List<Integer> firsts(double[] step, double split, int count) {
    List<Integer> firsts = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      boolean first = i > 0 ? step[i - 1] > split : !loop || step[count - 1] > split;
      if (first) {
        firsts.add(i);
      }
    }
    return firsts;
  }

  private static int usual(int[] size) {
    int[] sorted = size.clone();
    Arrays.sort(sorted);
    int best = sorted[0];
    int most = 0;
    int run = 0;
    for (int i = 0; i < sorted.length; i++) {
      run = i > 0 && sorted[i] == sorted[i - 1] ? run + 1 : 1;
      if (run >= most) {
        most = run;
        best = sorted[i];
      }
    }
    return best;
  }

  /**
   * The mean of the periods, without those that a seam or an odd gap cuts: first all that are near
   * the median, then, where the rest agree to a frame, those that agree.
   */
  private double evenMean(double[] period) {
    double[] sorted = period.clone();
    Arrays.sort(sorted);
    double median = sorted[sorted.length / 2];
    double near = mean(sorted, median, EVEN * median);
    if (sorted.length < 3) {
      return near;
    }
    double even = mean(sorted, median, EVEN_FRAMES);
    long agreeing = Arrays.stream(sorted).filter(p -> Math.abs(p - median) <= EVEN_FRAMES).count();
    return agreeing >= sorted.length - 1 ? even : near;
  }

  private static double mean(double[] of, double about, double within) {
    return Arrays.stream(of).filter(p -> Math.abs(p - about) <= within).average().orElse(about);
  }

  private boolean regular(int[] size, int usual, double[] period, double mean) {
    long odd = Arrays.stream(size).filter(s -> s != usual).count();
    long uneven =
        Arrays.stream(period)
            .filter(p -> Math.abs(p - mean) > Math.max(EVEN_FRAMES, EVEN * mean))
            .count();
    // The seam of a loop may cut one group, and so a period before and after it.
    int allowed = loop && size.length > 2 ? 1 : 0;
    return odd <= allowed && uneven <= 2L * allowed;
  }
}
