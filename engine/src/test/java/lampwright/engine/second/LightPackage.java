package lampwright.engine.second;

import java.util.Optional;

/**
 * A pixel of a chain, or a driver output.
 *
 * @param slots of its bytes in their order: 0 red, 1 green, 2 blue, 3 white
 * @param milliamps of its slots at full drive
 * @param gamut of a pixel; an output has none
 */
@SuppressWarnings("ArrayRecordComponent") // never compared
record LightPackage(int[] slots, double[] milliamps, Optional<Gamut> gamut) {
  static LightPackage output(double milliamps) {
    return new LightPackage(new int[] {0}, new double[] {milliamps, 0, 0, 0}, Optional.empty());
  }

  static LightPackage pixel(PixelKind kind, Gamut gamut) {
    double[] milliamps = new double[4];
    for (int i = 0; i < kind.emitters().size(); i++) {
      milliamps[i] = kind.emitters().get(i).milliamps();
    }
    return new LightPackage(
        kind.order().chars().map("RGBW"::indexOf).toArray(), milliamps, Optional.of(gamut));
  }

  /** Emitters, which have the slots from 0 on. */
  int emitters() {
    return slots.length;
  }
}
