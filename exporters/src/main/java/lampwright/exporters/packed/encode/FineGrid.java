package lampwright.exporters.packed.encode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lampwright.exporters.packed.format.Format;
import org.jspecify.annotations.Nullable;

/**
 * Fits curves to a row of pixels that follow each other at an even share of a turn, and to colours
 * that follow each other at thirds of a turn, on a grid fine enough for both.
 */
final class FineGrid {
  /** A speed: the curve goes on by pace of its size from frame to frame. */
  record Speed(int pace, int size) {}

  // The limits below choose between codings that are all proved, so they change sizes and time,
  // never
  // what is played. Found by trial.

  /**
   * Colours share a curve if that makes it rougher by an eighth at most. The corpus packs to the
   * same 72,069 bytes with no roughening at all and with twice the roughness.
   */
  private static final int MOST_EIGHTHS = 9;

  /**
   * Steps of a curve weigh so much more than its samples in the choice of a spacing: a smooth curve
   * is short once its flat parts and its mirror image are left out.
   */
  private static final int STEP_WEIGHT = 16;

  private final int size;
  private final int pace;

  private @Nullable CurveSketch sketch;

  /** Slots by colour, then pixel. */
  private final int[][] slotAt;

  /** Values by slot, then frame. */
  private final List<int[]> values;

  private FineGrid(List<int[]> values, int[][] slotAt, Speed speed, int size) {
    this.values = values;
    this.slotAt = slotAt;
    this.size = size;
    pace = (int) ((long) speed.pace() * (size / speed.size()) % size);
  }

  /**
   * Curves for all slots; null if there are none, or none that take so few bytes.
   *
   * @param limit bytes above which curves are of no use
   */
  static @Nullable Fit fit(
      List<int[]> values,
      List<int[]> slots,
      int[] columns,
      int pixelBytes,
      Speed speed,
      long limit) {
    int[][] slotAt = arrange(slots, columns, pixelBytes);
    if (slotAt.length == 0) {
      return null;
    }
    int pixels = slotAt[0].length;
    int period = speed.size();
    int[] first = curve(values.get(slotAt[0][0]), speed);
    if (first.length == 0) {
      return null;
    }
    int[] filled = WaveFinder.filled(first);
    long smoothest = WaveFinder.variationOfKnown(first);
    int samples = values.get(slotAt[0][0]).length;
    long mostSteps = WaveFinder.variationOfKnown(filled) * ((samples + period - 1) / period);
    Candidate best = null;
    long least = Long.MAX_VALUE;
    for (int spread : WaveFinder.spreads()) {
      int denominator = pixels == 1 ? 1 : pixels * spread;
      Boolean[] mayFollow = new Boolean[denominator];
      for (int thirds = 3; thirds >= 1; thirds -= 2) {
        long fine = lcm(lcm(period, denominator), thirds);
        if (fine > Format.MAX_WAVE_SIZE) {
          continue;
        }
        // A candidate is no smoother than what one pixel alone has of its curve.
        if (fine + smoothest * STEP_WEIGHT >= least) {
          continue;
        }
        FineGrid grid = new FineGrid(values, slotAt, speed, (int) fine);
        for (int j = 0; j < denominator; j++) {
          if (mayFollow[j] == null) {
            mayFollow[j] = pixels == 1 || grid.mayFollow(filled, speed, j, denominator, mostSteps);
          }
          if (!mayFollow[j]) {
            continue;
          }
          int spacing = (int) (j * fine / denominator);
          Candidate candidate = grid.candidate(spacing, thirds == 3, least);
          if (candidate != null) {
            least = candidate.cost();
            best = candidate;
          }
        }
      }
      if (pixels == 1) {
        break;
      }
    }
    return best == null || best.leastBytes() > limit ? null : best.fit(values.size());
  }

  /** Slot numbers by colour and pixel, of the colours that change in every pixel. */
  static int[][] arrange(List<int[]> slots, int[] columns, int pixelBytes) {
    int width = columns[columns.length - 1] + 1;
    int[] slotOf = new int[width];
    Arrays.fill(slotOf, -1);
    for (int s = 0; s < slots.size(); s++) {
      for (int index : slots.get(s)) {
        slotOf[columns[index]] = s;
      }
    }
    if (width % pixelBytes != 0) {
      return new int[0][];
    }
    int pixels = width / pixelBytes;
    List<int[]> rows = new ArrayList<>();
    int known = 0;
    for (int e = 0; e < pixelBytes; e++) {
      int[] row = new int[pixels];
      int some = 0;
      for (int k = 0; k < pixels; k++) {
        row[k] = slotOf[e + k * pixelBytes];
        some += row[k] >= 0 ? 1 : 0;
      }
      if (some == pixels) {
        rows.add(row);
        known += pixels;
      } else if (some > 0) {
        return new int[0][];
      }
    }
    return known == 0 ? new int[0][] : rows.toArray(new int[0][]);
  }

  private static long lcm(long a, long b) {
    long x = a;
    long y = b;
    while (y != 0) {
      long r = x % y;
      x = y;
      y = r;
    }
    return a / x * b;
  }

  /** A slot's samples in the order of their phase, -1 where none is; empty if two disagree. */
  static int[] curve(int[] v, Speed speed) {
    int[] curve = new int[speed.size()];
    Arrays.fill(curve, -1);
    int at = 0;
    for (int value : v) {
      if (curve[at] >= 0 && curve[at] != value) {
        return new int[0];
      }
      curve[at] = value;
      at = (at + speed.pace()) % speed.size();
    }
    return curve;
  }

