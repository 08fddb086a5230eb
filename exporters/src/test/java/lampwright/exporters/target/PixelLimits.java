package lampwright.exporters.target;

import java.util.Map;
import java.util.stream.Stream;
import lampwright.engine.rig.PixelType;

/**
 * The limits of the built-in pixel types' data lines, written down anew, which tests hold drivers
 * against.
 */
public final class PixelLimits {
  /**
   * Least and greatest of T0H, T0L, T1H, T1L and of a bit, ns: what the prover is told in place of
   * our own limits. WS2812B datasheet; WS2813 manual; WS2813-Mini datasheet; from memory: the
   * datasheets of WS2812B-2020, WS2815, SK6812RGBW and its like, WS2811 (fast mode).
   */
  static final Map<String, String> LIMITS =
      Map.of(
          "ws2812b", "250 550 700 1000 650 950 300 600 650 1850",
          "ws2812b-2020", "220 380 580 1000 580 1000 220 420 650 1850",
          "ws2813", "300 450 300 100000 750 1000 300 100000 950 1550",
          "ws2813-mini", "220 380 580 1600 580 1600 220 420 650 1850",
          "ws2815", "220 380 580 1000 580 1000 220 420 650 1850",
          "ws2811", "100 400 850 1150 450 750 500 800 650 1850",
          "sk6812-rgb", "150 450 750 1050 450 750 450 750 650 1850",
          "sk6812-rgbw", "150 450 750 1050 450 750 450 750 650 1850",
          "sk6812-mini-e", "150 450 750 1050 450 750 450 750 650 1850",
          "sk6805-2020", "150 450 750 1050 450 750 450 750 650 1850");

  private static final int T0H = 0;
  private static final int T0L = 2;
  private static final int T1H = 4;
  private static final int T1L = 6;
  private static final int BIT = 8;

  private final double[] ns;

  private PixelLimits(double[] ns) {
    this.ns = ns;
  }

  /** Those of a type; of one that is no built-in type, those that it states. */
  public static PixelLimits of(PixelType type) {
    String numbers = LIMITS.get(type.id());
    if (numbers == null) {
      LineLimits own = LineLimits.of(type.line());
      return new PixelLimits(
          Stream.of(own.t0h(), own.t0l(), own.t1h(), own.t1l(), own.bit())
              .flatMap(range -> Stream.of(range.leastNs(), range.greatestNs()))
              .mapToDouble(Double::doubleValue)
              .toArray());
    }
    return new PixelLimits(
        Stream.of(numbers.split(" ", -1)).mapToDouble(Double::parseDouble).toArray());
  }

  /** A high time between those of a 0 and of a 1. */
  public double thresholdNs() {
    return (ns[T0H + 1] + ns[T1H]) / 2;
  }

  public double leastHigh(boolean one) {
    return ns[one ? T1H : T0H];
  }

  public double greatestHigh(boolean one) {
    return ns[(one ? T1H : T0H) + 1];
  }

  public double leastLow(boolean one) {
    return ns[one ? T1L : T0L];
  }

  public double greatestLow(boolean one) {
    return ns[(one ? T1L : T0L) + 1];
  }

  public double leastBit() {
    return ns[BIT];
  }

  public double greatestBit() {
    return ns[BIT + 1];
  }
}
