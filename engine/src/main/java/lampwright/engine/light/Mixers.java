package lampwright.engine.light;

import java.util.Map;

/** Makes the mixer that a rig's colour settings ask for. */
public final class Mixers {
  private Mixers() {}

  /**
   * The mixer of one pixel type.
   *
   * @param curve the map from code values to light, used by direct colour
   * @param matching how sRGB and hue colours become drives
   * @param whiteFromRgb whether direct colour moves the least of three drives to a white emitter
   * @param emitters the package's emitters; red, green and blue at least
   */
  public static Mixer forPixel(
      Curve curve,
      ColourMatching matching,
      boolean whiteFromRgb,
      Map<EmitterKind, FittedEmitter> emitters) {
    Mixer matched = new MatchedMixer(emitters);
    return switch (matching) {
      case DIRECT ->
          new DirectMixer(curve, emitters.containsKey(EmitterKind.WHITE), whiteFromRgb, matched);
      case EMITTERS -> matched;
    };
  }

  /** The mixer of a driver output. */
  public static Mixer forOutput(Curve curve) {
    return new OutputMixer(curve);
  }
}
