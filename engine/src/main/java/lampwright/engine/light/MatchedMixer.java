package lampwright.engine.light;

import java.util.Map;
import java.util.Optional;

/**
 * Matched colour: chromaticities mixed from the emitters' own, as bright as the drives allow.
 *
 * <p>sRGB and hue colours are then dimmed to their own luminance, of which the package's brightest
 * white of D65 is 1; a colour that can't be so bright is as bright as it can be.
 */
public final class MatchedMixer implements Mixer {
  private static final double[] DECODED = new double[256];

  static {
    for (int code = 0; code < DECODED.length; code++) {
      DECODED[code] = Curve.Srgb.decode(code / 255.0);
    }
  }

  private final Gamut gamut;
  private final boolean white;
  private final double whiteLight;

  /**
   * The mixer of one package.
   *
   * @throws IllegalArgumentException as {@link Gamut} does
   */
  public MatchedMixer(Map<EmitterKind, Emitter> emitters) {
    gamut = new Gamut(emitters);
    white = emitters.containsKey(EmitterKind.WHITE);
    whiteLight = gamut.brightest(Chromaticity.D65).millicandela();
  }

  @Override
  public void mix(Colour colour, double[] into, int at) {
    if (colour instanceof Colour.Srgb c) {
      mixLinear(DECODED[c.red()], DECODED[c.green()], DECODED[c.blue()], into, at);
    } else if (colour instanceof Colour.Hue h) {
      mixSixths(h.degrees() / 60, h.saturation(), into, at);
    } else if (colour instanceof Colour.Kelvin k) {
      mixKelvin(k.kelvin(), into, at);
    } else if (colour instanceof Colour.Signal s) {
      Chromaticity target = s.colour().chromaticity();
      gamut.brightest(target.x(), target.y(), into, at);
    } else if (colour instanceof Colour.Drive d) {
      into[at] = d.r();
      into[at + 1] = d.g();
      into[at + 2] = d.b();
      into[at + 3] = white ? d.w() : 0;
    }
  }

  @Override
  public void mixHue(double turns, double saturation, double[] into, int at) {
    mixSixths(turns * 6, saturation, into, at);
  }

  @Override
  public void mixKelvin(double kelvin, double[] into, int at) {
    Planck.chromaticity(kelvin, into, at);
    gamut.brightest(into[at], into[at + 1], into, at);
  }

  @Override
  public boolean has(EmitterKind kind) {
    return kind != EmitterKind.WHITE || white;
  }

  /**
   * What this package does for a colour at level 1, so that a colour out of reach can be told.
   *
   * @return none for black and for drives, which name no chromaticity
   */
  public Optional<MatchedMix> explain(Colour colour) {
    return target(colour)
        .map(
            target -> {
              MatchedMix brightest = gamut.brightest(target);
              double[] drives = new double[SLOTS];
              mix(colour, drives, 0);
              // Dimming scales all drives alike, so that the greatest, 1 before, is the factor.
              double factor =
                  Math.max(Math.max(drives[0], drives[1]), Math.max(drives[2], drives[3]));
              return new MatchedMix(
                  target,
                  brightest.reached(),
                  brightest.distance(),
                  new Colour.Drive(drives[0], drives[1], drives[2], drives[3]),
                  brightest.millicandela() * factor);
            });
  }

  /** The chromaticity that a colour names; none for black and for drives. */
  public static Optional<Chromaticity> target(Colour colour) {
    if (colour instanceof Colour.Kelvin k) {
      return Optional.of(Planck.chromaticity(k.kelvin()));
    }
    if (colour instanceof Colour.Signal s) {
      return Optional.of(s.colour().chromaticity());
    }
    double[] rgb = new double[3];
    if (colour instanceof Colour.Srgb c) {
      rgb[0] = DECODED[c.red()];
      rgb[1] = DECODED[c.green()];
      rgb[2] = DECODED[c.blue()];
    } else if (colour instanceof Colour.Hue h) {
      Hexcone.codes(h.degrees() / 60, h.saturation(), rgb, 0);
      for (int i = 0; i < rgb.length; i++) {
        rgb[i] = decode(rgb[i]);
      }
    }
    double y = SrgbSpace.y(rgb[0], rgb[1], rgb[2]);
    if (y == 0) {
      return Optional.empty();
    }
    double x = SrgbSpace.x(rgb[0], rgb[1], rgb[2]);
    double sum = x + y + SrgbSpace.z(rgb[0], rgb[1], rgb[2]);
    return Optional.of(new Chromaticity(x / sum, y / sum));
  }

  private void mixSixths(double sixths, double saturation, double[] into, int at) {
    Hexcone.codes(sixths, saturation, into, at);
    mixLinear(decode(into[at]), decode(into[at + 1]), decode(into[at + 2]), into, at);
  }

  private void mixLinear(double r, double g, double b, double[] into, int at) {
    double x = SrgbSpace.x(r, g, b);
    double y = SrgbSpace.y(r, g, b);
    if (y == 0) {
      into[at] = 0;
      into[at + 1] = 0;
      into[at + 2] = 0;
      into[at + 3] = 0;
      return;
    }
    double sum = x + y + SrgbSpace.z(r, g, b);
    double light = gamut.brightest(x / sum, y / sum, into, at);
    double wanted = y * whiteLight;
    if (wanted < light) {
      double factor = wanted / light;
      for (int i = 0; i < SLOTS; i++) {
        into[at + i] *= factor;
      }
    }
  }

  // Most codes of a hue are 0 or 1, and the power takes most of the time of a mix.
  private static double decode(double code) {
    return code == 0 || code == 1 ? code : Curve.Srgb.decode(code);
  }
}
