package lampwright.app.workshop.edit;

import java.util.Optional;
import java.util.function.BiFunction;
import lampwright.engine.field.Field;

/**
 * The settings of a record's fields: what control a field has, in what range, and how the record is
 * changed follows from what describes the field.
 */
final class FieldSettings {
  private FieldSettings() {}

  /** The setting of a field, under its name. */
  static <R, V> Setting<R, ?> of(Field<R, V> field) {
    return of(field, field.name());
  }

  /** The same under another key. */
  static <R, V> Setting<R, ?> of(Field<R, V> field, String key) {
    return of(field, key, field::with);
  }

  /** The same, where a change of it changes more than the field. */
  static <R, V> Setting<R, ?> of(Field<R, V> field, String key, BiFunction<R, V, R> set) {
    return FieldForm.of(field.type()).setting(key, field::get, set);
  }

  /**
   * The setting of a field of a part that may not be there: then there is nothing to change.
   *
   * @param first whose value is shown where there is none
   */
  static <P, R, V> Setting<P, ?> within(
      Field<P, Optional<R>> part, R first, Field<R, V> field, String key) {
    return FieldForm.of(field.type())
        .<P>setting(
            key,
            whole -> field.get(part.get(whole).orElse(first)),
            (whole, value) ->
                part.get(whole)
                    .map(there -> part.with(whole, Optional.of(field.with(there, value))))
                    .orElse(whole));
  }

  /**
   * The field of a part that may be left out by which the part is there or not.
   *
   * @param first the part as it begins when it is put in
   */
  static <P, R, V> Setting<P, ?> stating(
      Field<P, Optional<R>> part, R first, Field<R, V> field, String key) {
    return FieldForm.of(field.type())
        .beginningWith(field.get(first))
        .<Optional<V>>optional(value -> value, value -> value)
        .<P>setting(
            key,
            whole -> part.get(whole).map(field::get),
            (whole, value) ->
                part.with(whole, value.map(v -> field.with(part.get(whole).orElse(first), v))));
  }
}
