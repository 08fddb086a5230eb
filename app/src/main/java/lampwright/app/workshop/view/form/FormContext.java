package lampwright.app.workshop.view.form;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;
import lampwright.app.workshop.edit.Kind;
import lampwright.app.workshop.model.Slot;
import org.jspecify.annotations.Nullable;

/** Which control serves which kind of value. */
public final class FormContext {
  private final Words words = new Words();
  private final Map<Class<?>, Function<Slot<?>, Field>> makers = new HashMap<>();

  /** The controls for plain kinds; those for others are added. */
  public FormContext() {
    this.<Kind.Amount, java.math.BigDecimal>with(
        Kind.Amount.class, (kind, slot) -> NumberField.ofAmount(words, kind, slot));
    this.<Kind.Whole, Long>with(
        Kind.Whole.class, (kind, slot) -> NumberField.ofWhole(words, kind, slot));
    this.<Kind.Flag, Boolean>with(Kind.Flag.class, (kind, slot) -> PlainFields.flag(words, slot));
    this.<Kind.Text, String>with(
        Kind.Text.class, (kind, slot) -> PlainFields.text(words, kind, slot));
    makers.put(Kind.Choice.class, slot -> PlainFields.choice(words, slot));
    makers.put(Kind.Maybe.class, slot -> PlainFields.maybe(this, slot));
    this.<Kind.Easings, lampwright.engine.pattern.Easing>with(
        Kind.Easings.class, (kind, slot) -> EasingField.of(words, slot));
    this.<Kind.Numbers, java.util.List<java.math.BigDecimal>>with(
        Kind.Numbers.class, (kind, slot) -> ListFields.numbers(words, kind, slot));
    this.<Kind.KeyframeRows, java.util.List<lampwright.engine.pattern.Keyframe>>with(
        Kind.KeyframeRows.class, (kind, slot) -> KeyframesField.of(this, slot));
  }

  /** Makes a control. */
  @FunctionalInterface
  public interface Maker<K, V> {
    Field make(K kind, Slot<V> slot);
  }

  /** Adds the control for a kind. */
  public <K extends Kind<V>, V> FormContext with(Class<K> kind, Maker<K, V> maker) {
    makers.put(kind, slot -> maker.make(kind.cast(slot.kind()), cast(slot)));
    return this;
  }

  public Words words() {
    return words;
  }

  /**
   * The control for a slot.
   *
   * @throws IllegalArgumentException if none was added for its kind
   */
  public Field field(Slot<?> slot) {
    @Nullable Function<Slot<?>, Field> maker = makers.get(slot.kind().getClass());
    if (maker == null) {
      throw new IllegalArgumentException("kind: " + slot.kind() + ": needs one with a control");
    }
    return maker.apply(slot);
  }

  // A slot's value is what its kind says.
  @SuppressWarnings("unchecked")
  private static <V> Slot<V> cast(Slot<?> slot) {
    return (Slot<V>) slot;
  }
}
