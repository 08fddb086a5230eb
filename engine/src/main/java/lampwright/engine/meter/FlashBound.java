package lampwright.engine.meter;

import java.util.Arrays;
import java.util.List;
import lampwright.engine.facts.TradeNumbers;

/**
 * Bounds the general flashes of lights that are seen together, whatever the phases between them.
 *
 * <p>A change of the sum is at least a tenth of its greatest. If every light is given a part of
 * that tenth, then in each rise of the sum some light rises by its own part or more, and in each
 * fall some light falls so. Rises of the sum do not overlap, so no second has more of them than all
 * lights together have such rises of their own; that of the first one may have been earlier.
 */
final class FlashBound {
  /** One light. */
  static final class Light {
    private final double[] luminance;
    private final boolean loops;

    /**
     * @param luminance in each frame, at least 0; not to be changed
     * @param loops whether the first frame follows the last; else it stays at the last
     */
    Light(double[] luminance, boolean loops) {
      this.luminance = luminance;
      this.loops = loops;
    }

    double least() {
      return Arrays.stream(luminance).min().orElse(0);
    }

    double most() {
      return Arrays.stream(luminance).max().orElse(0);
    }
  }

  private static final double LEAST_CHANGE =
      TradeNumbers.number("flash caution", "least change of luminance");

  // Luminances are sums of products of floats.
  private static final double ROUNDING = 1e-5;

  private FlashBound() {}

  /**
   * How many flashes no second exceeds.
   *
   * @param second frames of a second, at least 1
   */
  static int perSecond(List<Light> lights, int second) {
    double least = lights.stream().mapToDouble(Light::least).sum();
    double swings = lights.stream().mapToDouble(light -> light.most() - light.least()).sum();
    double widest =
        lights.stream().mapToDouble(light -> light.most() - light.least()).max().orElse(0);
    // At the greatest of one light the others are no darker than their least.
    double change = LEAST_CHANGE * (least + widest) * (1 - ROUNDING);
    if (widest == 0 || swings < change) {
      return 0;
    }
    int rises = 0;
    int falls = 0;
    for (Light light : lights) {
      double step = change * (light.most() - light.least()) / swings * (1 - ROUNDING);
      if (step > 0) {
        rises += most(light, second, step, 1);
        falls += most(light, second, step, -1);
      }
    }
    return Math.min((rises + falls + 1) / 2, Math.min(rises, falls) + 1);
  }

  // How often it rises by a step in any second; one after another, each as soon as it can. A rise
  // that is looked for from a later frame on ends no sooner, so no other choice has more.
  private static int most(Light light, int second, double step, int sign) {
    int frames = light.luminance.length;
    int shown = light.loops ? 2 * frames + second : frames;
    SlidingCount count = new SlidingCount(second);
    double foot = Double.POSITIVE_INFINITY;
    for (int i = 0; i < shown; i++) {
      double now = sign * light.luminance[i % frames];
      foot = Math.min(foot, now);
      if (now - foot >= step) {
        count.add(i);
        foot = now;
      }
    }
    return count.most;
  }

  /** The most events in any second. */
  private static final class SlidingCount {
    private final int[] ring;
    private int added;
    private int first;
    private int most;

    SlidingCount(int second) {
      ring = new int[second];
    }

    // No frame has two, so that a second holds no more than it has frames.
    void add(int frame) {
      while (first < added && frame - ring[first % ring.length] >= ring.length) {
        first++;
      }
      ring[added++ % ring.length] = frame;
      most = Math.max(most, added - first);
    }
  }
}
