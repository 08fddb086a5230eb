package lampwright.engine.json;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import lampwright.engine.check.InvalidModelException;
import lampwright.engine.field.ChoiceType;
import lampwright.engine.field.DecimalType;
import lampwright.engine.field.Draft;
import lampwright.engine.field.Field;
import lampwright.engine.field.FieldType;
import lampwright.engine.field.FlagType;
import lampwright.engine.field.FormType;
import lampwright.engine.field.Group;
import lampwright.engine.field.IdType;
import lampwright.engine.field.KeyedType;
import lampwright.engine.field.ListType;
import lampwright.engine.field.NarrowType;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.PairType;
import lampwright.engine.field.Part;
import lampwright.engine.field.RecordType;
import lampwright.engine.field.ReferenceType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.TextType;
import lampwright.engine.field.UnionType;
import lampwright.engine.field.WholeType;

/**
 * Reads values and objects by what describes them. What is wrong is reported where it is, and
 * reading goes on.
 */
final class ShapeReader {
  // A type is asked for its kind and words once in a file, not for every value.
  private final IdentityHashMap<FieldType<?>, ValueKind<?>> kinds = new IdentityHashMap<>();

  private final IdentityHashMap<UnionType<?>, ValueKind<?>> words = new IdentityHashMap<>();

  private final Map<Shape<?>, Function<Located, ?>> standIns = new HashMap<>();

  /**
   * Puts something in place of every broken object of a shape, so that what is around it is
   * checked.
   */
  <R> void inPlaceOf(Shape<R> shape, Function<Located, R> standIn) {
    standIns.put(shape, standIn);
  }

  /** A value; empty if it is not accepted, which is then reported. */
  @SuppressWarnings("unchecked") // the reading of a type gives what the type holds
  <V> Optional<V> value(FieldType<V> type, Located at) {
    return (Optional<V>) type.accept(new Reading(at));
  }

  /** An object; empty if anything is wrong with it, which is then reported. */
  <R> Optional<R> object(Shape<R> shape, Located at) {
    return made(shape, at.fields());
  }

  private <R> Optional<R> made(Shape<R> shape, Fields f) {
    Draft<R> draft = fill(shape, f, shape.draft());
    Optional<R> made = f.build(() -> Optional.of(draft.make()), Optional::empty);
    f.close();
    return f.sound() ? made : Optional.empty();
  }

  /** What an object gives of those parts of a shape that are not set yet. */
  <R> Draft<R> fill(Shape<R> shape, Fields f, Draft<R> draft) {
    f.expect(shape.names());
    parts(shape, f, draft);
    return draft;
  }

  private <R> void parts(Shape<R> shape, Fields f, Draft<R> draft) {
    for (Part<R, ?> part : shape.parts()) {
      if (!draft.has(part)) {
        part(part, f, draft);
      }
    }
  }

  private <R, V> void part(Part<R, V> part, Fields f, Draft<R> draft) {
    if (part instanceof Field<R, V> field) {
      field(field, f).ifPresent(value -> draft.set(field, value));
    } else if (part instanceof Group<R, V> group) {
      group(group, f, draft);
    }
  }

  /** The value of a field; empty if it is not given or not accepted. */
  <V> Optional<V> field(Field<?, V> field, Fields f) {
    Optional<Located> at = f.find(field.name());
    if (at.isEmpty()) {
      if (field.need() == Field.Need.REQUIRED) {
        f.missing(field.name(), kind(field.type()).allowed());
      }
      return Optional.empty();
    }
    Optional<V> value = value(field.type(), at.get());
    if (value.isEmpty()) {
      f.breaks(field.name());
    }
    return value;
  }

  private <R, C> void group(Group<R, C> group, Fields f, Draft<R> draft) {
    Draft<C> given = group.parts().draft();
    parts(group.parts(), f, given);
    if (group.fields().stream().anyMatch(field -> f.isBroken(field.name()))) {
      return;
    }
    try {
      draft.set(group, group.make(draft, given));
    } catch (InvalidModelException refused) {
      refused.faults().forEach(fault -> f.report(fault, References.NONE));
    }
  }

  @SuppressWarnings("unchecked") // the kind of a type gives what the type holds, but for structures
  private <V> ValueKind<V> kind(FieldType<V> type) {
    return (ValueKind<V>) kinds.computeIfAbsent(type, t -> t.accept(JsonKind.OF));
  }

  @SuppressWarnings("unchecked") // the words of a union name its shapes
  private <E> ValueKind<Shape<? extends E>> words(UnionType<E> type) {
    return (ValueKind<Shape<? extends E>>)
        words.computeIfAbsent(type, t -> ValueKind.choice(type.shapes(), type::word));
  }

  private final class Reading implements FieldType.Visitor<Optional<?>> {
    private final Located at;

    Reading(Located at) {
      this.at = at;
    }

    private <V> Optional<V> plain(FieldType<V> type) {
      return at.as(kind(type));
    }

    @Override
    public <E> Optional<?> choice(ChoiceType<E> type) {
      return plain(type);
    }

    @Override
    public Optional<?> decimal(DecimalType type) {
      return plain(type);
    }

    @Override
    public Optional<?> flag(FlagType type) {
      return plain(type);
    }

    @Override
    public <E> Optional<?> form(FormType<E> type) {
      return plain(type);
    }

    @Override
    public Optional<?> id(IdType type) {
      return plain(type);
    }

    @Override
    public Optional<?> number(NumberType type) {
      return plain(type);
    }

