package lampwright.engine.light;

/**
 * Direct colour: the code values of an sRGB or hue colour go through the curve, each to its own
 * emitter. Kelvin and signal colours name a chromaticity and so always go to the matched mixer.
 */
final class DirectMixer implements Mixer {
  private final Curve curve;
  private final NearCurve near;
  private final double nearError;
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
    this.near = NearCurve.of(curve);
    this.nearError = 2 * near.error();
    this.white = white;
    this.whiteFromRgb = whiteFromRgb && white;
    this.matched = matched;
  }

  @Override
  public Mix mix(Colour colour) {
    double[] drives = new double[SLOTS];
    if (colour instanceof Colour.Srgb c) {
      drives[0] = c.red() / 255.0;
      drives[1] = c.green() / 255.0;
      drives[2] = c.blue() / 255.0;
    } else if (colour instanceof Colour.Hue h) {
      Hexcone.codes(h.degrees() / 60, h.saturation(), drives, 0);
    } else {
      return matched.mix(colour);
    }
    codesToDrives(drives, 0);
    return new LinearMix(drives);
  }

  @Override
  public void mixHue(double turns, double saturation, double light, double[] into, int at) {
    Hexcone.codes(turns * 6, saturation, into, at);
    codesToDrives(into, at);
    dim(light, into, at);
  }

  // White is taken from each of the three, so that two errors meet.
  @Override
  public double mixHueNearly(double turns, double saturation, double light, double[] into, int at) {
    Hexcone.codes(turns * 6, saturation, into, at);
    toDrives(near.light(into[at]), near.light(into[at + 1]), near.light(into[at + 2]), into, at);
    dim(light, into, at);
    return nearError;
  }

  private static void dim(double light, double[] into, int at) {
    for (int i = at; i < at + SLOTS; i++) {
      into[i] *= light;
    }
  }

  @Override
  public void mixKelvin(double kelvin, double most, double light, double[] into, int at) {
    matched.mixKelvin(kelvin, most, light, into, at);
  }

  @Override
  public double kelvinLuminance(double kelvin) {
    return matched.kelvinLuminance(kelvin);
  }

  @Override
  public boolean has(EmitterKind kind) {
    return kind != EmitterKind.WHITE || white;
  }

  private void codesToDrives(double[] into, int at) {
    toDrives(curve.light(into[at]), curve.light(into[at + 1]), curve.light(into[at + 2]), into, at);
  }

  private void toDrives(double r, double g, double b, double[] into, int at) {
    double w = whiteFromRgb ? Math.min(r, Math.min(g, b)) : 0;
    into[at] = r - w;
    into[at + 1] = g - w;
    into[at + 2] = b - w;
    into[at + 3] = w;
  }
}
