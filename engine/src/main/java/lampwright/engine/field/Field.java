package lampwright.engine.field;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * One field of an object of the project file, described once: reader, writer, schema, documents,
 * forms and random values are made from this.
 *
 * @param <R> what the object represents
 * @param <V> the field's value
 */
public final class Field<R, V> extends Part<R, V> {
  private final String name;
  private final FieldType<V> type;
  private final Need need;
  private final Function<Draft<R>, V> usual;
  private final Optional<Predicate<R>> written;

  /** Whether a file has to give a field. */
  public enum Need {
    /** It has to. */
    REQUIRED,
    /** Else it has a value that is always the same. */
    USUAL,
    /** Else it has a value that follows from other fields. */
    DERIVED,
  }

  private Field(
      String name,
      String component,
      FieldType<V> type,
      Function<R, V> get,
      Need need,
      Function<Draft<R>, V> usual,
      Optional<Predicate<R>> written) {
    super(component, get);
    this.name = name;
    this.type = type;
    this.need = need;
    this.usual = usual;
    this.written = written;
  }

  /**
   * A field that must be given.
   *
   * @param standIn taken where the given one can't be read, so that all else is checked too
   */
  public static <R, V> Field<R, V> required(
      String name, FieldType<V> type, Function<R, V> get, V standIn) {
    return new Field<>(name, name, type, get, Need.REQUIRED, d -> standIn, Optional.of(r -> true));
  }

  /** A field that has a usual value; it is written where it has another one. */
  public static <R, V> Field<R, V> usual(
      String name, FieldType<V> type, Function<R, V> get, V usual) {
    return new Field<>(name, name, type, get, Need.USUAL, d -> usual, Optional.empty());
  }

  /** A field whose usual value follows from others; it is written where it has another one. */
  public static <R, V> Field<R, V> derived(
      String name, FieldType<V> type, Function<R, V> get, Function<Draft<R>, V> usual) {
    return new Field<>(name, name, type, get, Need.DERIVED, usual, Optional.empty());
  }

  /** A field that may be left out. */
  public static <R, E, P> Field<R, P> optional(
      String name, OptionalType<E, P> type, Function<R, P> get) {
    return usual(name, type, get, type.none());
  }

  /** A list that is empty where it is left out. */
  public static <R, E> Field<R, List<E>> list(
      String name, ListType<E> type, Function<R, List<E>> get) {
    return usual(name, type, get, List.of());
  }

  /** The same field, giving the component of this name. */
  public Field<R, V> as(String component) {
    return new Field<>(name, component, type, getter(), need, usual, written);
  }

  /** The same field, written even where it has its usual value. */
  public Field<R, V> alwaysWritten() {
    return writtenIf(record -> true);
  }

  /** The same field, written only of such objects. */
  public Field<R, V> writtenIf(Predicate<R> when) {
    return new Field<>(name, component(), type, getter(), need, usual, Optional.of(when));
  }

  /** Its name in project files. */
  public String name() {
    return name;
  }

  public FieldType<V> type() {
    return type;
  }

  public Need need() {
    return need;
  }

  /** Its usual value, if it has one that is always the same. */
  public Optional<V> usual() {
    return need == Need.USUAL ? Optional.of(usual.apply(new Draft<>(shape()))) : Optional.empty();
  }

  /** Whether it is written of this object. */
  public boolean writes(R record) {
    V value = get(record);
    if (type instanceof OptionalType<?, V> optional && optional.none().equals(value)) {
      return false;
    }
    return written.map(when -> when.test(record)).orElseGet(() -> !same(value, usually(record)));
  }

  // Equal decimals may be unequal values: 8e1 is 80.
  private boolean same(V one, V other) {
    return (one instanceof BigDecimal a && other instanceof BigDecimal b)
        ? a.compareTo(b) == 0
        : one.equals(other);
  }

  private V usually(R record) {
    Draft<R> draft = need == Need.DERIVED ? shape().draft(record) : shape().draft();
    return usual.apply(draft);
  }

  /** The value of this field of an object, as JSON has it. */
  Object plain(R record) {
    return type.plain(get(record));
  }

  @Override
  public List<Field<?, ?>> fields() {
    return List.of(this);
  }

  @Override
  V fallback(Draft<R> draft) {
    return usual.apply(draft);
  }

  @Override
  public String toString() {
    return name;
  }
}