    @Override
    public <E> Optional<?> reference(ReferenceType<E> type) {
      return plain(type);
    }

    @Override
    public Optional<?> text(TextType type) {
      return plain(type);
    }

    @Override
    public <N extends Number> Optional<?> whole(WholeType<N> type) {
      return plain(type);
    }

    @Override
    public <E, P> Optional<?> optional(OptionalType<E, P> type) {
      return value(type.some(), at).map(some -> type.close().apply(Optional.of(some)));
    }

    @Override
    public <E, W extends E> Optional<?> narrow(NarrowType<E, W> type) {
      Optional<E> value = value(type.wide(), at);
      if (value.isPresent() && !type.narrow().isInstance(value.get())) {
        at.error(type.other(), type.allowed());
        return Optional.empty();
      }
      return value;
    }

    @Override
    public Optional<?> pair(PairType type) {
      if (type.alone() && at.json() instanceof Json.Num) {
        return at.as(ValueKind.NUMBER).map(List::of);
      }
      Optional<List<Json>> items = at.as(listKind(type));
      if (items.isEmpty()) {
        return Optional.empty();
      }
      List<Optional<Double>> ends =
          at.items(items.get()).stream().map(end -> end.as(ValueKind.NUMBER)).toList();
      return ends.stream().allMatch(Optional::isPresent)
          ? Optional.of(ends.stream().flatMap(Optional::stream).toList())
          : Optional.empty();
    }

    @SuppressWarnings("unchecked") // a pair's kind gives its two values
    private ValueKind<List<Json>> listKind(PairType type) {
      ValueKind<List<Json>> list = (ValueKind<List<Json>>) (ValueKind<?>) kind(type);
      boolean other = type.alone() && !(at.json() instanceof Json.Arr);
      return other
          ? list.allowing(list.allowed().replace("must be", "must be a number, or"))
          : list;
    }

    @Override
    public <E> Optional<?> list(ListType<E> type) {
      Optional<List<Json>> members = at.as(ValueKind.LIST);
      if (members.isEmpty()) {
        return Optional.empty();
      }
      boolean whole = at.within(type.limit(), members.get().size());
      int count = Math.min(members.get().size(), type.limit().max());
      List<E> list = new ArrayList<>();
      for (Located item : at.items(members.get().subList(0, count))) {
        Optional<E> before =
            list.isEmpty() ? Optional.empty() : Optional.of(list.get(list.size() - 1));
        Optional<E> value = item(type.each(), item, before);
        value.ifPresent(list::add);
        whole &= value.isPresent();
      }
      return whole ? Optional.of(list) : Optional.empty();
    }

    private <E> Optional<E> item(FieldType<E> type, Located item, Optional<E> before) {
      Optional<E> value =
          type instanceof RecordType<E> objects ? object(objects.shape(), item) : value(type, item);
      return value.isEmpty() && type instanceof RecordType<E> objects
          ? standIn(objects, item).or(() -> objects.standIn().map(make -> make.apply(before)))
          : value;
    }

    @SuppressWarnings("unchecked") // inPlaceOf() puts what is of the shape
    private <E> Optional<E> standIn(RecordType<E> type, Located item) {
      return Optional.ofNullable(standIns.get(type.shape())).map(make -> (E) make.apply(item));
    }

    @Override
    public <E> Optional<?> record(RecordType<E> type) {
      return object(type.shape(), at)
          .or(() -> type.standIn().map(make -> make.apply(Optional.empty())));
    }

    @Override
    public <K extends Comparable<K>, E> Optional<?> keyed(KeyedType<K, E> type) {
      Fields f = at.fields();
      Map<K, E> members = new TreeMap<>();
      for (K key : type.keys().values()) {
        String name = type.keys().key().apply(key);
        Optional<Located> member = f.find(name);
        if (member.isPresent()) {
          Optional<E> value = value(type.each(), member.get());
          value.ifPresentOrElse(v -> members.put(key, v), () -> f.breaks(name));
        }
      }
      f.close();
      return f.sound() ? Optional.of(members) : Optional.empty();
    }

    @Override
    public <E> Optional<?> union(UnionType<E> type) {
      Optional<E> value =
          type.brief().isPresent() && at.json() instanceof Json.Text
              ? brief(type.brief().get())
              : shaped(type);
      return value.or(type::standIn);
    }

    private <E, W extends E> Optional<E> brief(UnionType.Brief<E, W> brief) {
      return value(brief.form(), at).map(text -> text);
    }

    private <E> Optional<E> shaped(UnionType<E> type) {
      Fields f = at.fields(type.allowed());
      if (!(at.json() instanceof Json.Obj)) {
        return Optional.empty();
      }
      return type.tag().isEmpty() ? byField(type, f) : byTag(type, f);
    }

    private <E> Optional<E> byTag(UnionType<E> type, Fields f) {
      // Which fields it should have is not known without.
      return f.required(type.tag(), words(type)).flatMap(shape -> made(shape, f));
    }

    private <E> Optional<E> byField(UnionType<E> type, Fields f) {
      List<String> given = type.words().stream().filter(f::has).toList();
      if (given.size() == 1) {
        return type.shape(given.get(0)).flatMap(shape -> made(shape, f));
      }
      type.shapes().forEach(shape -> f.expect(shape.names()));
      f.close();
      // A misspelt field was reported as such.
      if (f.sound()) {
        at.error(
            given.isEmpty() ? "an object without a " + type.key() : String.join(" and ", given),
            "must be one of " + ValueKind.either(type.words()));
      }
      return Optional.empty();
    }
  }
}
