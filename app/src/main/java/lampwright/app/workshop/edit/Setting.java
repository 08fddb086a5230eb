package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * One named value of a record, as a form shows and changes it.
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
  static <R> Setting<R, BigDecimal> ofDouble(
      String key, Kind.Amount kind, Function<R, Double> get, BiFunction<R, Double, R> set) {
    return new Setting<>(
        key,
        kind,
        record -> BigDecimal.valueOf(get.apply(record)),
        (record, value) -> set.apply(record, value.doubleValue()));
  }

  /** The same value of a record that holds this one. */
  public <P> Setting<P, V> inside(Function<P, R> part, BiFunction<P, R, P> withPart) {
    return new Setting<>(
        key,
        kind,
        whole -> get.apply(part.apply(whole)),
        (whole, value) -> withPart.apply(whole, set.apply(part.apply(whole), value)));
  }

  /**
   * The same, where only some records hold this one; the others stay as they are.
   *
   * @param holds which do
   */
  public <P> Setting<P, V> inside(
      Function<P, R> part, BiFunction<P, R, P> withPart, Predicate<P> holds) {
    Setting<P, V> whole = inside(part, withPart);
    return new Setting<>(
        key,
        kind,
        whole.get,
        (record, value) -> holds.test(record) ? whole.set.apply(record, value) : record);
  }
}
