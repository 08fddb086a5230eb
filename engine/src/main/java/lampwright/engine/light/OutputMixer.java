package lampwright.engine.light;

/**
 * A driver output: one emitter of one colour, so that a colour says only how strong it shines. The
 * greatest code value of an sRGB or hue colour goes through the curve, the greatest drive stays as
 * it is, and a kelvin or signal colour is full on.
 */
final class OutputMixer implements Mixer {
  private final Curve curve;

  OutputMixer(Curve curve) {
    this.curve = curve;
  }

  @Override
  public Mix mix(Colour colour) {
    return new LinearMix(drive(colour), 0, 0, 0);
  }

  private double drive(Colour colour) {
    if (colour instanceof Colour.Srgb c) {
      return curve.light(Math.max(c.red(), Math.max(c.green(), c.blue())) / 255.0);
    }
    if (colour instanceof Colour.Drive d) {
      return Math.max(Math.max(d.r(), d.g()), Math.max(d.b(), d.w()));
    }
    // The greatest code of a hue at value 1 is 1; kelvin and signal colours are full on.
    return 1;
  }

  @Override
  public void mixHue(double turns, double saturation, double light, double[] into, int at) {
    set(light, into, at);
  }

  @Override
  public void mixKelvin(double kelvin, double most, double light, double[] into, int at) {
    set(light, into, at);
  }

  @Override
  public double kelvinLuminance(double kelvin) {
    return 1;
  }

  @Override
  public boolean has(EmitterKind kind) {
    return kind == EmitterKind.RED;
  }

  private static void set(double drive, double[] into, int at) {
    into[at] = drive;
    into[at + 1] = 0;
    into[at + 2] = 0;
    into[at + 3] = 0;
  }
}
