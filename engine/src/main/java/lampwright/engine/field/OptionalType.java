package lampwright.engine.field;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import lampwright.engine.check.Checks;

/**
 * A value that may be left out.
 *
 * @param <E> the value
 * @param <P> how the model holds it, such as an OptionalDouble
 * @param some what it is where it is given
 * @param open the value, if there is one
 * @param close holds a value, or none
 */
public record OptionalType<E, P>(
    FieldType<E> some, Function<P, Optional<E>> open, Function<Optional<E>, P> close)
    implements FieldType<P> {
  /** One that the model holds as an Optional. */
  public static <E> OptionalType<E, Optional<E>> of(FieldType<E> some) {
    return new OptionalType<>(some, value -> value, value -> value);
  }

  /** One that the model holds as an OptionalDouble. */
  public static OptionalType<Double, OptionalDouble> ofNumber(NumberType some) {
    return new OptionalType<>(
        some,
        value -> value.isPresent() ? Optional.of(value.getAsDouble()) : Optional.<Double>empty(),
        value -> value.map(OptionalDouble::of).orElseGet(OptionalDouble::empty));
  }

  /** One that the model holds as an OptionalInt. */
  public static OptionalType<Integer, OptionalInt> ofInt(WholeType<Integer> some) {
    return new OptionalType<>(
        some,
        value -> value.isPresent() ? Optional.of(value.getAsInt()) : Optional.<Integer>empty(),
        value -> value.map(OptionalInt::of).orElseGet(OptionalInt::empty));
  }

  /** What is held where it is left out. */
  public P none() {
    return close.apply(Optional.empty());
  }

  @Override
  public void check(String field, P value, Checks checks) {
    open.apply(value).ifPresent(given -> some.check(field, given, checks));
  }

  /** As the value itself; not to be asked where it is left out. */
  @Override
  public Object plain(P value) {
    return some.plain(open.apply(value).orElseThrow());
  }

  @Override
  public <O> O accept(Visitor<O> visitor) {
    return visitor.optional(this);
  }
}
