package lampwright.engine.json;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Stream;
import lampwright.engine.field.Shape;
import lampwright.engine.rig.Battery;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Feed;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Rig;
import lampwright.engine.situation.Condition;
import lampwright.engine.situation.Criteria;
import lampwright.engine.situation.Situation;
import org.jspecify.annotations.Nullable;

/**
 * What the records check between their fields, in the words of JSON Schema. The reader does not
 * need it: a rule forgotten here makes the schema milder than the reader, never stricter.
 */
final class SchemaRules {
  private static final Map<Shape<?>, Map<String, Object>> RULES = new LinkedHashMap<>();

  static {
    RULES.put(
        Rig.SHAPE,
        Map.of(
            "anyOf", List.of(notEmpty("chains"), notEmpty("outputs")),
            "dependentRequired", Map.of("clockMegahertz", List.of("controller"))));
    RULES.put(Lamp.SHAPE, oneOf("pixels", "output"));
    Map<String, Object> feed = new LinkedHashMap<>(oneOf("awg", "mm2"));
    feed.put("not", required("stripAwg", "stripMm2"));
    RULES.put(Feed.SHAPE, feed);
    RULES.put(
        DriverOutput.SHAPE,
        Map.of(
            "not",
            Map.of(
                "required",
                List.of("drive", "supply"),
                "properties",
                Map.of("drive", Map.of("const", "pin"), "supply", Map.of("const", "current")))));
    RULES.put(
        Battery.SHAPE,
        Map.of(
            "if",
            required("efficiency"),
            "then",
            Map.of(
                "required",
                List.of("regulator"),
                "properties",
                Map.of("regulator", Map.of("enum", List.of("buck", "boost"))))));
    RULES.put(Situation.SHAPE, Map.of("not", required("all", "any")));
    RULES.put(
        Condition.SHAPE,
        Map.of(
            "allOf",
            List.of(
                oneOf("input", "situation"),
                oneOf(Criteria.forms().toArray(String[]::new)),
                properties("lost", Map.of("const", true)),
                Map.of(
                    "if", required("hysteresisUs"),
                    "then", Map.of("not", anyOf("lost", "is", "endedWithinMs"))),
                Map.of(
                    "if", required("situation"),
                    "then", ofSituation(),
                    "else",
                        Map.of(
                            "not",
                            required("endedWithinMs"),
                            "properties",
                            Map.of("is", Map.of("enum", List.of("on", "off"))))))));
    RULES.put(
        PixelType.SHAPE,
        Map.of(
            "if", properties("order", Map.of("pattern", "W")),
            "then", properties("emitters", required("r", "g", "b", "w")),
            "else",
                properties(
                    "emitters",
                    Map.of("required", List.of("r", "g", "b"), "properties", Map.of("w", false)))));
  }

  private SchemaRules() {}

  /** The rules of a shape; none if its fields are free of each other. */
  static Map<String, Object> of(Shape<?> shape) {
    return sorted(RULES.getOrDefault(shape, Map.of()));
  }

  // The order of Map.of() changes from run to run.
  private static Map<String, Object> sorted(Map<?, ?> rule) {
    Map<String, Object> sorted = new TreeMap<>();
    rule.forEach((name, value) -> sorted.put((String) name, sortedValue(value)));
    return sorted;
  }

  private static Object sortedValue(@Nullable Object value) {
    if (value instanceof Map<?, ?> map) {
      return sorted(map);
    }
    return value instanceof List<?> list
        ? list.stream().map(SchemaRules::sortedValue).toList()
        : Objects.requireNonNull(value);
  }

  private static Map<String, Object> required(String... names) {
    return Map.of("required", List.of(names));
  }

  private static Map<String, Object> ofSituation() {
    Map<String, Object> rules =
        new LinkedHashMap<>(properties("is", Map.of("enum", List.of("active", "inactive"))));
    rules.put("not", anyOf("aboveUs", "belowUs", "betweenUs", "lost", "taps"));
    return rules;
  }

  private static Map<String, Object> oneOf(String... names) {
    return Map.of("oneOf", each(names));
  }

  private static Map<String, Object> anyOf(String... names) {
    return Map.of("anyOf", each(names));
  }

  private static List<Map<String, Object>> each(String... names) {
    return Stream.of(names).map(name -> required(name)).toList();
  }

  private static Map<String, Object> properties(String name, Map<String, Object> schema) {
    return Map.of("properties", Map.of(name, schema));
  }

  private static Map<String, Object> notEmpty(String list) {
    Map<String, Object> filled = new LinkedHashMap<>(required(list));
    filled.put("properties", Map.of(list, Map.of("minItems", BigDecimal.ONE)));
    return filled;
  }
}
