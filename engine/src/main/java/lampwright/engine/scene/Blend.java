package lampwright.engine.scene;

/** How a cue's light meets the light under it, in linear drive. */
public enum Blend {
  /** under x (1 - a) + over x a. */
  COVER("cover") {
    @Override
    public double blend(double under, double over, double a) {
      return under * (1 - a) + over * a;
    }
  },
  /** min(1, under + over x a). */
  ADD("add") {
    @Override
    public double blend(double under, double over, double a) {
      return Math.min(1, under + over * a);
    }
  },
  /** max(under, over x a). */
  BRIGHTER("brighter") {
    @Override
    public double blend(double under, double over, double a) {
      return Math.max(under, over * a);
    }
  },
  /** under x (1 - a + a x over). */
  SCALE("scale") {
    @Override
    public double blend(double under, double over, double a) {
      return under * (1 - a + a * over);
    }
  };

  private final String key;

  Blend(String key) {
    this.key = key;
  }

  /** The word for this in project files. */
  public String key() {
    return key;
  }

  /**
   * The drive that results.
   *
   * @param under drive so far, 0 to 1
   * @param over drive of the cue, 0 to 1
   * @param a how far the cue is faded in, 0 to 1
   */
  public abstract double blend(double under, double over, double a);
}
