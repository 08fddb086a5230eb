package lampwright.engine.json;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import lampwright.engine.document.FieldWords;
import lampwright.engine.document.Picture;
import lampwright.engine.document.Preset;
import lampwright.engine.document.Project;
import lampwright.engine.field.ChoiceType;
import lampwright.engine.field.DecimalType;
import lampwright.engine.field.Field;
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
import lampwright.engine.field.Shape;
import lampwright.engine.field.TextType;
import lampwright.engine.field.UnionType;
import lampwright.engine.field.Unit;
import lampwright.engine.field.WholeType;
import lampwright.engine.light.FittedEmitter;
import lampwright.engine.pattern.Keyframe;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Patterns;
import lampwright.engine.rig.Battery;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Feed;
import lampwright.engine.rig.Feel;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.LineTiming;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Place;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.GuideSound;
import lampwright.engine.scene.Marker;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import lampwright.engine.situation.Condition;
import lampwright.engine.situation.Situation;

/** The tables of fields in docs/formats.md. */
final class FieldTables {
  private static final List<Shape<?>> SHAPES =
      List.of(
          Project.SHAPE,
          Picture.SHAPE,
          Rig.SHAPE,
          Feed.SHAPE,
          Battery.SHAPE,
          Chain.SHAPE,
          DriverOutput.SHAPE,
          Lamp.SHAPE,
          Input.SHAPE,
          PixelRun.SHAPE,
          Place.SHAPE,
          Feel.SHAPE,
          PixelType.SHAPE,
          FittedEmitter.SHAPE,
          LineTiming.SHAPE,
          Scene.SHAPE,
          Marker.SHAPE,
          GuideSound.SHAPE,
          Preset.SHAPE,
          Situation.SHAPE,
          Condition.SHAPE,
          Track.SHAPE,
          Cue.SHAPE,
          Keyframe.SHAPE);

  private FieldTables() {}

  /** Every table by the name of its place. */
  static Map<String, String> all() {
    Map<String, String> tables = new LinkedHashMap<>();
    SHAPES.forEach(shape -> tables.put(shape.key(), table(shape)));
    tables.put("patterns", patterns());
    return tables;
  }

  private static String table(Shape<?> shape) {
    return "| field | type | range | default | |\n| --- | --- | --- | --- | --- |\n"
        + shape.fields().stream().map(f -> "| " + row(f)).collect(Collectors.joining());
  }

  private static String patterns() {
    StringBuilder table =
        new StringBuilder("| kind | field | type | range | default | |\n")
            .append("| --- | --- | --- | --- | --- | --- |\n");
    Look.SHAPE.fields().forEach(field -> table.append("| every | ").append(row(field)));
    for (Shape<?> shape : Patterns.ANY.shapes()) {
      String kind = "`" + shape.key() + "`";
      List<Field<?, ?>> own =
          shape.fields().stream().filter(field -> field.shape() != Look.SHAPE).toList();
      if (own.isEmpty()) {
        table.append("| ").append(kind).append(" | | | | | |\n");
      }
      for (Field<?, ?> field : own) {
        table.append("| ").append(kind).append(" | ").append(row(field));
        kind = "";
      }
    }
    return table.toString();
  }

  private static <V> String row(Field<?, V> field) {
    return String.join(
        " | ",
        "`" + field.name() + "`",
        field.type().accept(TypeWords.INSTANCE),
        field.type().accept(RangeWords.INSTANCE),
        usual(field),
        FieldWords.about(field).orElse("") + " |\n");
  }

  private static <V> String usual(Field<?, V> field) {
    if (field.need() == Field.Need.REQUIRED) {
      return "*required*";
    }
    return FieldWords.usual(field)
        .orElseGet(() -> field.usual().map(usual -> shown(field.type(), usual)).orElse(""));
  }

  private static <V> String shown(FieldType<V> type, V usual) {
    boolean none = type instanceof OptionalType<?, V> optional && optional.none().equals(usual);
    Object plain = none ? List.of() : type.plain(usual);
    if (plain instanceof List<?> list && list.isEmpty()) {
      return "none";
    }
    boolean number = plain instanceof BigDecimal || plain instanceof Boolean;
    StringBuilder text = new StringBuilder();
    Out.of(plain).flat(text);
    boolean word = type instanceof ChoiceType<?>;
    return number ? text.toString() : "`" + (word ? plain : text) + "`";
  }

