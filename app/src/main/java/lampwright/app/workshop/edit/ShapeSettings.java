package lampwright.app.workshop.edit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lampwright.engine.field.Field;
import lampwright.engine.field.Part;
import lampwright.engine.field.Shape;

/**
 * The settings of all fields of a record, in the order in which files have them, so that a field
 * that is new in the record is in its form, too.
 *
 * @param <R> the record
 */
final class ShapeSettings<R> {
  private final Shape<R> shape;
  private final Map<Part<R, ?>, List<Setting<R, ?>>> own = new LinkedHashMap<>();

  private ShapeSettings(Shape<R> shape) {
    this.shape = shape;
  }

  static <R> ShapeSettings<R> of(Shape<R> shape) {
    return new ShapeSettings<>(shape);
  }

  /** Leaves out parts that are edited elsewhere. */
  @SafeVarargs
  @SuppressWarnings("varargs") // the array is only read
  final ShapeSettings<R> without(Part<R, ?>... elsewhere) {
    for (Part<R, ?> part : elsewhere) {
      own.put(part, List.of());
    }
    return this;
  }

  /** Takes these in place of the setting that follows from what describes the field. */
  ShapeSettings<R> own(Part<R, ?> part, List<Setting<R, ?>> settings) {
    own.put(part, settings);
    return this;
  }

  /** The same for one. */
  ShapeSettings<R> own(Part<R, ?> part, Setting<R, ?> setting) {
    return own(part, List.of(setting));
  }

  List<Setting<R, ?>> list() {
    List<Setting<R, ?>> settings = new ArrayList<>();
    for (Part<R, ?> part : shape.parts()) {
      settings.addAll(of(part));
    }
    return List.copyOf(settings);
  }

  private List<Setting<R, ?>> of(Part<R, ?> part) {
    if (own.containsKey(part)) {
      return own.get(part);
    }
    if (part instanceof Field<R, ?> field) {
      return List.of(FieldSettings.of(field));
    }
    throw new IllegalStateException(part + " needs settings of its own");
  }
}
