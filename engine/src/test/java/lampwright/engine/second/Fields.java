package lampwright.engine.second;

import java.util.Optional;
import tools.jackson.databind.JsonNode;

/** Fields of a JSON object, with the defaults of docs/formats.md. */
final class Fields {
  private Fields() {}

  static double number(JsonNode object, String name, double otherwise) {
    return object.has(name) ? object.get(name).doubleValue() : otherwise;
  }

  static int whole(JsonNode object, String name, int otherwise) {
    return object.has(name) ? object.get(name).decimalValue().intValueExact() : otherwise;
  }

  static String text(JsonNode object, String name, String otherwise) {
    return object.path(name).asString(otherwise);
  }

  static boolean flag(JsonNode object, String name, boolean otherwise) {
    return object.path(name).asBoolean(otherwise);
  }

  static Optional<JsonNode> child(JsonNode object, String name) {
    return Optional.ofNullable(object.get(name));
  }
}
