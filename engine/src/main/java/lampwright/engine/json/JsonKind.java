package lampwright.engine.json;

import com.google.common.base.CharMatcher;
import java.util.List;
import java.util.Optional;
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

/** The kind of JSON value that a field has. */
final class JsonKind implements FieldType.Visitor<ValueKind<?>> {
  static final JsonKind OF = new JsonKind();

  private static final String PAIR = "the minimum and maximum time: [300, 450]";

  private JsonKind() {}

  @Override
  public <E> ValueKind<?> choice(ChoiceType<E> type) {
    return ValueKind.choice(type.values(), type.key());
  }

  @Override
  public ValueKind<?> decimal(DecimalType type) {
    return ValueKind.DECIMAL;
  }

  @Override
  public ValueKind<?> flag(FlagType type) {
    return ValueKind.FLAG;
  }

  @Override
  public <E> ValueKind<?> form(FormType<E> type) {
    // Of codes and numbers none is more likely meant than another.
    List<String> words =
        type.examples().stream().filter(CharMatcher.inRange('a', 'z')::matchesAllOf).toList();
    return ValueKind.text(type.allowed(), type.parse()).knowing(words);
  }

  @Override
  public ValueKind<?> id(IdType type) {
    return ValueKind.TEXT;
  }

  @Override
  public <K extends Comparable<K>, E> ValueKind<?> keyed(KeyedType<K, E> type) {
    return ValueKind.OBJECT;
  }

  @Override
  public <E> ValueKind<?> list(ListType<E> type) {
    return ValueKind.LIST;
  }

  @Override
  public <E, W extends E> ValueKind<?> narrow(NarrowType<E, W> type) {
    return union(type.wide());
  }

  @Override
  public ValueKind<?> number(NumberType type) {
    return ValueKind.NUMBER;
  }

  @Override
  public <E, P> ValueKind<?> optional(OptionalType<E, P> type) {
    return type.some().accept(this);
  }

  @Override
  public ValueKind<?> pair(PairType type) {
    return new ValueKind<>(Json.Arr.class, "must be " + PAIR, List.of(), JsonKind::two);
  }

  @Override
  public <E> ValueKind<?> record(RecordType<E> type) {
    return ValueKind.OBJECT;
  }

  @Override
  public <E> ValueKind<?> reference(ReferenceType<E> type) {
    return ValueKind.TEXT;
  }

  @Override
  public ValueKind<?> text(TextType type) {
    return ValueKind.TEXT;
  }

  @Override
  public <E> ValueKind<?> union(UnionType<E> type) {
    return ValueKind.object(type.allowed());
  }

  @Override
  public <N extends Number> ValueKind<?> whole(WholeType<N> type) {
    return new ValueKind<>(
        ValueKind.WHOLE.type(),
        ValueKind.WHOLE.allowed(),
        List.of(),
        json -> ValueKind.WHOLE.read(json).map(whole -> type.of().apply(whole)));
  }

  private static Optional<List<Json>> two(Json json) {
    return json instanceof Json.Arr list && list.items().size() == 2
        ? Optional.of(list.items())
        : Optional.empty();
  }
}
