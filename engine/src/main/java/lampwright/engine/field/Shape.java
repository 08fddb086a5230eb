package lampwright.engine.field;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import lampwright.engine.check.Checks;

/**
 * The fields of one kind of object of the project file, and how the record is made of them.
 *
 * @param <R> the record
 */
public final class Shape<R> {
  private final String key;
  private final Class<R> type;
  private final List<Part<R, ?>> parts;
  private final Function<Draft<R>, R> make;
  private final Optional<Components<R>> components;
  private final List<Field<?, ?>> fields;
  private final List<String> names;

  private Shape(
      String key,
      Class<R> type,
      List<Part<R, ?>> parts,
      Function<Draft<R>, R> make,
      Optional<Components<R>> components) {
    this.key = key;
    this.type = type;
    this.parts = parts;
    this.make = make;
    this.components = components;
    this.fields = parts.stream().<Field<?, ?>>flatMap(part -> part.fields().stream()).toList();
    this.names = fields.stream().map(Field::name).toList();
  }

  /**
   * The shape of a record, made by its canonical constructor.
   *
   * @param key of its words, and its name in messages
   * @param parts in the order in which files have them; together they give every component
   * @throws IllegalArgumentException if a component is not given, or given twice
   */
  @SafeVarargs
  @SuppressWarnings("varargs") // the array is copied and not kept
  public static <R extends Record> Shape<R> of(String key, Class<R> type, Part<R, ?>... parts) {
    List<Part<R, ?>> inOrder = List.of(parts);
    Components<R> components = new Components<>(type, inOrder);
    return new Shape<>(key, type, inOrder, components::make, Optional.of(components)).joined();
  }

  /**
   * The shape of a value that is made in a way of its own.
   *
   * @param type what it is; not asked for where the shape is that of a {@link Group}
   */
  @SafeVarargs
  @SuppressWarnings("varargs") // the array is copied and not kept
  public static <R> Shape<R> custom(
      String key, Class<? super R> type, Function<Draft<R>, R> make, Part<R, ?>... parts) {
    @SuppressWarnings("unchecked") // a value of the shape is one of the type
    Class<R> exact = (Class<R>) type;
    return new Shape<>(key, exact, List.of(parts), make, Optional.empty()).joined();
  }

  /** The shape of an object with one field, which holds all of the value. */
  public static <R> Shape<R> single(Class<R> type, Field<R, R> field) {
    return custom(field.name(), type, draft -> draft.get(field), field);
  }

  private Shape<R> joined() {
    for (int i = 0; i < parts.size(); i++) {
      parts.get(i).joins(this, i);
    }
    return this;
  }

  public String key() {
    return key;
  }

  public Class<R> type() {
    return type;
  }

  /** What the record is made of, in the order in which files have it. */
  public List<Part<R, ?>> parts() {
    return parts;
  }

  /** All fields of the object in a file, in order. */
  public List<Field<?, ?>> fields() {
    return fields;
  }

  /** Their names, in order. */
  public List<String> names() {
    return names;
  }

  /** A draft in which nothing is set. */
  public Draft<R> draft() {
    return new Draft<>(this);
  }

  /** A draft in which everything is as in a record. */
  public Draft<R> draft(R record) {
    Draft<R> draft = draft();
    parts.forEach(part -> copy(part, record, draft));
    return draft;
  }

  private static <R, V> void copy(Part<R, V> part, R record, Draft<R> draft) {
    draft.set(part, part.get(record));
  }

  /**
   * A copy of a record with another value of a component, where only its name is known; the record
   * itself if it has no such component.
   */
  public R with(R record, String component, Object value) {
    return part(component).map(part -> withUnchecked(record, part, value)).orElse(record);
  }

  @SuppressWarnings("unchecked") // the record's constructor refuses a value of another type
  private static <R, V> R withUnchecked(R record, Part<R, V> part, Object value) {
    return part.with(record, (V) value);
  }

  /** The part that gives a component, if there is one of this name. */
  public Optional<Part<R, ?>> part(String component) {
    return parts.stream().filter(part -> part.component().equals(component)).findFirst();
  }

  /**
   * This shape, seen as that of a wider type.
   *
   * @throws ClassCastException if it is not
   */
  @SuppressWarnings("unchecked") // checked here
  public <T> Shape<? extends T> narrowed(Class<T> wider) {
    if (!wider.isAssignableFrom(type)) {
      throw new ClassCastException(type + " is no " + wider);
    }
    return (Shape<? extends T>) this;
  }

  /**
   * Checks the components of a record by the types of its fields. To be called by the canonical
   * constructor with all of them in order.
   */
  public Checks check(Object... values) {
    return components.orElseThrow().check(Checks.of(key), values);
  }

  /** Checks what a draft has in the same way, without what the record checks besides. */
  public Checks check(Draft<R> draft) {
    return components.orElseThrow().check(Checks.of(key), draft);
  }

  /** An object of this shape as JSON has it: names and values of the fields that are written. */
  public Map<String, Object> plain(R record) {
    Map<String, Object> fields = new LinkedHashMap<>();
    for (Part<R, ?> part : parts) {
      if (part instanceof Field<R, ?> field) {
        if (field.writes(record)) {
          fields.put(field.name(), field.plain(record));
        }
      } else if (part instanceof Group<R, ?> group) {
        group(group, record, fields);
      }
    }
    return fields;
  }

  private static <R, C> void group(Group<R, C> group, R record, Map<String, Object> fields) {
    if (group.writes(record)) {
      fields.putAll(group.parts().plain(group.get(record)));
    }
  }

  // A record has checked itself; of a value made in another way nothing else does.
  void checkParts(R value, Checks checks) {
    if (components.isEmpty()) {
      parts.forEach(part -> checkPart(part, value, checks));
    }
  }

  private static <R, V> void checkPart(Part<R, V> part, R value, Checks checks) {
    if (part instanceof Field<R, V> field) {
      field.type().check(field.name(), field.get(value), checks);
    }
  }

  R make(Draft<R> draft) {
    return make.apply(draft);
  }

  @Override
  public String toString() {
    return key;
  }
}
