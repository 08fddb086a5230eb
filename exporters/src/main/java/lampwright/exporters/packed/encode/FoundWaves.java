package lampwright.exporters.packed.encode;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import java.util.stream.Stream;

/**
 * What was found out about the curves of a scene's lamps. Finding them takes longest, and neither
 * the order in which a lamp's columns are coded nor how quick its code has to be changes them. Each
 * lamp may be looked at on a thread of its own.
 */
final class FoundWaves {
  /** Frames of a lamp, counted from its first, played for so many frames. */
  record Stretch(int from, int to, int frames) {}

  private final List<OfLamp> lamps;

  /**
   * @param lamps how many lamps the scene has
   */
  FoundWaves(int lamps) {
    this.lamps = Stream.generate(OfLamp::new).limit(lamps).toList();
  }

  OfLamp ofLamp(int lamp) {
    return lamps.get(lamp);
  }

  /** Frames of a lamp, from its first, coded at a speed level. */
  record Coded(int from, int to, int speedLevel) {}

  /** The scores found for one lamp. */
  static final class OfLamp {
    private final Map<Coded, Score> coded = new HashMap<>();
    private final Map<Stretch, List<Score>> waves = new HashMap<>();
    private final Map<Stretch, List<Score>> sweeps = new HashMap<>();

    List<Score> waves(Stretch stretch, Supplier<List<Score>> find) {
      return remembered(waves, stretch, find);
    }

    List<Score> sweeps(Stretch stretch, Supplier<List<Score>> find) {
      return remembered(sweeps, stretch, find);
    }

    Score coded(Coded frames, Supplier<Score> code) {
      return remembered(coded, frames, code);
    }

    // What is found puts down other things meanwhile, which computeIfAbsent doesn't allow.
    private static <K, V> V remembered(Map<K, V> known, K key, Supplier<V> find) {
      V found = known.get(key);
      if (found == null) {
        found = find.get();
        known.put(key, found);
      }
      return found;
    }
  }
}
