package lampwright.engine.light;

/** Drives that go with the light: direct colour, drives as given, and driver outputs. */
public final class LinearMix implements Mix {
  private final double[] full;

  /**
   * @param full four drives at full light, in the order of {@link EmitterKind}
   */
  LinearMix(double... full) {
    this.full = full.clone();
  }

  @Override
  public void write(double light, double[] into, int at) {
    for (int i = 0; i < Mixer.SLOTS; i++) {
      into[at + i] = full[i] * light;
    }
  }

  @Override
  public double steepness() {
    return 1;
  }

  @Override
  public Mix dimmed(double light) {
    double[] less = new double[Mixer.SLOTS];
    write(light, less, 0);
    return new LinearMix(less);
  }
}
