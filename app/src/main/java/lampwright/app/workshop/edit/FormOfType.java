package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.List;
import lampwright.engine.check.Fault;
import lampwright.engine.check.InvalidModelException;
import lampwright.engine.field.ChoiceType;
import lampwright.engine.field.DecimalType;
import lampwright.engine.field.FieldType;
import lampwright.engine.field.FlagType;
import lampwright.engine.field.FormType;
import lampwright.engine.field.IdType;
import lampwright.engine.field.KeyedType;
import lampwright.engine.field.ListType;
import lampwright.engine.field.NarrowType;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.PairType;
import lampwright.engine.field.RecordType;
import lampwright.engine.field.ReferenceType;
import lampwright.engine.field.TextType;
import lampwright.engine.field.UnionType;
import lampwright.engine.field.WholeType;
import lampwright.engine.light.Colour;
import lampwright.engine.light.Colours;
import lampwright.engine.pattern.Easing;
import lampwright.engine.pattern.Keyframe;
import lampwright.engine.rig.PixelRun;

/** The form of every type of field that is edited alone. */
final class FormOfType implements FieldType.Visitor<FieldForm<?, ?>> {
  static final FormOfType INSTANCE = new FormOfType();

  // Where a number must be above 0, the least that a control offers.
  private static final BigDecimal LEAST = new BigDecimal("0.001");

  private FormOfType() {}

  @Override
  public <E> FieldForm<?, ?> choice(ChoiceType<E> type) {
    return FieldForm.same(
        new Kind.Choice<>(type.group(), type.values(), type.key()), type.values().get(0));
  }

  @Override
  public FieldForm<?, ?> decimal(DecimalType type) {
    UnitForm unit = UnitForm.of(type.unit(), (double) type.max());
    BigDecimal least = type.above() ? LEAST : BigDecimal.valueOf(type.min());
    Kind.Amount kind = amount(unit, least, BigDecimal.valueOf(type.max()));
    return new FieldForm<>(kind, unit::shown, unit::held, first(kind, unit));
  }

  @Override
  public FieldForm<?, ?> number(NumberType type) {
    return ofNumber(type);
  }

  private static FieldForm<Double, BigDecimal> ofNumber(NumberType type) {
    UnitForm unit = UnitForm.of(type.unit(), type.max());
    Kind.Amount kind = amount(type);
    return new FieldForm<>(
        kind,
        value -> unit.shown(BigDecimal.valueOf(value)),
        shown -> unit.held(shown).doubleValue(),
        first(kind, unit));
  }

  @Override
  public <N extends Number> FieldForm<?, ?> whole(WholeType<N> type) {
    return new FieldForm<N, Long>(
        count(type),
        Number::longValue,
        value -> type.of().apply(value),
        Math.max(
            type.min(),
            Math.min(
                type.max(), UnitForm.of(type.unit(), (double) type.max()).first().longValue())));
  }

  @Override
  public FieldForm<?, ?> flag(FlagType type) {
    return FieldForm.same(new Kind.Flag(), false);
  }

  @Override
  public <E> FieldForm<?, ?> form(FormType<E> type) {
    if (type.key().equals(Easing.TYPE.key())) {
      return FieldForm.same(new Kind.Easings(), Easing.LINEAR);
    }
    return new FieldForm<E, String>(
        new Kind.Text(type.longest()),
        type.text(),
        text ->
            type.parse().apply(text).orElseThrow(() -> refused(type.key(), text, type.allowed())),
        type.examples().get(0));
  }

  @Override
  public FieldForm<?, ?> id(IdType type) {
    return FieldForm.same(new Kind.Text(40), "");
  }

  @Override
  public FieldForm<?, ?> text(TextType type) {
    return FieldForm.same(new Kind.Text(type.maxLength()), "");
  }

  @Override
  public <E, P> FieldForm<?, ?> optional(OptionalType<E, P> type) {
    return FieldForm.of(type.some()).optional(type.open(), type.close());
  }

  @Override
  public <E> FieldForm<?, ?> list(ListType<E> type) {
    if (type.each() instanceof NumberType number) {
      FieldForm<Double, BigDecimal> each = ofNumber(number);
      return new FieldForm<List<Double>, List<BigDecimal>>(
          new Kind.Numbers(amount(number), type.limit().max()),
          values -> values.stream().map(each.show()).toList(),
          shown -> shown.stream().map(each.take()).toList(),
          List.of());
    }
    if (type.each() instanceof RecordType<E> objects && objects.shape().type() == Keyframe.class) {
      return FieldForm.same(new Kind.KeyframeRows(), List.of());
    }
    if (type.each() instanceof RecordType<E> objects && objects.shape().type() == PixelRun.class) {
      return FieldForm.same(new Kind.Runs(), List.of());
    }
    throw own(type);
  }

  @Override
  public <E> FieldForm<?, ?> union(UnionType<E> type) {
    if (type.key().equals(Colours.ANY.key())) {
      return FieldForm.same(new Kind.Colours(), Colour.WHITE);
    }
    throw own(type);
  }

  @Override
  public <E, W extends E> FieldForm<?, ?> narrow(NarrowType<E, W> type) {
    return narrowed(FieldForm.of(type.wide()), type);
  }

  private static <E, W extends E, X> FieldForm<W, X> narrowed(
      FieldForm<E, X> wide, NarrowType<E, W> type) {
    return new FieldForm<>(
        wide.kind(),
        value -> wide.show().apply(value),
        shown -> {
          E value = wide.take().apply(shown);
          if (!type.narrow().isInstance(value)) {
            throw refused(type.wide().key(), type.other(), type.allowed());
          }
          return type.narrow().cast(value);
        },
        wide.first());
  }

  @Override
  public FieldForm<?, ?> pair(PairType type) {
    throw own(type);
  }

  @Override
  public <E> FieldForm<?, ?> record(RecordType<E> type) {
    throw own(type);
  }

  @Override
  public <E> FieldForm<?, ?> reference(ReferenceType<E> type) {
    throw own(type);
  }

  @Override
  public <K extends Comparable<K>, E> FieldForm<?, ?> keyed(KeyedType<K, E> type) {
    throw own(type);
  }

  /** The control of a whole number. */
  static Kind.Whole count(WholeType<?> type) {
    return new Kind.Whole(
        UnitForm.of(type.unit(), (double) type.max()).key(), type.min(), type.max());
  }

  /** The control of a number. */
  static Kind.Amount amount(NumberType type) {
    BigDecimal least = type.above() ? LEAST : BigDecimal.valueOf(type.min());
    return amount(UnitForm.of(type.unit(), type.max()), least, BigDecimal.valueOf(type.max()));
  }

  private static Kind.Amount amount(UnitForm unit, BigDecimal min, BigDecimal max) {
    return new Kind.Amount(unit.key(), unit.shown(min), unit.shown(max), unit.step());
  }

  private static BigDecimal first(Kind.Amount kind, UnitForm unit) {
    return unit.first().max(kind.min()).min(kind.max());
  }

  private static InvalidModelException refused(String field, String value, String allowed) {
    return new InvalidModelException("form", List.of(new Fault(field, value, allowed)));
  }

  private static IllegalArgumentException own(FieldType<?> type) {
    return new IllegalArgumentException(type + " has a form of its own");
  }
}
