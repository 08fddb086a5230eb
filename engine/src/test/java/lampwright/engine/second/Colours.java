package lampwright.engine.second;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import tools.jackson.databind.JsonNode;

/** What the colours of a project are on the packages of its rig. */
final class Colours {
  private static final Chromaticity D65 = new Chromaticity(0.3127, 0.3290);

  private final DoubleUnaryOperator curve;
  private final boolean matching;
  private final boolean whiteFromRgb;

  Colours(JsonNode rig) {
    curve = Dimming.of(rig.path("curve"));
    matching = Fields.text(rig, "colourMatching", "direct").equals("emitters");
    whiteFromRgb = Fields.flag(rig, "whiteFromRgb", false);
  }

  double curve(double level) {
    return curve.applyAsDouble(level);
  }

  Mix mix(JsonNode colour, LightPackage on) {
    if (colour.isString()) {
      return srgb(colour.stringValue(), on);
    }
    if (colour.has("srgb")) {
      return srgb(colour.get("srgb").stringValue(), on);
    }
    if (colour.has("hue")) {
      double h = colour.get("hue").doubleValue() / 60;
      return hue(h, Fields.number(colour, "saturation", 1), on);
    }
    if (colour.has("kelvin")) {
      return whole(Tables.temperature(colour.get("kelvin").doubleValue()), on);
    }
    if (colour.has("signal")) {
      return whole(Tables.signal(colour.get("signal").stringValue()), on);
    }
    return drive(colour.get("drive"), on);
  }

  private static Mix drive(JsonNode drive, LightPackage on) {
    double[] drives = {
      Fields.number(drive, "r", 0),
      Fields.number(drive, "g", 0),
      Fields.number(drive, "b", 0),
      Fields.number(drive, "w", 0)
    };
    if (on.gamut().isEmpty()) {
      return output(Math.max(Math.max(drives[0], drives[1]), Math.max(drives[2], drives[3])));
    }
    if (!on.gamut().get().hasWhite()) {
      drives[3] = 0;
    }
    return Mix.proportional(drives);
  }

  private static Mix output(double drive) {
    return Mix.proportional(drive, 0, 0, 0);
  }

  private Mix srgb(String code, LightPackage on) {
    int all = Integer.parseInt(code.substring(1), 16);
    double r = (all >> 16) / 255.0;
    double g = (all >> 8 & 0xFF) / 255.0;
    double b = (all & 0xFF) / 255.0;
    if (on.gamut().isEmpty()) {
      return output(curve(Math.max(r, Math.max(g, b))));
    }
    return codes(r, g, b, on.gamut().get());
  }

  /**
   * A hue at full code.
   *
   * @param h six times the hue in turns
   */
  Mix hue(double h, double saturation, LightPackage on) {
    if (on.gamut().isEmpty()) {
      return output(1);
    }
    return codes(
        code(h, saturation), code(h + 4, saturation), code(h + 2, saturation), on.gamut().get());
  }

  private static double code(double h, double s) {
    double mod = h % 6 < 0 ? h % 6 + 6 : h % 6;
    return 1 - s * (1 - Math.min(1, Math.max(0, Math.abs(mod - 3) - 1)));
  }

  private Mix codes(double r, double g, double b, Gamut gamut) {
    return matching ? matched(r, g, b, gamut) : direct(curve(r), curve(g), curve(b), gamut);
  }

  private Mix direct(double r, double g, double b, Gamut gamut) {
    if (!whiteFromRgb || !gamut.hasWhite()) {
      return Mix.proportional(r, g, b, 0);
    }
    double w = Math.min(r, Math.min(g, b));
    return Mix.proportional(r - w, g - w, b - w, w);
  }

  private static Mix matched(double codeR, double codeG, double codeB, Gamut gamut) {
    double r = Dimming.srgb(codeR);
    double g = Dimming.srgb(codeG);
    double b = Dimming.srgb(codeB);
    double x = 0.4124 * r + 0.3576 * g + 0.1805 * b;
    double y = 0.2126 * r + 0.7152 * g + 0.0722 * b;
    double z = 0.0193 * r + 0.1192 * g + 0.9505 * b;
    if (y == 0) {
      return Mix.matched(gamut, new double[4]);
    }
    Gamut.Point point = gamut.point(new Chromaticity(x / (x + y + z), y / (x + y + z)));
    double white = gamut.point(D65).greatestLuminance();
    return Mix.matched(gamut, point.atLuminance(Math.min(y * white, point.greatestLuminance())));
  }

  /** As bright as the package can make it. */
  private static Mix whole(Chromaticity at, LightPackage on) {
    if (on.gamut().isEmpty()) {
      return output(1);
    }
    Gamut.Point point = on.gamut().get().point(at);
    return Mix.matched(on.gamut().get(), point.atLuminance(point.greatestLuminance()));
  }

  /** A tint on its way: the temperature now, of a luminance that both ends reach. */
  static Mix tint(double kelvin, double toKelvin, double now, LightPackage on) {
    if (on.gamut().isEmpty()) {
      return output(1);
    }
    Gamut gamut = on.gamut().get();
    double luminance =
        List.of(kelvin, toKelvin, now).stream()
            .mapToDouble(k -> gamut.point(Tables.temperature(k)).greatestLuminance())
            .min()
            .orElseThrow();
    return Mix.matched(gamut, gamut.point(Tables.temperature(now)).atLuminance(luminance));
  }
}
