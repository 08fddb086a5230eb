package lampwright.engine.light;

/**
 * Turns colours into the drives of one kind of package, or of a driver output.
 *
 * <p>Drives are four numbers 0 to 1, in the order of {@link EmitterKind}: red, green, blue, white.
 * An emitter that the package lacks stays 0. A driver output has one emitter; its drive is in the
 * first place. Mixers are safe for use by several threads.
 */
public interface Mixer {
  /** How many drives one package takes in an array. */
  int SLOTS = 4;

  /** The mix of a colour. */
  Mix mix(Colour colour);

  /**
   * Writes the drives of a hue to {@code into[at .. at + 3]}, as {@link #mix} does for {@link
   * Colour.Hue} without making one.
   *
   * @param turns hue as a share of the circle, 0 to 1
   * @param saturation 0 to 1
   * @param light 0 to 1, linear
   */
  void mixHue(double turns, double saturation, double light, double[] into, int at);

  /**
   * As {@link #mixHue}, and quicker where that can be had for a little error.
   *
   * @return the most that a drive is off by, 0 or more
   */
  default double mixHueNearly(
      double turns, double saturation, double light, double[] into, int at) {
    mixHue(turns, saturation, light, into, at);
    return 0;
  }

  /**
   * Writes the drives of a black body's white to {@code into[at .. at + 3]}.
   *
   * @param kelvin 1,667 to 25,000 K
   * @param most the luminance at full light, in the unit of {@link #kelvinLuminance}; less where
   *     the package can't be so bright
   * @param light 0 to 1, linear
   */
  void mixKelvin(double kelvin, double most, double light, double[] into, int at);

  /**
   * The greatest luminance of a black body's white; in mcd, or without a unit where all are alike.
   *
   * @param kelvin 1,667 to 25,000 K
   */
  double kelvinLuminance(double kelvin);

  /** Whether this package has the emitter; for a driver output only the first place counts. */
  boolean has(EmitterKind kind);
}
