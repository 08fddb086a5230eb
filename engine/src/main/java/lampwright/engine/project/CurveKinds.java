package lampwright.engine.project;

import lampwright.engine.light.Curve;

/** The words for curves in project files. */
final class CurveKinds {
  static final String POWER = "power";
  static final String SRGB = "srgb";
  static final String CIE_LIGHTNESS = "cie-lightness";
  static final String LINEAR = "linear";
  static final double DEFAULT_GAMMA = 2.2;

  static final ValueKind<String> KIND =
      ValueKind.choice(new String[] {POWER, SRGB, CIE_LIGHTNESS, LINEAR}, kind -> kind);

  private CurveKinds() {}

  static String of(Curve curve) {
    if (curve instanceof Curve.Power) {
      return POWER;
    }
    if (curve instanceof Curve.Srgb) {
      return SRGB;
    }
    return curve instanceof Curve.CieLightness ? CIE_LIGHTNESS : LINEAR;
  }

  /** The curve of a kind that has no parameters. */
  static Curve of(String kind) {
    return switch (kind) {
      case SRGB -> new Curve.Srgb();
      case CIE_LIGHTNESS -> new Curve.CieLightness();
      default -> new Curve.Linear();
    };
  }
}
