package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.function.BiFunction;
import java.util.function.Function;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.Times;

/**
 * Makes the settings of one kind of pattern.
 *
 * @param <P> the kind
 */
final class SettingMaker<P extends Pattern> {
  static final Kind.Amount MS = Kind.Amount.of("ms", 0, Times.MAX_MS, 10);
  static final Kind.Amount MS_ABOVE_0 = Kind.Amount.of("ms", 0.001, Times.MAX_MS, 10);
  static final Kind.Amount PER_MINUTE = Kind.Amount.of("perMinute", 0.001, 60_000, 1);
  static final Kind.Amount SHARE = Kind.Amount.of("", 0, 1, 0.05);
  private static final Kind.Amount PHASE = Kind.Amount.of("turns", -1_000_000, 1_000_000, 0.01);

  private final Class<P> type;

  SettingMaker(Class<P> type) {
    this.type = type;
  }

  /** A value of any kind. */
  <V> Setting<Pattern, V> typed(
      String key, Kind<V> kind, Function<P, V> get, BiFunction<P, V, P> set) {
    return new Setting<>(
        key,
        kind,
        pattern -> get.apply(type.cast(pattern)),
        // Of several cues those of another kind are left as they are.
        (pattern, value) ->
            type.isInstance(pattern) ? set.apply(type.cast(pattern), value) : pattern);
  }

  /** A number that the pattern holds as it was written. */
  Setting<Pattern, BigDecimal> decimal(
      String key, Kind.Amount kind, Function<P, BigDecimal> get, BiFunction<P, BigDecimal, P> set) {
    return typed(key, kind, get, set);
  }

  /** The share of the period at which the pattern starts. */
  Setting<Pattern, BigDecimal> phase(
      Function<P, BigDecimal> get, BiFunction<P, BigDecimal, P> set) {
    return decimal("phase", PHASE, get, set);
  }

  /** A number that the pattern holds as a double. */
  Setting<Pattern, BigDecimal> number(
      String key, Kind.Amount kind, Function<P, Double> get, BiFunction<P, Double, P> set) {
    return typed(
        key, kind, p -> BigDecimal.valueOf(get.apply(p)), (p, v) -> set.apply(p, v.doubleValue()));
  }

  /** A whole number that the pattern holds as an int. */
  Setting<Pattern, Long> whole(
      String key, long min, long max, Function<P, Integer> get, BiFunction<P, Integer, P> set) {
    return typed(
        key,
        new Kind.Whole("", min, max),
        p -> get.apply(p).longValue(),
        (p, v) -> set.apply(p, Math.toIntExact(v)));
  }

  /** Yes or no. */
  Setting<Pattern, Boolean> flag(
      String key, Function<P, Boolean> get, BiFunction<P, Boolean, P> set) {
    return typed(key, new Kind.Flag(), get, set);
  }
}
