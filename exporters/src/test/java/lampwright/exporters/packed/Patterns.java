package lampwright.exporters.packed;

/** The patterns of the corpus, in linear drive, by the design's arithmetic. */
public final class Patterns {
  /** Colour and level of pixel k of n at time (ms) from the cue's start; fills r, g, b, w. */
  @FunctionalInterface
  public interface Pattern {
    void at(Time t, int k, int n, double[] drive);
  }

  /** An instant as a whole number of milliseconds over a whole number. */
  public record Time(long num, long den) {
    double ms() {
      return (double) num / den;
    }

    /** Place in the period periodNum/periodDen ms, 0..1, exact before the one division. */
    double turn(long periodNum, long periodDen) {
      long unit = Math.multiplyExact(den, periodNum);
      return (double) Math.floorMod(Math.multiplyExact(num, periodDen), unit) / unit;
    }
  }

  private static final double GAMMA = 2.2;

  private Patterns() {}

  public static double curve(double v) {
    return StrictMath.pow(Math.max(0, Math.min(1, v)), GAMMA);
  }

  private static void put(double[] out, double[] colour, double scale) {
    for (int i = 0; i < 4; i++) {
      out[i] = colour[i] * scale;
    }
  }

  /** Direct colour from 8-bit codes. */
  public static double[] srgb(int r, int g, int b) {
    return new double[] {curve(r / 255.0), curve(g / 255.0), curve(b / 255.0), 0};
  }

  public static double[] drive(double r, double g, double b, double w) {
    return new double[] {r, g, b, w};
  }

  public static Pattern steady(double[] c, double level) {
    return (t, k, n, d) -> put(d, c, curve(level));
  }

  public static Pattern flash(double[] c, int on, int off, int flashes, int gap) {
    long period = (long) flashes * (on + off) + gap;
    return (t, k, n, d) -> {
      double at = t.turn(period, 1) * period + 1e-9;
      boolean lit = at < (double) flashes * (on + off) && at % (on + off) < on;
      put(d, c, lit ? 1 : 0);
    };
  }

  public static Pattern indicator(double[] c, int perMinute, double share, double phase) {
    return (t, k, n, d) ->
        put(d, c, (t.turn(60000, perMinute) + phase) % 1 < share - 1e-12 ? 1 : 0);
  }

  public static Pattern beacon(double[] c, int perMinute, double beam, boolean clockwise) {
    return (t, k, n, d) -> {
      double centre = 360 * t.turn(60000, perMinute);
      double apart = Math.abs((clockwise ? centre : 360 - centre) - 360.0 * k / n) % 360;
      double near = Math.min(apart, 360 - apart);
      put(d, c, near < beam / 2 ? (1 + StrictMath.cos(Math.PI * near / (beam / 2))) / 2 : 0);
    };
  }

  public static Pattern chase(double[] c, int stepMs, int width, int tail, boolean bounce) {
    return (t, k, n, d) -> {
      int period = bounce ? Math.max(1, 2 * n - 2) : n;
      int s = (int) (t.num() / (t.den() * stepMs) % period);
      boolean back = bounce && s >= n;
      int head = back ? period - s : s;
      int behind = back ? k - head : head - k;
      if (!bounce) {
        behind = Math.floorMod(behind, n);
      }
      double level = 0;
      if (behind >= 0 && behind < width) {
        level = 1;
      } else if (behind >= width && behind < width + tail) {
        level = (tail + 1.0 - (behind - width + 1)) / (tail + 1);
      }
      put(d, c, curve(level));
    };
  }

  public static Pattern fill(double[] c, int over, int hold, int off) {
    return (t, k, n, d) -> {
      double at = t.turn(over + hold + off, 1) * (over + hold + off) + 1e-9;
      put(d, c, at >= (double) over * k / n && at < over + hold ? 1 : 0);
    };
  }

  public static Pattern cycle(int periodMs, double spread, double level, boolean backwards) {
    return (t, k, n, d) -> {
      double turn = t.turn(periodMs, 1);
      double hue = (backwards ? -turn : turn) + spread * k / n;
      hue -= Math.floor(hue);
      for (int i = 0; i < 3; i++) {
        double at = (hue * 6 + 6 - 2 * i) % 6;
        double code = Math.max(0, Math.min(1, 2 - Math.min(at, 6 - at)));
        d[i] = curve(code) * curve(level);
      }
      d[3] = 0;
    };
  }

