package lampwright.engine.field;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwright.engine.check.Checks;

/**
 * An object of one of several shapes.
 *
 * @param key of its words
 * @param allowed what is accepted, for messages: {@code must be ...}
 * @param tag the field that names the shape by its key; empty where the shape is known by its first
 *     field
 * @param shapes in the order in which they are listed
 * @param standIn what represents one that is broken; empty if its owner is broken then too
 * @param brief how one of them may be written as a text instead of an object
 */
public record UnionType<E>(
    String key,
    String allowed,
    String tag,
    List<Shape<? extends E>> shapes,
    Optional<E> standIn,
    Optional<Brief<E, ?>> brief)
    implements FieldType<E> {
  public UnionType {
    shapes = List.copyOf(shapes);
  }

  /**
   * A text for the values of one shape; they are always written so.
   *
   * @param type those values
   * @param form their text
   */
  public record Brief<E, W extends E>(Class<W> type, FormType<W> form) {
    private Optional<Object> plain(E value) {
      return type.isInstance(value) ? Optional.of(form.plain(type.cast(value))) : Optional.empty();
    }
  }

  /** The word by which a shape is known in files: its key, or its first field. */
  public String word(Shape<? extends E> shape) {
    return tag.isEmpty() ? shape.fields().get(0).name() : shape.key();
  }

  /** The words of all shapes. */
  public List<String> words() {
    return shapes.stream().map(this::word).toList();
  }

  /** The shape of a word. */
  public Optional<Shape<? extends E>> shape(String word) {
    for (Shape<? extends E> shape : shapes) {
      if (word(shape).equals(word)) {
        return Optional.of(shape);
      }
    }
    return Optional.empty();
  }

  /** The shape that a value has. */
  public Shape<? extends E> shapeOf(E value) {
    return shapes.stream()
        .filter(shape -> shape.type().isInstance(value))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no shape: " + value.getClass()));
  }

  @Override
  public void check(String field, E value, Checks checks) {}

  @Override
  public Object plain(E value) {
    Optional<Object> text = brief.flatMap(b -> b.plain(value));
    return text.isPresent() ? text.get() : fields(shapeOf(value), value);
  }

  private <W extends E> Map<String, Object> fields(Shape<W> shape, E value) {
    Map<String, Object> fields = new LinkedHashMap<>();
    if (!tag.isEmpty()) {
      fields.put(tag, word(shape));
    }
    fields.putAll(shape.plain(shape.type().cast(value)));
    return fields;
  }

  @Override
  public <O> O accept(Visitor<O> visitor) {
    return visitor.union(this);
  }
}
