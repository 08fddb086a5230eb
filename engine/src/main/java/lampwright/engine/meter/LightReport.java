package lampwright.engine.meter;

import java.util.Optional;
import java.util.OptionalInt;
import lampwright.engine.light.Chromaticity;

/**
 * What the eye gets of a lamp over a scene.
 *
 * @param id of the lamp
 * @param train how it flashes, if it does: measured on the pixel whose light changes most often
 * @param caution the flash caution
 * @param brightest the colour of its brightest pixel in its brightest frame; none if it stays dark
 * @param brightestFrame the first frame in which that pixel shines brightest
 * @param dither what dithering does to it, where the scene is dithered and it does
 */
public record LightReport(
    String id,
    Optional<FlashTrain> train,
    LampCaution caution,
    Optional<Chromaticity> brightest,
    int brightestFrame,
    Optional<DitherFlicker> dither) {

  /** Where in it most general flashes are; of equals the whole lamp. */
  public FlashSpot worstGeneral() {
    return spot(caution.whole().general(), caution.general());
  }

  /** Where in it most flashes to or from saturated red are; of equals the whole lamp. */
  public FlashSpot worstRed() {
    return spot(caution.whole().red(), caution.red());
  }

  private FlashSpot spot(FlashCaution.Worst whole, LampCaution.OfPixel pixel) {
    Optional<String> lamp = Optional.of(id);
    return new FlashSpot(lamp, OptionalInt.empty(), whole)
        .orWorse(new FlashSpot(lamp, OptionalInt.of(pixel.pixel()), pixel.worst()));
  }
}
