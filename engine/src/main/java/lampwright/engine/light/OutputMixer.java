package lampwright.engine.light;

/**
 * A driver output: one emitter of one colour, so that a colour says only how strong it shines. The
 * greatest code value of an sRGB or hue colour goes through the curve, the greatest drive stands as
 * it is, and a kelvin or signal colour is full on.
 */
final class OutputMixer implements Mixer {
  private final Curve curve;

  OutputMixer(Curve curve) {
    this.curve = curve;
  }

  @Override
  public void mix(Colour colour, double[] into, int at) {
    if (colour instanceof Colour.Srgb c) {
      set(curve.light(Math.max(c.red(), Math.max(c.green(), c.blue())) / 255.0), into, at);
    } else if (colour instanceof Colour.Drive d) {
      set(Math.max(Math.max(d.r(), d.g()), Math.max(d.b(), d.w())), into, at);
    } else {
      // The greatest code of a hue at value 1 is 1; kelvin and signal colours are full on.
      set(1, into, at);
    }
  }

  @Override
  public void mixHue(double turns, double saturation, double[] into, int at) {
    set(1, into, at);
  }

  @Override
  public void mixKelvin(double kelvin, double[] into, int at) {
    set(1, into, at);
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
