package lampwright.engine.second;

import java.util.function.DoubleUnaryOperator;
import tools.jackson.databind.JsonNode;

/** From level to light: the curve of a rig. */
final class Dimming {
  private Dimming() {}

  static DoubleUnaryOperator of(JsonNode curve) {
    String kind = curve.path("kind").asString("power");
    double gamma = Fields.number(curve, "gamma", 2.2);
    return switch (kind) {
      case "power" -> v -> pow(v, gamma);
      case "srgb" -> Dimming::srgb;
      case "cie-lightness" -> Dimming::lightness;
      case "linear" -> v -> v;
      default -> throw new IllegalArgumentException(kind);
    };
  }

  private static double pow(double v, double gamma) {
    if (gamma == 1) {
      return v;
    }
    return gamma == 2 ? v * v : StrictMath.pow(v, gamma);
  }

  static double srgb(double v) {
    return v <= 0.04045 ? v / 12.92 : StrictMath.pow((v + 0.055) / 1.055, 2.4);
  }

  private static double lightness(double v) {
    double lightness = 100 * v;
    if (lightness <= 8) {
      return lightness / (24389.0 / 27);
    }
    double r = (lightness + 16) / 116;
    return r * r * r;
  }
}
