package lampwright.engine.scene;

import java.util.Objects;

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

  /**
   * Blends a row of drives over others.
   *
   * @param over the row, from {@code from}
   * @param a how far the cue is faded in, 0 to 1
   * @param under the drives so far, from {@code to}; replaced by those that result
   */
  public void lay(double[] over, int from, double a, double[] under, int to, int count) {
    Objects.checkFromIndexSize(from, count, over.length);
    Objects.checkFromIndexSize(to, count, under.length);
    if (this == COVER && a == 1) {
      System.arraycopy(over, from, under, to, count);
      return;
    }
    // A loop of its own for each, in which the constant's own method is known and comes inline.
    switch (this) {
      case COVER -> {
        for (int i = 0; i < count; i++) {
          under[to + i] = COVER.blend(under[to + i], over[from + i], a);
        }
      }
      case ADD -> {
        for (int i = 0; i < count; i++) {
          under[to + i] = ADD.blend(under[to + i], over[from + i], a);
        }
      }
      case BRIGHTER -> {
        for (int i = 0; i < count; i++) {
          under[to + i] = BRIGHTER.blend(under[to + i], over[from + i], a);
        }
      }
      case SCALE -> {
        for (int i = 0; i < count; i++) {
          under[to + i] = SCALE.blend(under[to + i], over[from + i], a);
        }
      }
    }
  }
}
