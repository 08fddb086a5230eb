package lampwright.engine.field;

import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Function;

/**
 * A component that is in a file as several fields beside the others, such as the clock of a
 * controller beside its name.
 *
 * @param <R> the record
 * @param <C> the component
 */
public final class Group<R, C> extends Part<R, C> {
  private final Shape<C> parts;
  private final BiFunction<Draft<R>, Draft<C>, C> make;
  private final Function<Draft<R>, C> usual;
  private final boolean hidden;

  private Group(
      String component,
      Function<R, C> get,
      Shape<C> parts,
      BiFunction<Draft<R>, Draft<C>, C> make,
      Function<Draft<R>, C> usual,
      boolean hidden) {
    super(component, get);
    this.parts = parts;
    this.make = make;
    this.usual = usual;
    this.hidden = hidden;
  }

  /**
   * A component of this shape.
   *
   * @param standIn taken where its fields can't be read
   */
  public static <R, C> Group<R, C> of(
      String component, Function<R, C> get, Shape<C> parts, C standIn) {
    return new Group<>(
        component, get, parts, (outer, inner) -> inner.make(), outer -> standIn, false);
  }

  /**
   * A component whose usual value follows from other fields; nothing of it is written where it has
   * that one.
   *
   * @param make makes it of the fields that are given and the usual value
   */
  public static <R, C> Group<R, C> derived(
      String component,
      Function<R, C> get,
      Shape<C> parts,
      Function<Draft<R>, C> usual,
      BiFunction<C, Draft<C>, C> make) {
    return new Group<>(
        component,
        get,
        parts,
        (outer, inner) -> make.apply(usual.apply(outer), inner),
        usual,
        true);
  }

  /** The shape of the component. */
  public Shape<C> parts() {
    return parts;
  }

  /** The component made of what is given of its fields. */
  public C make(Draft<R> outer, Draft<C> inner) {
    return make.apply(outer, inner);
  }

  /** Whether anything of it is written of this record. */
  boolean writes(R record) {
    return !hidden || !usual.apply(shape().draft(record)).equals(get(record));
  }

  @Override
  public List<Field<?, ?>> fields() {
    return List.copyOf(parts.fields());
  }

  @Override
  C fallback(Draft<R> draft) {
    return usual.apply(draft);
  }
}
