package lampwright.engine.json;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.function.Supplier;
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
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.situation.Condition;
import lampwright.engine.situation.Criterion;

/**
 * Random values of fields and records, from what describes them: mostly near what is usual, now and
 * then at the ends of their ranges.
 */
final class RandomValues {
  private static final int TRIES = 200;

  private static final List<String> CHARACTERS =
      List.of(
          "F",
          "Oc 6s",
          "Iso 4s",
          "Fl 5s",
          "Fl(2) 10s",
          "Fl(2+1) 15s",
          "LFl 10s",
          "Q",
          "Q(3) 10s",
          "VQ",
          "VQ(6)+LFl 10s",
          "UQ",
          "IQ 12s",
          "Mo(A)");

  private final Chance chance;
  private final Predicate<Shape<?>> allowed;
  private final Map<Part<?, ?>, Supplier<?>> own = new HashMap<>();

  /**
   * @param allowed which shapes may come where there are several
   */
  RandomValues(Chance chance, Predicate<Shape<?>> allowed) {
    this.chance = chance;
    this.allowed = allowed;
    // Hardly any that is made of nine fields at random is a condition.
    with(Condition.CRITERION, this::criterion);
  }

  private Criterion criterion() {
    String name = chance.id("x");
    int width = chance.whole(800, 2200);
    int hysteresis = chance.flag() ? 20 : chance.whole(0, 300);
    return switch (chance.whole(0, 6)) {
      case 0 -> new Criterion.Above(name, width, hysteresis);
      case 1 -> new Criterion.Below(name, width, hysteresis);
      case 2 -> new Criterion.Between(name, width, chance.whole(width, 2200), hysteresis);
      case 3 -> new Criterion.Lost(name);
      case 4 -> new Criterion.SwitchIs(name, chance.flag());
      case 5 -> new Criterion.SituationIs(name, chance.flag());
      default -> new Criterion.EndedWithin(name, chance.decimal("0", "2000"));
    };
  }

  /**
   * Makes the values of a part otherwise: those that have to fit what is around them, or that would
   * make projects too large for many tests.
   */
  <R, V> RandomValues with(Part<R, V> part, Supplier<? extends V> values) {
    own.put(part, values);
    return this;
  }

  /** The same, where the part has a value in half of the records. */
  <R, V> RandomValues sometimes(Field<R, V> field, Supplier<? extends V> values) {
    V usual = field.usual().orElseThrow();
    return with(field, () -> chance.flag() ? usual : values.get());
  }

  /** A record that accepts its values. */
  <R> R record(Shape<R> shape) {
    for (int i = 0; i < TRIES; i++) {
      try {
        return draft(shape).make();
      } catch (InvalidModelException refused) {
        // What is wrong between fields is found by trying.
      }
    }
    throw new IllegalStateException("no " + shape + " in " + TRIES + " tries");
  }

  private <R> Draft<R> draft(Shape<R> shape) {
    Draft<R> draft = shape.draft();
    for (Part<R, ?> part : shape.parts()) {
      set(draft, part);
    }
    return draft;
  }

  private <R, V> void set(Draft<R> draft, Part<R, V> part) {
    Supplier<?> values = own.get(part);
    if (values != null) {
      @SuppressWarnings("unchecked") // only with() puts suppliers, of the part's own type
      V value = (V) values.get();
      draft.set(part, value);
    } else if (part instanceof Group<R, V> group) {
      draft.set(group, group.make(draft, draft(group.parts())));
    } else if (part instanceof Field<R, V> field && (required(field) || chance.flag())) {
      draft.set(field, value(field));
    }
  }

  private static boolean required(Field<?, ?> field) {
    return field.need() == Field.Need.REQUIRED;
  }

  /** A value of a field. */
  <V> V value(Field<?, V> field) {
    return value(field.type(), field.usual(), field.name());
  }

  /** A value of a type. */
  <V> V value(FieldType<V> type) {
    return value(type, Optional.empty(), "");
  }