  /**
   * A quick look whether pixel 1 can follow pixel 0 by j turns of the denominator.
   *
   * @param mostSteps the most that all steps of the curve that are passed can come to
   */
  private boolean mayFollow(int[] filled, Speed speed, int j, int denominator, long mostSteps) {
    int n = speed.size();
    int at = (int) ((long) j * n / denominator);
    long apart = 0;
    long steps = 0;
    for (int value : values.get(slotAt[0][1])) {
      int u = filled[at];
      int v = filled[at + 1 == n ? 0 : at + 1];
      apart += Math.max(0, Math.max(Math.min(u, v) - value, value - Math.max(u, v)));
      steps += Math.abs(u - v);
      // Most can be told after a few samples.
      if (apart * 4 > mostSteps + 4L * n / 64) {
        return false;
      }
      at = (at + speed.pace()) % n;
    }
    // Apart by a quarter of the steps, or a quarter of a unit in 16 samples, may come from samples
    // that
    // are not known yet; more does not. Without this look the corpus packs to the same bytes; it
    // saves time.
    return apart * 4 <= steps + 4L * n / 64;
  }

  /** Curves found for one spacing of the pixels. */
  private static final class Candidate {
    private final long cost;
    private final List<KnownSamples> waves;
    private final int[][] slotAt;
    private final int[] wave;
    private final int[] colourPhase;
    private final int spacing;
    private final int fineSize;
    private final int finePace;

    Candidate(
        long cost,
        List<KnownSamples> waves,
        FineGrid grid,
        int[] wave,
        int[] colourPhase,
        int spacing) {
      this.cost = cost;
      this.waves = waves;
      this.slotAt = grid.slotAt;
      this.fineSize = grid.size;
      this.finePace = grid.pace;
      this.wave = wave;
      this.colourPhase = colourPhase;
      this.spacing = spacing;
    }

    long cost() {
      return cost;
    }

    Fit fit(int slots) {
      int common = common();
      int size = fineSize / common;
      int[] waveOf = new int[slots];
      int[] phase = new int[slots];
      for (int e = 0; e < slotAt.length; e++) {
        for (int k = 0; k < slotAt[e].length; k++) {
          waveOf[slotAt[e][k]] = wave[e];
          phase[slotAt[e][k]] = (int) ((colourPhase[e] + (long) k * spacing) % fineSize) / common;
        }
      }
      List<int[]> read = new ArrayList<>();
      for (KnownSamples known : waves) {
        read.add(known.filled(common));
      }
      return new Fit(size, finePace / common, read, waveOf, phase);
    }

    // What every phase is a multiple of: samples between are never read.
    private int common() {
      int common = WaveFinder.gcd(WaveFinder.gcd(fineSize, finePace), spacing);
      for (int phase : colourPhase) {
        common = WaveFinder.gcd(common, phase);
      }
      return common;
    }

    /** Bytes that the curves take at least. */
    int leastBytes() {
      int common = common();
      return waves.stream().mapToInt(known -> known.leastBytes() / common).sum();
    }
  }

  /** Curves for one spacing; none if colours disagree, or they don't cost less than that. */
  private @Nullable Candidate candidate(int spacing, boolean thirds, long least) {
    long cost = 0;
    List<KnownSamples> waves = new ArrayList<>();
    int[] wave = new int[slotAt.length];
    int[] phase = new int[slotAt.length];
    for (int e = 0; e < slotAt.length; e++) {
      wave[e] = -1;
      for (int w = 0; thirds && w < waves.size() && wave[e] < 0; w++) {
        KnownSamples old = waves.get(w);
        for (int third = 1; third < 3 && wave[e] < 0; third++) {
          KnownSamples merged = merged(old, e, third * (size / 3), spacing);
          if (merged != null && merged.variation() <= old.variation() * MOST_EIGHTHS / 8) {
            cost += (merged.variation() - old.variation()) * STEP_WEIGHT;
            waves.set(w, merged);
            wave[e] = w;
            phase[e] = third * (size / 3);
          }
        }
      }
      if (wave[e] < 0) {
        KnownSamples fresh = plotted(e, 0, spacing);
        if (fresh == null) {
          return null;
        }
        wave[e] = waves.size();
        waves.add(fresh);
        cost += fresh.variation() * STEP_WEIGHT + size;
      }
      // More samples make no curve smoother.
      if (cost >= least) {
        return null;
      }
    }
    return new Candidate(cost, waves, this, wave, phase, spacing);
  }

  /** The samples of a colour with those of others; none if two disagree. */
  private @Nullable KnownSamples merged(KnownSamples old, int colour, int phase, int spacing) {
    old.putOn(sketch());
    return plotted(colour, phase, spacing);
  }

  /**
   * What is on the curve, with a colour's samples; none if two disagree. The curve is blank after.
   */
  private @Nullable KnownSamples plotted(int colour, int phase, int spacing) {
    CurveSketch curve = sketch();
    KnownSamples samples = plot(curve, colour, phase, spacing) ? curve.samples() : null;
    curve.clear();
    return samples;
  }

  /** A curve of which nothing is known, before and after a candidate is looked at. */
  private CurveSketch sketch() {
    if (sketch == null) {
      // Few grids get so far.
      sketch = new CurveSketch(size);
    }
    return sketch;
  }

  /** Puts a colour's samples on the curve; whether none disagreed with another. */
  private boolean plot(CurveSketch curve, int colour, int phase, int spacing) {
    for (int k = 0; k < slotAt[colour].length; k++) {
      int at = (int) ((phase + (long) k * spacing) % size);
      for (int value : values.get(slotAt[colour][k])) {
        if (!curve.put(at, value)) {
          return false;
        }
        at += pace;
        at = at >= size ? at - size : at;
      }
    }
    return true;
  }
}
