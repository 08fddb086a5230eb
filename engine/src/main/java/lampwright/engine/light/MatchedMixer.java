package lampwright.engine.light;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;

/**
 * Matched colour: chromaticities mixed from the emitters' own for the least current. Kelvin and
 * signal colours at full level are as bright as the drives allow. sRGB and hue colours have their
 * own luminance, of which the package's brightest white of D65 is 1; a colour that can't be so
 * bright is as bright as it can be.
 */
public final class MatchedMixer implements Mixer {
  private static final double[] DECODED = new double[256];

  static {
    for (int code = 0; code < DECODED.length; code++) {
      DECODED[code] = Curve.Srgb.decode(code / 255.0);
    }
  }

  private final Gamut gamut;
  private final LeastCurrent leastCurrent;
  private final boolean white;
  private final double whiteLight;

  /**
   * The mixer of one package.
   *
   * @throws IllegalArgumentException as {@link Gamut} does
   */
  public MatchedMixer(Map<EmitterKind, FittedEmitter> emitters) {
    gamut = new Gamut(FittedEmitter.light(emitters));
    leastCurrent = new LeastCurrent(gamut, emitters);
    white = emitters.containsKey(EmitterKind.WHITE);
    whiteLight = gamut.brightest(Chromaticity.D65).millicandela();
  }

  @Override
  public Mix mix(Colour colour) {
    if (colour instanceof Colour.Drive d) {
      return new LinearMix(d.r(), d.g(), d.b(), white ? d.w() : 0);
    }
    double[] unsplit = new double[SLOTS];
    unsplit(colour, unsplit);
    return new LeastCurrentMix(leastCurrent, unsplit);
  }

  // Gives the luminance at full light, mcd.
  private double unsplit(Colour colour, double[] into) {
    if (colour instanceof Colour.Srgb c) {
      return unsplit(DECODED[c.red()], DECODED[c.green()], DECODED[c.blue()], into, 0);
    }
    if (colour instanceof Colour.Hue h) {
      return unsplitSixths(h.degrees() / 60, h.saturation(), into, 0);
    }
    Chromaticity target = target(colour).orElseThrow();
    return gamut.unsplit(target.x(), target.y(), Double.POSITIVE_INFINITY, into, 0);
  }

  @Override
  public void mixHue(double turns, double saturation, double light, double[] into, int at) {
    unsplitSixths(turns * 6, saturation, into, at);
    leastCurrent.write(into, at, light, into, at);
  }

  @Override
  public void mixKelvin(double kelvin, double most, double light, double[] into, int at) {
    Planck.chromaticity(kelvin, into, at);
    gamut.unsplit(into[at], into[at + 1], most, into, at);
    leastCurrent.write(into, at, light, into, at);
  }

  @Override
  public double kelvinLuminance(double kelvin) {
    return gamut.brightest(Planck.chromaticity(kelvin)).millicandela();
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
              double millicandela = unsplit(colour, drives);
              leastCurrent.write(drives, 0, 1, drives, 0);
              return new MatchedMix(
                  target,
                  brightest.reached(),
                  brightest.distance(),
                  new Colour.Drive(drives[0], drives[1], drives[2], drives[3]),
                  millicandela);
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

  private double unsplitSixths(double sixths, double saturation, double[] into, int at) {
    Hexcone.codes(sixths, saturation, into, at);
    return unsplit(decode(into[at]), decode(into[at + 1]), decode(into[at + 2]), into, at);
  }

  private double unsplit(double r, double g, double b, double[] into, int at) {
    double x = SrgbSpace.x(r, g, b);
    double y = SrgbSpace.y(r, g, b);
    if (y == 0) {
      Arrays.fill(into, at, at + SLOTS, 0);
      return 0;
    }
    double sum = x + y + SrgbSpace.z(r, g, b);
    return gamut.unsplit(x / sum, y / sum, y * whiteLight, into, at);
  }

  // Most codes of a hue are 0 or 1, and the power takes most of the time of a mix.
  private static double decode(double code) {
    return code == 0 || code == 1 ? code : Curve.Srgb.decode(code);
  }
}
