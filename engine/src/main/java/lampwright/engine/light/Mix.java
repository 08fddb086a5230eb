package lampwright.engine.light;

/**
 * A colour as one kind of package mixes it, made ready for any amount of light. Immutable, and safe
 * for use by several threads.
 */
public sealed interface Mix permits LinearMix, LeastCurrentMix {
  /**
   * Writes the drives at an amount of light to {@code into[at .. at + 3]}.
   *
   * @param light 0 to 1, linear: 1 is the colour at full level
   */
  void write(double light, double[] into, int at);

  /** By how much more than the light a drive changes at most; 1 or more. */
  double steepness();

  /**
   * The same colour with less light.
   *
   * @param light 0 to 1, what is full from now on
   */
  Mix dimmed(double light);
}
