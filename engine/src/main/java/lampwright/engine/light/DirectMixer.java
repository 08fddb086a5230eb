package lampwright.engine.light;

/**
 * Direct colour: the code values of an sRGB or hue colour go through the curve, each to its own
 * emitter. Kelvin and signal colours name a chromaticity and so always go to the matched mixer.
 */
final class DirectMixer implements Mixer {
  private final Curve curve;
  private final boolean white;
  private final boolean whiteFromRgb;
  private final Mixer matched;

  /**
   * @param white whether the package has a white emitter
   * @param whiteFromRgb whether the least of the three drives moves to the white emitter
   * @param matched mixes the colours that name a chromaticity
   */
  DirectMixer(Curve curve, boolean white, boolean whiteFromRgb, Mixer matched) {
    this.curve = curve;
    this.white = white;
    this.whiteFromRgb = whiteFromRgb && white;
    this.matched = matched;
  }

  @Override
  public void mix(Colour colour, double[] into, int at) {
    if (colour instanceof Colour.Srgb c) {
      into[at] = c.red() / 255.0;
      into[at + 1] = c.green() / 255.0;
      into[at + 2] = c.blue() / 255.0;
      codesToDrives(into, at);
    } else if (colour instanceof Colour.Hue h) {
      Hexcone.codes(h.degrees() / 60, h.saturation(), into, at);
      codesToDrives(into, at);
    } else {
      matched.mix(colour, into, at);
    }
  }

  @Override
  public void mixHue(double turns, double saturation, double[] into, int at) {
    Hexcone.codes(turns * 6, saturation, into, at);
    codesToDrives(into, at);
  }

  @Override
  public void mixKelvin(double kelvin, double[] into, int at) {
    matched.mixKelvin(kelvin, into, at);
  }

  @Override
  public boolean has(EmitterKind kind) {
    return kind != EmitterKind.WHITE || white;
  }

  private void codesToDrives(double[] into, int at) {
    double r = curve.light(into[at]);
    double g = curve.light(into[at + 1]);
    double b = curve.light(into[at + 2]);
    double w = whiteFromRgb ? Math.min(r, Math.min(g, b)) : 0;
    into[at] = r - w;
    into[at + 1] = g - w;
    into[at + 2] = b - w;
    into[at + 3] = w;
  }
}
