package lampwright.engine.light;

/** Matched colour: at any amount of light its chromaticity, for the least current. */
public final class LeastCurrentMix implements Mix {
  private final LeastCurrent rule;
  private final double[] unsplit;

  /**
   * @param unsplit the drives at full light with none of the emitter that is free to choose; some
   *     may be below 0 or above 1
   */
  LeastCurrentMix(LeastCurrent rule, double[] unsplit) {
    this.rule = rule;
    this.unsplit = unsplit;
  }

  @Override
  public void write(double light, double[] into, int at) {
    rule.write(unsplit, 0, light, into, at);
  }

  @Override
  public double steepness() {
    return rule.steepness(unsplit);
  }

  @Override
  public Mix dimmed(double light) {
    double[] less = unsplit.clone();
    for (int i = 0; i < less.length; i++) {
      less[i] *= light;
    }
    return new LeastCurrentMix(rule, less);
  }
}
