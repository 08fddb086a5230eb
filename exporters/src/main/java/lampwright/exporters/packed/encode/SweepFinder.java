package lampwright.exporters.packed.encode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lampwright.exporters.packed.format.Format;

/**
 * Finds a picture that moves along a row of pixels at an even speed, one way or the other, for a
 * while at a time: a light that runs to and fro.
 */
final class SweepFinder {
  /** RGBW, RGB, and emitters one by one. */
  private static final int[] PIXEL_BYTES = {4, 3, 1};

  // Fewer pixels or frames fit by chance, and what they save is small: the corpus packs to the same
  // with 3 or 6 pixels and 2 or 8 frames.
  private static final int LEAST_PIXELS = 4;
  private static final int LEAST_FRAMES = 4;

  private final LampTable table;
  private final int from;
  private final int to;

  /** One way: the frames from its start on, and the curves that give them. */
  record Way(int from, int to, Fit fit) {}

  /** Curves that fit the frames before one. */
  private static final class Plot {
    private final int to;
    private final int[][] curves;
    private final int spacing;

    Plot(int to, int[][] curves, int spacing) {
      this.to = to;
      this.curves = curves;
      this.spacing = spacing;
    }
  }

  SweepFinder(LampTable table, int from, int to) {
    this.table = table;
    this.from = from;
    this.to = to;
  }

  /** The ways, one after another, for each arrangement that fits all of the lamp. */
  List<List<Way>> find() {
    List<List<Way>> found = new ArrayList<>();
    for (Pace pace : paces()) {
      List<Way> ways = ways(pace);
      if (!ways.isEmpty()) {
        found.add(ways);
      }
    }
    return found;
  }

  /**
   * Curves that the pixels read one way for a part of the frames and the other way for the rest.
   */
  List<Fit> swings() {
    List<Fit> found = new ArrayList<>();
    for (Pace pace : paces()) {
      addSwing(found, pace.slotAt, pace.size, pace.spacing);
      addSwing(found, pace.slotAt, pace.size, pace.size - pace.spacing);
    }
    return found;
  }

  /** Slots by colour and pixel, and how far apart in phase the pixels read curves of a size. */
  private static final class Pace {
    private final int[][] slotAt;
    private final int size;
    private final int spacing;

    Pace(int[][] slotAt, int size, int spacing) {
      this.slotAt = slotAt;
      this.size = size;
      this.spacing = spacing;
    }
  }

  /** What to try: a light that passes each pixel twice in the period, or once. */
  private List<Pace> paces() {
    List<Pace> paces = new ArrayList<>();
    int period = to - from;
    for (int bytes : PIXEL_BYTES) {
      int[][] slotAt = FineGrid.arrange(table.slots, table.columns, bytes);
      if (slotAt.length == 0 || slotAt[0].length < LEAST_PIXELS || !coversAll(slotAt)) {
        continue;
      }
      int pixels = slotAt[0].length;
      for (int steps : new int[] {2 * pixels - 2, pixels}) {
        long size = (long) period / WaveFinder.gcd(period, steps) * steps;
        if (size <= Format.MAX_WAVE_SIZE) {
          paces.add(new Pace(slotAt, (int) size, (int) size / steps));
        }
      }
    }
    return paces;
  }

  private void addSwing(List<Fit> found, int[][] slotAt, int size, int spacing) {
    int pace = size / (to - from);
    int[][] curves = unknown(slotAt.length, size);
    int frame = from;
    while (frame < to && plot(curves, slotAt, frame, (frame - from) * pace, spacing)) {
      frame++;
    }
    int turn = frame;
    while (frame < to && plot(curves, slotAt, frame, (frame - from) * pace, size - spacing)) {
      frame++;
    }
    if (frame == to && turn > from + LEAST_FRAMES && turn < to) {
      found.add(fit(curves, slotAt, pace, spacing, (turn - from) * pace));
    }
  }

  private static int[][] unknown(int count, int size) {
    int[][] curves = new int[count][size];
    for (int[] curve : curves) {
      Arrays.fill(curve, -1);
    }
    return curves;
  }

  private Fit fit(int[][] curves, int[][] slotAt, int pace, int spacing, int swingsAt) {
    int size = curves[0].length;
    int[] wave = new int[table.slots.size()];
    int[] phase = new int[table.slots.size()];
    List<int[]> waves = new ArrayList<>();
    for (int e = 0; e < slotAt.length; e++) {
      waves.add(WaveFinder.filled(curves[e]));
      // Of pixels that are alike the first one is coded, so its phase is the slot's.
      for (int k = slotAt[e].length - 1; k >= 0; k--) {
        wave[slotAt[e][k]] = e;
        phase[slotAt[e][k]] = (int) ((long) k * spacing % size);
      }
    }
    return new Fit(size, pace, waves, wave, phase, swingsAt);
  }

  private boolean coversAll(int[][] slotAt) {
    boolean[] covered = new boolean[table.slots.size()];
    for (int[] row : slotAt) {
      for (int slot : row) {
        covered[slot] = true;
      }
    }
    for (boolean b : covered) {
      if (!b) {
        return false;
      }
    }
    return true;
  }

  private List<Way> ways(Pace pace) {
    List<Way> ways = new ArrayList<>();
    int at = from;
    while (at < to) {
      Plot on = plot(pace.slotAt, at, pace.size, pace.spacing);
      Plot back = plot(pace.slotAt, at, pace.size, pace.size - pace.spacing);
      Plot longer = on.to >= back.to ? on : back;
      if (longer.to - at < LEAST_FRAMES) {
        return List.of();
      }
      Fit fit = fit(longer.curves, pace.slotAt, pace.size / (to - from), longer.spacing, Fit.NEVER);
      ways.add(new Way(at, longer.to, fit));
      at = longer.to;
    }
    return ways;
  }

  /** As many frames as fit curves that the pixels read at the given spacing. */
  private Plot plot(int[][] slotAt, int start, int size, int spacing) {
    int pace = size / (to - from);
    int[][] curves = unknown(slotAt.length, size);
    int frame = start;
    while (frame < to && plot(curves, slotAt, frame, (frame - start) * pace, spacing)) {
      frame++;
    }
    return new Plot(frame, curves, spacing);
  }

  /** Puts one frame on the curves; if it doesn't fit, changes nothing. */
  private boolean plot(int[][] curves, int[][] slotAt, int frame, int shared, int spacing) {
    for (int round = 0; round < 2; round++) {
      for (int e = 0; e < slotAt.length; e++) {
        int[] curve = curves[e];
        int at = shared % curve.length;
        for (int slot : slotAt[e]) {
          int value = table.at(table.slots.get(slot)[0], frame);
          if (round == 1) {
            curve[at] = value;
          } else if (curve[at] >= 0 && curve[at] != value) {
            return false;
          }
          at = (at + spacing) % curve.length;
        }
      }
    }
    return true;
  }
}