  /** Matched white, read off the table of mixes by straight lines in mired. */
  public static double[] kelvin(double mired) {
    double[][] mixes = {
      {1e6 / 10000, 0.3705, 1, 0.8518, 1},
      {1e6 / 6500, 0.5610, 1, 0.4918, 1},
      {1e6 / 5000, 0.7746, 1, 0.2514, 1},
      {1e6 / 4000, 1, 0.9368, 0.0404, 1},
      {1e6 / 3000, 1, 0.7826, 0, 0.2879},
      {1e6 / 2700, 1, 0.7367, 0, 0.1758}
    };
    int i = 0;
    while (i < mixes.length - 2 && mired > mixes[i + 1][0]) {
      i++;
    }
    double u = (mired - mixes[i][0]) / (mixes[i + 1][0] - mixes[i][0]);
    double[] out = new double[4];
    for (int e = 0; e < 4; e++) {
      out[e] = mixes[i][e + 1] + u * (mixes[i + 1][e + 1] - mixes[i][e + 1]);
    }
    return out;
  }

  public static Pattern tint(double from, double to, double lengthMs, double level) {
    return (t, k, n, d) -> {
      double u = t.ms() / lengthMs;
      put(d, kelvin(1e6 / from + u * (1e6 / to - 1e6 / from)), curve(level));
    };
  }

  /** One keyframe. */
  public static final class Key {
    private final int atMs;
    private final double[] colour;
    private final double level;

    public Key(int atMs, double[] colour, double level) {
      this.atMs = atMs;
      this.colour = colour;
      this.level = level;
    }

    int atMs() {
      return atMs;
    }

    double[] colour() {
      return colour;
    }

    double level() {
      return level;
    }
  }

  public static Pattern keyframes(boolean smooth, Key... keys) {
    return (t, k, n, d) -> {
      int period = keys[keys.length - 1].atMs();
      double at = t.turn(period, 1) * period;
      int i = 0;
      while (i < keys.length - 2 && at >= keys[i + 1].atMs()) {
        i++;
      }
      double v = (at - keys[i].atMs()) / (keys[i + 1].atMs() - keys[i].atMs());
      double u = smooth ? v * v * (3 - 2 * v) : v;
      double level = curve(keys[i].level() + u * (keys[i + 1].level() - keys[i].level()));
      for (int e = 0; e < 4; e++) {
        double a = keys[i].colour()[e];
        d[e] = (a + u * (keys[i + 1].colour()[e] - a)) * level;
      }
    };
  }

  private static double hash(long seed, long i, int k) {
    long z = seed * 0x9E3779B97F4A7C15L + i * 0xBF58476D1CE4E5B9L + k * 0x94D049BB133111EBL;
    z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
    z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
    return ((z ^ (z >>> 31)) >>> 11) * 0x1p-53;
  }

  public static Pattern flicker(double[] c, long seed, double depth, double rateHz) {
    return (t, k, n, d) -> {
      double at = t.ms() * rateHz / 1000;
      long i = (long) Math.floor(at);
      double v = at - i;
      double u = v * v * (3 - 2 * v);
      double noise = hash(seed, i, k) * (1 - u) + hash(seed, i + 1, k) * u;
      put(d, c, curve(1 - depth * noise));
    };
  }

  public static Pattern testWalk(int stepMs, int emitters) {
    return (t, k, n, d) -> {
      long s = t.num() / (t.den() * stepMs) % ((long) n * emitters);
      for (int e = 0; e < 4; e++) {
        d[e] = s / emitters == k && s % emitters == e ? 1 : 0;
      }
    };
  }

  /** Lit from the first to the second of each pair, ms in the period. */
  public static Pattern rhythm(double[] c, int periodMs, int... onOff) {
    return (t, k, n, d) -> {
      double at = t.turn(periodMs, 1) * periodMs + 1e-9;
      boolean lit = false;
      for (int i = 0; i < onOff.length; i += 2) {
        lit |= at >= onOff[i] && at < onOff[i + 1];
      }
      put(d, c, lit ? 1 : 0);
    };
  }
}
