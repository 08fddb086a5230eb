package lampwright.engine.json;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lampwright.engine.check.Checks;
import lampwright.engine.document.FieldWords;
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
import lampwright.engine.field.WholeType;

/** The JSON Schema (2020-12) of project files, made of what describes their fields. */
public final class ProjectSchema implements FieldType.Visitor<Map<String, Object>> {
  /** The schema's own name; nothing is to be found there. */
  public static final String ID = "urn:lampwright:project:1";

  private static final String DESCRIPTION =
      "A project file of Lampwright, version 1. Beyond this schema the reader checks that ids are"
          + " unique in their list, that what is named exists, that no pixel or output belongs to"
          + " two lamps, that runs of pixels end inside their chain, that a scene has at most"
          + " 1,000,000 frames, that periods are above 0, that keyframes are in order, that widths are in order, and that"
          + " light characters make sense.";

  private final Map<String, Object> definitions = new LinkedHashMap<>();

  private ProjectSchema() {}

  /** The text of the schema, with lines ended by LF. */
  public static String text() {
    ProjectSchema schema = new ProjectSchema();
    Map<String, Object> root = new LinkedHashMap<>();
    root.put("$schema", "https://json-schema.org/draft/2020-12/schema");
    root.put("$id", ID);
    root.put("title", "Lampwright project");
    root.put("description", DESCRIPTION);
    Map<String, Object> version = new LinkedHashMap<>();
    version.put("description", "version of the file format");
    version.put("const", BigDecimal.valueOf(Project.VERSION));
    Map<String, Object> fields = new LinkedHashMap<>();
    fields.put("lampwright", version);
    Map<String, Object> project = schema.object(Project.SHAPE, fields, List.of("lampwright"));
    root.putAll(project);
    root.put("$defs", schema.definitions);
    StringBuilder text = new StringBuilder();
    Out.of(root).lay(text, 0, Out.COLUMNS);
    return text.append('\n').toString();
  }

  private Map<String, Object> object(
      Shape<?> shape, Map<String, Object> properties, List<String> first) {
    List<Object> required = new ArrayList<>(first);
    for (Field<?, ?> field : shape.fields()) {
      properties.put(field.name(), property(field));
      if (field.need() == Field.Need.REQUIRED) {
        required.add(field.name());
      }
    }
    Map<String, Object> object = new LinkedHashMap<>();
    object.put("type", "object");
    object.put("properties", properties);
    if (!required.isEmpty()) {
      object.put("required", required);
    }
    object.put("additionalProperties", false);
    object.putAll(SchemaRules.of(shape));
    return object;
  }

  private <V> Map<String, Object> property(Field<?, V> field) {
    Map<String, Object> property = new LinkedHashMap<>();
    FieldWords.about(field).ifPresent(words -> property.put("description", plain(words)));
    property.putAll(field.type().accept(this));
    boolean optional = field.type() instanceof OptionalType<?, ?>;
    field
        .usual()
        .filter(usual -> !optional)
        .ifPresent(usual -> property.put("default", field.type().plain(usual)));
    return property;
  }

  // Words without the marks of a document: links by their texts.
  private static String plain(String words) {
    return words.replaceAll("\\[([^]]*)]\\([^)]*\\)", "$1").replace("`", "");
  }

  private Map<String, Object> defined(String name, Shape<?> shape) {
    if (!definitions.containsKey(name)) {
      // Named first, so that they are in the order in which they are met.
      definitions.put(name, Map.of());
      definitions.put(name, object(shape, new LinkedHashMap<>(), List.of()));
    }
    return reference(name);
  }

  private static Map<String, Object> reference(String name) {
    return Map.of("$ref", "#/$defs/" + name);
  }

  private static Map<String, Object> type(String type) {
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("type", type);
    return schema;
  }

  private static Map<String, Object> number(
      String type, BigDecimal min, boolean above, BigDecimal max) {
    Map<String, Object> schema = type(type);
    schema.put(above ? "exclusiveMinimum" : "minimum", min);
    schema.put("maximum", max);
    return schema;
  }

  @Override
  public <E> Map<String, Object> choice(ChoiceType<E> type) {
    Map<String, Object> schema = new LinkedHashMap<>();
    schema.put("enum", type.keys());
    return schema;
  }

  @Override
  public Map<String, Object> decimal(DecimalType type) {
    return number(
        "number", BigDecimal.valueOf(type.min()), type.above(), BigDecimal.valueOf(type.max()));
  }

