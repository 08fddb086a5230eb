package lampwright.app.workshop.edit;

import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import lampwright.engine.field.FieldType;

/**
 * How the values of a type of field are shown in a form.
 *
 * @param <V> the value in the model
 * @param <W> the value of the control
 * @param kind the control
 * @param show the control's value of one of the model
 * @param take the model's value of one of the control
 * @param first what an optional one begins with when it is put in
 */
record FieldForm<V, W>(Kind<W> kind, Function<V, W> show, Function<W, V> take, W first) {
  /** A value that the control holds as the model does. */
  static <V> FieldForm<V, V> same(Kind<V> kind, V first) {
    return new FieldForm<>(kind, value -> value, value -> value, first);
  }

  /** The form of a type. */
  @SuppressWarnings("unchecked") // the form of a type takes what the type holds
  static <V> FieldForm<V, ?> of(FieldType<V> type) {
    return (FieldForm<V, ?>) type.accept(FormOfType.INSTANCE);
  }

  /** The setting of a record that has such a value. */
  <R> Setting<R, W> setting(String key, Function<R, V> get, BiFunction<R, V, R> set) {
    return new Setting<>(
        key,
        kind,
        record -> show.apply(get.apply(record)),
        (record, value) -> set.apply(record, take.apply(value)));
  }

  /** The same, with what an optional one begins with. */
  FieldForm<V, W> beginningWith(V value) {
    return new FieldForm<>(kind, show, take, show.apply(value));
  }

  /** The same value where it may be left out. */
  <P> FieldForm<P, Optional<W>> optional(
      Function<P, Optional<V>> open, Function<Optional<V>, P> close) {
    return new FieldForm<>(
        new Kind.Maybe<>(kind, first),
        held -> open.apply(held).map(show),
        shown -> close.apply(shown.map(take)),
        Optional.empty());
  }
}
