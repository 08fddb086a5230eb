package lampwright.app.workshop.edit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import lampwright.engine.field.Field;
import lampwright.engine.field.Part;
import lampwright.engine.field.Shape;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.Patterns;

/** The values of every kind of pattern, from what describes them. */
public final class PatternSettings {
  private static final String PHASE = "phase";

  private PatternSettings() {}

  /** Colour and level, which all kinds have. */
  public static List<Setting<Pattern, ?>> look() {
    List<Setting<Pattern, ?>> settings = new ArrayList<>();
    for (Part<Look, ?> part : Look.SHAPE.parts()) {
      settings.add(ofLook((Field<Look, ?>) part));
    }
    return settings;
  }

  private static <V> Setting<Pattern, ?> ofLook(Field<Look, V> field) {
    return FieldSettings.of(field).inside(Pattern::look, Patterns::withLook);
  }

  /** What a pattern has besides; the phase last. */
  public static List<Setting<Pattern, ?>> of(Pattern pattern) {
    return of(pattern.shape());
  }

  private static <P extends Pattern> List<Setting<Pattern, ?>> of(Shape<P> shape) {
    List<Field<P, ?>> fields = new ArrayList<>();
    for (Part<P, ?> part : shape.parts()) {
      if (part instanceof Field<P, ?> field) {
        fields.add(field);
      }
    }
    fields.sort(Comparator.comparing(field -> field.name().equals(PHASE)));
    return fields.stream().<Setting<Pattern, ?>>map(field -> of(shape, field)).toList();
  }

  // Of several cues those of another kind are left as they are.
  private static <P extends Pattern, V> Setting<Pattern, ?> of(Shape<P> shape, Field<P, V> field) {
    return FieldSettings.of(field)
        .inside(
            pattern -> shape.type().cast(pattern),
            (pattern, changed) -> changed,
            pattern -> shape.type().isInstance(pattern));
  }
}
