package lampwright.engine.meter;

import java.util.Optional;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.light.SrgbSpace;

/**
 * What the eye gets of a lamp, or of the whole model, over a scene.
 *
 * @param id of the lamp; empty for the whole model
 * @param train how it flashes, if it does
 * @param caution the flash caution
 * @param brightest the colour of its brightest frame; none if it stays dark
 * @param brightestFrame the first frame in which it shines brightest
 */
public record LightReport(
    String id,
    Optional<FlashTrain> train,
    FlashCaution caution,
    Optional<Chromaticity> brightest,
    int brightestFrame) {

  /**
   * Judges a sequence of light. Relative luminance is taken against the brightest frame of the
   * scene: the eye of one who watches a model in a dark room adapts to it, and so nothing that
   * flashes passes for being dim.
   *
   * @param xyz CIE XYZ of each frame, three numbers each; overwritten
   */
  static LightReport of(String id, double[] xyz, double framesPerSecond, boolean loop) {
    int frames = xyz.length / 3;
    int brightest = 0;
    for (int i = 1; i < frames; i++) {
      if (xyz[3 * i + 1] > xyz[3 * brightest + 1]) {
        brightest = i;
      }
    }
    double peak = xyz[3 * brightest + 1];
    if (peak == 0) {
      FlashCaution.Worst none = new FlashCaution.Worst(0, 0);
      return new LightReport(
          id, Optional.empty(), new FlashCaution(none, none), Optional.empty(), 0);
    }
    double sum = xyz[3 * brightest] + peak + xyz[3 * brightest + 2];
    Chromaticity colour = new Chromaticity(xyz[3 * brightest] / sum, peak / sum);
    double[] luminance = new double[frames];
    for (int i = 0; i < frames; i++) {
      luminance[i] = xyz[3 * i + 1] / peak;
      SrgbSpace.fromXyz(
          xyz[3 * i] / peak, xyz[3 * i + 1] / peak, xyz[3 * i + 2] / peak, xyz, 3 * i);
    }
    return new LightReport(
        id,
        FlashTrain.measure(luminance, framesPerSecond, loop),
        FlashCaution.measure(xyz, framesPerSecond, loop),
        Optional.of(colour),
        brightest);
  }
}