  private abstract static class Words implements FieldType.Visitor<String> {
    @Override
    public <E, P> String optional(OptionalType<E, P> type) {
      return type.some().accept(this);
    }
  }

  private static final class TypeWords extends Words {
    static final TypeWords INSTANCE = new TypeWords();

    @Override
    public <E> String choice(ChoiceType<E> type) {
      return type.keys().stream().map(key -> "`" + key + "`").collect(Collectors.joining(", "));
    }

    @Override
    public String decimal(DecimalType type) {
      return "number";
    }

    @Override
    public String flag(FlagType type) {
      return "true or false";
    }

    @Override
    public <E> String form(FormType<E> type) {
      return "string";
    }

    @Override
    public String id(IdType type) {
      return "id";
    }

    @Override
    public <K extends Comparable<K>, E> String keyed(KeyedType<K, E> type) {
      return type.keys().keys().stream()
          .map(key -> "`" + key + "`")
          .collect(Collectors.joining(", ", "object with ", ""));
    }

    @Override
    public <E> String list(ListType<E> type) {
      return "list of " + type.each().accept(this);
    }

    @Override
    public <E, W extends E> String narrow(NarrowType<E, W> type) {
      return "sRGB [colour](#colours)";
    }

    @Override
    public String number(NumberType type) {
      return "number";
    }

    @Override
    public String pair(PairType type) {
      return type.alone() ? "number or `[least, greatest]`" : "`[least, greatest]`";
    }

    @Override
    public <E> String record(RecordType<E> type) {
      return "[" + type.shape().key() + "](#" + type.shape().key() + ")";
    }

    @Override
    public <E> String reference(ReferenceType<E> type) {
      return "string";
    }

    @Override
    public String text(TextType type) {
      return "string";
    }

    @Override
    public <E> String union(UnionType<E> type) {
      return "[" + type.key() + "](#" + type.key() + "s)";
    }

    @Override
    public <N extends Number> String whole(WholeType<N> type) {
      return "whole number";
    }
  }

  private static final class RangeWords extends Words {
    static final RangeWords INSTANCE = new RangeWords();

    private static String range(boolean above, double min, double max, Unit unit) {
      String ends = (above ? "above " : "") + number(min) + " to " + number(max);
      return (ends + " " + unit.symbol()).strip();
    }

    private static String number(double value) {
      String plain = BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
      return value == Math.rint(value) ? String.format(Locale.ROOT, "%,d", (long) value) : plain;
    }

    @Override
    public <E> String choice(ChoiceType<E> type) {
      return "";
    }

    @Override
    public String decimal(DecimalType type) {
      return range(type.above(), (double) type.min(), (double) type.max(), type.unit());
    }

    @Override
    public String flag(FlagType type) {
      return "";
    }

    @Override
    public <E> String form(FormType<E> type) {
      return type.allowed().equals("must be a string")
          ? ""
          : type.allowed().replaceFirst("^must (be|have) ", "");
    }

    @Override
    public String id(IdType type) {
      return "";
    }

    @Override
    public <K extends Comparable<K>, E> String keyed(KeyedType<K, E> type) {
      return "";
    }

    @Override
    public <E> String list(ListType<E> type) {
      String max = String.format(Locale.ROOT, "%,d", type.limit().max());
      boolean exact = type.limit().min() == type.limit().max();
      String from = type.limit().min() == 0 ? "up to " : type.limit().min() + " to ";
      String count = exact ? max : from + max;
      String each = type.each().accept(this);
      return each.isEmpty() ? count : count + " of " + each;
    }

    @Override
    public <E, W extends E> String narrow(NarrowType<E, W> type) {
      return "";
    }

    @Override
    public String number(NumberType type) {
      return range(type.above(), type.min(), type.max(), type.unit());
    }

    @Override
    public String pair(PairType type) {
      return range(false, type.min(), type.max(), type.unit());
    }

    @Override
    public <E> String record(RecordType<E> type) {
      return "";
    }

    @Override
    public <E> String reference(ReferenceType<E> type) {
      return "";
    }

    @Override
    public String text(TextType type) {
      return "up to " + String.format(Locale.ROOT, "%,d", type.maxLength()) + " characters";
    }

    @Override
    public <E> String union(UnionType<E> type) {
      return "";
    }

    @Override
    public <N extends Number> String whole(WholeType<N> type) {
      return range(false, (double) type.min(), (double) type.max(), type.unit());
    }
  }
}
