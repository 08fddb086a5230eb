package lampwright.exporters.packed.encode;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import lampwright.exporters.packed.format.Format;

/**
 * The speeds at which people let lights turn: a whole number of times per minute, or a period of a
 * multiple of ten milliseconds.
 */
final class Speeds {
  // What patterns are set to in practice. More speeds cost time and change no bytes of lights that
  // turn at these; a speed that is not among them is found where its period is a few frames.
  private static final int MOST_A_MINUTE = 480;
  private static final int LONGEST_MS = 12000;

  private Speeds() {}

  /** Speeds for a frame period; none if it is no whole number of frames per second. */
  static List<FineGrid.Speed> of(int periodMicros) {
    long rate = Math.round(1e6 / periodMicros);
    if (rate < 1 || Math.abs(rate * (double) periodMicros - 1e6) > rate) {
      return List.of();
    }
    Set<FineGrid.Speed> speeds = new LinkedHashSet<>();
    for (int perMinute = 5; perMinute <= MOST_A_MINUTE; perMinute++) {
      add(speeds, perMinute, 60 * rate);
    }
    for (int ms = 100; ms <= LONGEST_MS; ms += 10) {
      add(speeds, 1000, ms * rate);
    }
    return new ArrayList<>(speeds);
  }

  private static void add(Set<FineGrid.Speed> speeds, long turns, long frames) {
    long g = gcd(turns, frames);
    if (frames / g <= Format.MAX_WAVE_SIZE && 2 * turns < frames) {
      speeds.add(new FineGrid.Speed((int) (turns / g), (int) (frames / g)));
    }
  }

  private static long gcd(long a, long b) {
    return b == 0 ? a : gcd(b, a % b);
  }
}
