package lampwright.engine.meter;

/**
 * The flash caution of a lamp: of its light as a whole, and of its pixels one by one.
 *
 * @param whole of the sum of its pixels
 * @param general of the pixel with most flashes of luminance; of several the first
 * @param red of the pixel with most red flashes, likewise
 */
public record LampCaution(FlashCaution whole, OfPixel general, OfPixel red) {
  /**
   * The caution of one pixel.
   *
   * @param pixel its place in the lamp, from 0; 0 for an output
   */
  public record OfPixel(int pixel, FlashCaution.Worst worst) {}

  /** Whether neither the lamp nor any of its pixels flashes more often than may be. */
  public boolean passes() {
    return whole.passes() && general.worst.passes() && red.worst.passes();
  }
}
