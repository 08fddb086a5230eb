package lampwright.engine.second;

import java.math.BigInteger;
import java.util.List;
import org.apache.commons.math3.fraction.BigFraction;

/** The noise of flicker: the finaliser of SplitMix64 (Steele, Lea and Flood, OOPSLA 2014). */
final class Noise {
  private static final long GOLDEN = 0x9E3779B97F4A7C15L;

  private Noise() {}

  static Playing flicker(Row row) {
    BigFraction turn = new BigFraction(1000).divide(row.exact("rateHz", "8"));
    long seed = Exact.floor(row.exact("seed", "1")).longValueExact();
    double depth = Fields.number(row.pattern(), "depth", 0.5);
    List<Mix> mixes = row.mixes();
    return t -> {
      BigInteger i = Exact.floor(t.divide(turn));
      double r = Exact.near(Exact.mod(t, turn).divide(turn));
      double q = r * r * (3 - 2 * r);
      double[][] drives = row.dark();
      for (int k = 0; k < row.n(); k++) {
        double now = noise(seed, k, i.longValue());
        double value = now + (noise(seed, k, i.longValue() + 1) - now) * q;
        drives[k] = mixes.get(k).at(row.colours().curve(row.level() * (1 - depth * value)));
      }
      return drives;
    };
  }

  static double noise(long seed, int k, long i) {
    return (mix64(seed(seed, k) + GOLDEN * (i + 1)) >>> 11) * 0x1p-53;
  }

  static long seed(long seed, int k) {
    return mix64(seed + GOLDEN * (k + 1));
  }

  private static long mix64(long seed) {
    long z = (seed ^ (seed >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return z ^ (z >>> 31);
  }
}
