package lampwright.engine.meter;

import java.util.List;
import java.util.Optional;
import lampwright.engine.rig.LampFunction;

/**
 * How often a lamp flashes, held against real lamps of its function.
 *
 * @param range the real lamp that it is like; of none, the first that its function has
 * @param compared below 0 if it is slower, 0 if like it, above 0 if faster
 */
public record RateVerdict(FlashRange range, int compared) {
  /** The verdict on a rate; none for a function whose lamps do not flash. */
  public static Optional<RateVerdict> of(LampFunction function, double perMinute) {
    List<FlashRange> ranges = ranges(function);
    return ranges.stream()
        .map(range -> new RateVerdict(range, range.compare(perMinute)))
        .filter(RateVerdict::likeReal)
        .findFirst()
        .or(() -> ranges.stream().findFirst().map(r -> new RateVerdict(r, r.compare(perMinute))));
  }

  /** Whether it flashes like a real one. */
  public boolean likeReal() {
    return compared == 0;
  }

  /** The verdict in words. */
  public String words() {
    String how = compared == 0 ? "like" : compared < 0 ? "slower than" : "faster than";
    return how
        + " a real "
        + range.words()
        + ", "
        + Figures.whole(range.leastPerMinute())
        + " to "
        + Figures.whole(range.mostPerMinute())
        + " per minute";
  }

  private static List<FlashRange> ranges(LampFunction function) {
    return switch (function) {
      case DIRECTION_INDICATOR, HAZARD -> List.of(FlashRange.DIRECTION_INDICATOR);
      case SPECIAL_WARNING ->
          List.of(FlashRange.SPECIAL_WARNING, FlashRange.SERVICE_WARNING, FlashRange.FARM_WARNING);
      case STOP -> List.of(FlashRange.EMERGENCY_STOP);
      default -> List.of();
    };
  }
}
