package lampwright.engine.meter;

import lampwright.engine.facts.TradeNumbers;

/**
 * How dithering alone makes an emitter alternate between two bytes while the light that is meant
 * stays as it is.
 *
 * @param pixel its place in the lamp, from 0; 0 for an output
 * @param low the lower byte
 * @param high the higher byte, above {@code low}
 * @param hertz how often it goes up and down again in the second in which it does so most
 */
public record DitherFlicker(int pixel, int low, int high, int hertz) {
  private static final double FULL = 255;

  /** A step of this share of the light counts as a change. */
  public static final double LEAST_STEP =
      TradeNumbers.number("flash caution", "least change of luminance");

  /** The higher byte as a share of full duty, 0 to 1. */
  public double share() {
    return high / FULL;
  }

  /** Whether its step is a tenth of the light or more. */
  public boolean isCoarse() {
    return high - low >= LEAST_STEP * high;
  }
}
