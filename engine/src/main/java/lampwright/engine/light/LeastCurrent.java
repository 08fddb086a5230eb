package lampwright.engine.light;

import java.util.Map;

/**
 * Of all drives that give a chromaticity and a luminance, those that draw the least current.
 *
 * <p>Three emitters have one set of drives. With a fourth the sets lie on a line {@code u + t s}: u
 * are the drives without the free emitter, s how each changes as that one is driven more. All
 * drives have to be 0 to 1, so that only a stretch of the line is left, and as the current changes
 * evenly along it, one of its two ends draws least. Which one does not depend on the colour: most
 * white where one whole white draws no more than the mix of the others that gives the same light,
 * else least white. The ends go with the light in straight pieces, one for each bound that is met.
 */
final class LeastCurrent {
  /** One whole white that draws more than its mix by no more than this, in mA, is as good. */
  private static final double EQUAL_MILLIAMPS = 1e-9;

  /** Drives that rounding sets apart from 0 or 1 by less than this are there. */
  private static final double ROUNDING = 1e-12;

  private static final int SLOTS = Mixer.SLOTS;

  // How each drive changes with t; all 0 with three emitters.
  private final double[] slope;
  private final boolean highest;

  LeastCurrent(Gamut gamut, Map<EmitterKind, FittedEmitter> emitters) {
    slope = gamut.slope();
    double milliamps = 0;
    for (Map.Entry<EmitterKind, FittedEmitter> emitter : emitters.entrySet()) {
      milliamps += slope[emitter.getKey().slot()] * emitter.getValue().milliamps();
    }
    double white = slope[EmitterKind.WHITE.slot()];
    if (white == 0) {
      highest = milliamps < 0;
    } else {
      boolean mostWhite = milliamps / white <= EQUAL_MILLIAMPS;
      highest = mostWhite == white > 0;
    }
  }

  /**
   * Writes the drives at an amount of light to {@code into[at .. at + 3]}; may be the same place.
   *
   * @param unsplit the drives of the line at t = 0 and full light, four from {@code from}
   * @param light 0 to 1
   */
  void write(double[] unsplit, int from, double light, double[] into, int at) {
    double low = Double.NEGATIVE_INFINITY;
    double high = Double.POSITIVE_INFINITY;
    for (int i = 0; i < SLOTS; i++) {
      double drive = light * unsplit[from + i];
      into[at + i] = drive;
      if (slope[i] > 0) {
        low = Math.max(low, -drive / slope[i]);
        high = Math.min(high, (1 - drive) / slope[i]);
      } else if (slope[i] < 0) {
        low = Math.max(low, (1 - drive) / slope[i]);
        high = Math.min(high, -drive / slope[i]);
      }
    }
    double t = 0;
    if (high < Double.POSITIVE_INFINITY) {
      // At the brightest mix and on the border of the gamut both ends are one, but for rounding.
      t = low > high ? (low + high) / 2 : highest ? high : low;
    }
    for (int i = 0; i < SLOTS; i++) {
      into[at + i] = settled(into[at + i] + t * slope[i]);
    }
  }

  /**
   * By how much more than the light a drive changes at most, from {@link #write}: the drive itself
   * by u, and t by no more than the greatest (1 + u) / s of any emitter, 1 more than it does so
   * that the roundings on the way are covered as well.
   *
   * @param unsplit the drives of the line at t = 0 and full light
   */
  double steepness(double[] unsplit) {
    double along = 0;
    for (int i = 0; i < SLOTS; i++) {
      if (slope[i] != 0) {
        along = Math.max(along, (1 + Math.abs(unsplit[i])) / Math.abs(slope[i]));
      }
    }
    double steepest = 1;
    for (int i = 0; i < SLOTS; i++) {
      steepest = Math.max(steepest, Math.abs(unsplit[i]) + Math.abs(slope[i]) * along);
    }
    return steepest;
  }

  private static double settled(double drive) {
    if (drive < ROUNDING) {
      return 0;
    }
    return drive > 1 - ROUNDING ? 1 : drive;
  }
}