  @Override
  public Map<String, Object> flag(FlagType type) {
    return type("boolean");
  }

  @Override
  public <E> Map<String, Object> form(FormType<E> type) {
    Map<String, Object> schema = type("string");
    schema.put("pattern", type.pattern());
    return schema;
  }

  @Override
  public Map<String, Object> id(IdType type) {
    Map<String, Object> schema = type("string");
    schema.put("pattern", "^[a-z0-9-]{1,40}$");
    return schema;
  }

  @Override
  public <K extends Comparable<K>, E> Map<String, Object> keyed(KeyedType<K, E> type) {
    Map<String, Object> members = new LinkedHashMap<>();
    type.keys().keys().forEach(key -> members.put(key, type.each().accept(this)));
    Map<String, Object> schema = type("object");
    schema.put("properties", members);
    schema.put("additionalProperties", false);
    return schema;
  }

  @Override
  public <E> Map<String, Object> list(ListType<E> type) {
    Map<String, Object> schema = type("array");
    schema.put("items", type.each().accept(this));
    if (type.each() instanceof ReferenceType<?>) {
      schema.put("uniqueItems", true);
    }
    if (type.limit().min() > 0) {
      schema.put("minItems", BigDecimal.valueOf(type.limit().min()));
    }
    schema.put("maxItems", BigDecimal.valueOf(type.limit().max()));
    return schema;
  }

  @Override
  public <E, W extends E> Map<String, Object> narrow(NarrowType<E, W> type) {
    List<Object> forms = new ArrayList<>();
    type.wide().brief().ifPresent(brief -> forms.add(brief.form().accept(this)));
    type.wide().shapes().stream()
        .filter(shape -> type.narrow().isAssignableFrom(shape.type()))
        .forEach(shape -> forms.add(defined(type.wide().key() + "-" + shape.key(), shape)));
    return Map.of("oneOf", forms);
  }

  @Override
  public Map<String, Object> number(NumberType type) {
    return number(
        "number", Checks.canonical(type.min()), type.above(), Checks.canonical(type.max()));
  }

  @Override
  public <E, P> Map<String, Object> optional(OptionalType<E, P> type) {
    return type.some().accept(this);
  }

  @Override
  public Map<String, Object> pair(PairType type) {
    Map<String, Object> one =
        number("number", Checks.canonical(type.min()), false, Checks.canonical(type.max()));
    Map<String, Object> two = type("array");
    two.put("items", one);
    two.put("minItems", BigDecimal.valueOf(2));
    two.put("maxItems", BigDecimal.valueOf(2));
    return type.alone() ? Map.of("oneOf", List.of(one, two)) : two;
  }

  @Override
  public <E> Map<String, Object> record(RecordType<E> type) {
    return defined(type.shape().key(), type.shape());
  }

  @Override
  public <E> Map<String, Object> reference(ReferenceType<E> type) {
    return type("string");
  }

  @Override
  public Map<String, Object> text(TextType type) {
    Map<String, Object> schema = type("string");
    schema.put("maxLength", BigDecimal.valueOf(type.maxLength()));
    return schema;
  }

  @Override
  public <E> Map<String, Object> union(UnionType<E> type) {
    if (!definitions.containsKey(type.key())) {
      definitions.put(type.key(), Map.of());
      List<Object> forms = new ArrayList<>();
      type.brief().ifPresent(brief -> forms.add(brief.form().accept(this)));
      type.shapes().forEach(shape -> forms.add(form(type, shape)));
      definitions.put(type.key(), Map.of("oneOf", forms));
    }
    return reference(type.key());
  }

  private Map<String, Object> form(UnionType<?> type, Shape<?> shape) {
    String name = type.key() + "-" + shape.key();
    if (type.tag().isEmpty()) {
      return defined(name, shape);
    }
    if (!definitions.containsKey(name)) {
      definitions.put(name, Map.of());
      Map<String, Object> fields = new LinkedHashMap<>();
      fields.put(type.tag(), Map.of("const", shape.key()));
      definitions.put(name, object(shape, fields, List.of(type.tag())));
    }
    return reference(name);
  }

  @Override
  public <N extends Number> Map<String, Object> whole(WholeType<N> type) {
    return number("integer", BigDecimal.valueOf(type.min()), false, BigDecimal.valueOf(type.max()));
  }
}
