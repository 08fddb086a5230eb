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

  /** The scores found for one lamp. */
  static final class OfLamp {
    private final Map<Stretch, List<Score>> waves = new HashMap<>();
    private final Map<Stretch, List<Score>> sweeps = new HashMap<>();

    List<Score> waves(Stretch stretch, Supplier<List<Score>> find) {
      return remembered(waves, stretch, find);
    }

    List<Score> sweeps(Stretch stretch, Supplier<List<Score>> find) {
      return remembered(sweeps, stretch, find);
    }

    private static List<Score> remembered(
        Map<Stretch, List<Score>> known, Stretch stretch, Supplier<List<Score>> find) {
      List<Score> found = known.get(stretch);
      if (found == null) {
        found = find.get();
        known.put(stretch, found);
      }
      return found;
    }
  }
}
