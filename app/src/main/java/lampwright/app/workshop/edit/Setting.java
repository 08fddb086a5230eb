package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
import java.util.function.Function;

/**
 * One named value of a record, as a sheet shows and changes it.
 *
 * @param <R> the record
 * @param <V> the value
 * @param key of its texts: {@code key} names it, {@code key.hint} explains it
 * @param kind what kind of value
 * @param get reads it
 * @param set gives the record with another value; throws {@link
 *     lampwright.engine.check.InvalidModelException} where the record refuses it
 */
public record Setting<R, V>(String key, Kind<V> kind, Function<R, V> get, BiFunction<R, V, R> set) {
  /** A number that the record holds as a double. */
  public static <R> Setting<R, BigDecimal> ofDouble(
      String key, Kind.Amount kind, Function<R, Double> get, BiFunction<R, Double, R> set) {
    return new Setting<>(
        key,
        kind,
        record -> BigDecimal.valueOf(get.apply(record)),
        (record, value) -> set.apply(record, value.doubleValue()));
  }

  /** A whole number that the record holds as an int. */
  public static <R> Setting<R, Long> ofInt(
      String key, Kind.Whole kind, Function<R, Integer> get, BiFunction<R, Integer, R> set) {
    return new Setting<>(
        key,
        kind,
        record -> get.apply(record).longValue(),
        (record, value) -> set.apply(record, Math.toIntExact(value)));
  }

  /**
   * A number that may be left out.
   *
   * @param usual what it begins with when it is put in
   */
  public static <R> Setting<R, Optional<BigDecimal>> ofMaybeDouble(
      String key,
      Kind.Amount kind,
      double usual,
      Function<R, OptionalDouble> get,
      BiFunction<R, OptionalDouble, R> set) {
    return new Setting<>(
        key,
        new Kind.Maybe<>(kind, BigDecimal.valueOf(usual)),
        record -> {
          OptionalDouble value = get.apply(record);
          return value.isPresent()
              ? Optional.of(BigDecimal.valueOf(value.getAsDouble()))
              : Optional.empty();
        },
        (record, value) ->
            set.apply(
                record,
                value
                    .map(v -> OptionalDouble.of(v.doubleValue()))
                    .orElseGet(OptionalDouble::empty)));
  }

  /** The same value of a record that holds this one. */
  public <P> Setting<P, V> inside(Function<P, R> part, BiFunction<P, R, P> withPart) {
    return new Setting<>(
        key,
        kind,
        whole -> get.apply(part.apply(whole)),
        (whole, value) -> withPart.apply(whole, set.apply(part.apply(whole), value)));
  }
}