  @SuppressWarnings("unchecked") // each method makes what its type holds
  private <V> V value(FieldType<V> type, Optional<V> usual, String name) {
    return (V) type.accept(new Making(usual, name));
  }

  private final class Making implements FieldType.Visitor<Object> {
    private final Optional<?> usual;
    private final String name;

    Making(Optional<?> usual, String name) {
      this.usual = usual;
      this.name = name;
    }

    private double between(double min, double max) {
      double least = Math.max(min, -500);
      double greatest = Math.min(max, 500);
      return chance.number(least, greatest);
    }

    // Within a factor of 8 of what is usual, or up to 500 where that is nothing.
    private double near(double min, double max) {
      if (chance.once(12)) {
        return chance.flag() ? min : max;
      }
      double middle =
          usual.filter(Number.class::isInstance).map(u -> ((Number) u).doubleValue()).orElse(0.0);
      double value = middle > 0 ? middle * Math.pow(2, chance.number(-3, 3)) : between(min, max);
      return Math.max(min, Math.min(max, value));
    }

    @Override
    public <E> Object choice(ChoiceType<E> type) {
      return chance.of(type.values());
    }

    @Override
    public Object decimal(DecimalType type) {
      // The ends of a range of times would make scenes of a day.
      double value =
          near(type.above() ? 0.01 : (double) type.min(), Math.min((double) type.max(), 10_000));
      return new BigDecimal(value)
          .setScale(chance.whole(0, 3), RoundingMode.HALF_UP)
          .max(type.above() ? new BigDecimal("0.01") : BigDecimal.valueOf(type.min()));
    }

    @Override
    public Object flag(FlagType type) {
      return chance.flag();
    }

    @Override
    public <E> Object form(FormType<E> type) {
      return type.parse().apply(chance.of(type.examples())).orElseThrow();
    }

    @Override
    public Object id(IdType type) {
      return chance.id("x");
    }

    @Override
    public <K extends Comparable<K>, E> Object keyed(KeyedType<K, E> type) {
      Map<K, E> members = new TreeMap<>();
      type.keys().values().forEach(key -> members.put(key, value(type.each())));
      return members;
    }

    @Override
    public <E> Object list(ListType<E> type) {
      int count = chance.whole(type.limit().min(), Math.min(type.limit().max(), 4));
      List<E> list = new ArrayList<>();
      for (int i = 0; i < count; i++) {
        list.add(value(type.each()));
      }
      return list;
    }

    @Override
    public <E, W extends E> Object narrow(NarrowType<E, W> type) {
      while (true) {
        E value = value(type.wide());
        if (type.narrow().isInstance(value)) {
          return value;
        }
      }
    }

    @Override
    public Object number(NumberType type) {
      return near(type.above() ? Math.min(0.001, type.max()) : type.min(), type.max());
    }

    @Override
    public <E, P> Object optional(OptionalType<E, P> type) {
      return type.close().apply(Optional.of(value(type.some())));
    }

    @Override
    public Object pair(PairType type) {
      double least = near(type.min(), type.max());
      return type.alone() && chance.flag()
          ? List.of(least)
          : List.of(least, Math.max(least, near(type.min(), type.max())));
    }

    @Override
    public <E> Object record(RecordType<E> type) {
      return RandomValues.this.record(type.shape());
    }

    @Override
    public <E> Object reference(ReferenceType<E> type) {
      // What names another part has to be set by who knows the parts; this is any name.
      return type.list().equals("pixelTypes") ? BuiltInPixelTypes.standIn() : chance.id("x");
    }

    @Override
    public Object text(TextType type) {
      return name.equals("character") ? chance.of(CHARACTERS) : chance.text();
    }

    @Override
    public <E> Object union(UnionType<E> type) {
      List<Shape<? extends E>> some = type.shapes().stream().filter(allowed).toList();
      return RandomValues.this.record(chance.of(some));
    }

    @Override
    public <N extends Number> Object whole(WholeType<N> type) {
      double value = near((double) type.min(), Math.min((double) type.max(), 10_000));
      return type.of().apply(Math.max(type.min(), Math.round(value)));
    }
  }
}
