package lampwright.engine.json;

import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import lampwright.engine.check.Checks;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.StreamReadConstraints;
import tools.jackson.core.TokenStreamFactory;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.core.exc.StreamConstraintsException;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.core.json.JsonReadFeature;

/** Reads bytes into located values, within bounds that no file can pass. */
final class JsonTree {
  static final int MAX_DEPTH = 64;
  static final int MAX_VALUES = 1_000_000;

  /** The longest text, name or number, in characters. */
  static final int MAX_TEXT = 65_536;

  private static final int POOLED_NAMES = 512;

  // Numbers that are none (NaN) are let through, to be reported as the value of their field.
  // The table of names would give up on a file made to fill it badly.
  private static final JsonFactory FACTORY =
      JsonFactory.builder()
          .enable(JsonReadFeature.ALLOW_NON_NUMERIC_NUMBERS)
          .disable(TokenStreamFactory.Feature.CANONICALIZE_PROPERTY_NAMES)
          .streamReadConstraints(
              StreamReadConstraints.builder()
                  .maxStringLength(MAX_TEXT)
                  .maxNameLength(MAX_TEXT)
                  .maxNumberLength(MAX_TEXT)
                  .maxNestingDepth(2 * MAX_DEPTH)
                  .build())
          .build();

  private final Problems problems;
  private final Deque<OpenJson> open = new ArrayDeque<>();
  private final Map<String, String> names = new HashMap<>();
  private @Nullable Json root;
  private int values;

  private JsonTree(Problems problems) {
    this.problems = problems;
  }

  /** The value that the bytes hold; empty if they hold none, which is then among the problems. */
  static Optional<Json> parse(byte[] bytes, Problems problems) {
    if (!Utf8.check(bytes, problems)) {
      return Optional.empty();
    }
    JsonTree tree = new JsonTree(problems);
    try (JsonParser parser = FACTORY.createParser(ObjectReadContext.empty(), reader(bytes))) {
      return tree.read(parser);
    } catch (JacksonException refused) {
      syntax(bytes).report(problems);
    }
    return Optional.empty();
  }

  private static Reader reader(byte[] bytes) {
    int skip = Utf8.markLength(bytes);
    return new InputStreamReader(
        new ByteArrayInputStream(bytes, skip, bytes.length - skip), StandardCharsets.UTF_8);
  }

  private static SyntaxFault syntax(byte[] bytes) {
    try (Reader text = new BufferedReader(reader(bytes))) {
      return SyntaxCheck.first(text)
          .orElseGet(() -> new SyntaxFault(1, 1, "not JSON", "must be as RFC 8259 says", ""));
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }

  private Optional<Json> read(JsonParser parser) {
    try {
      return tree(parser);
    } catch (StreamConstraintsException tooLong) {
      TokenStreamLocation at = parser.currentTokenLocation();
      problems.error(
          Where.ROOT,
          Math.max(1, at.getLineNr()),
          Math.max(1, at.getColumnNr()),
          "a string or number too long",
          "must have at most " + Checks.limit(MAX_TEXT) + " characters");
      return Optional.empty();
    }
  }

  private Optional<Json> tree(JsonParser parser) {
    for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
      TokenStreamLocation at = parser.currentTokenLocation();
      if (root != null) {
        SyntaxCheck.more(at.getLineNr(), at.getColumnNr()).report(problems);
        return Optional.empty();
      }
      if (!take(token, parser, at.getLineNr(), at.getColumnNr())) {
        return Optional.empty();
      }
    }
    if (root == null) {
      problems.error(Where.ROOT, 1, 1, "an empty file", "must be a JSON object");
    }
    return Optional.ofNullable(root);
  }

  private boolean take(JsonToken token, JsonParser parser, int line, int column) {
    switch (token) {
      case PROPERTY_NAME -> open.element().name(pooled(parser.currentName()), line, column);
      case END_OBJECT, END_ARRAY -> add(open.pop().closed());
      case START_OBJECT, START_ARRAY -> {
        open.push(new OpenJson(token == JsonToken.START_OBJECT, line, column, path(), problems));
        values++;
      }
      case VALUE_STRING -> leaf(new Json.Text(line, column, parser.getString()));
      case VALUE_TRUE, VALUE_FALSE ->
          leaf(new Json.Flag(line, column, token == JsonToken.VALUE_TRUE));
      case VALUE_NULL -> leaf(new Json.Null(line, column));
      default -> leaf(new Json.Num(line, column, parser.getString()));
    }
    if (open.size() > MAX_DEPTH) {
      problems.error(
          Where.ROOT,
          line,
          column,
          "nested " + open.size() + " deep",
          "must be nested at most " + MAX_DEPTH + " deep");
      return false;
    }
    if (values > MAX_VALUES) {
      problems.error(
          Where.ROOT,
          line,
          column,
          "more than " + Checks.limit(MAX_VALUES) + " values",
          "must be at most " + Checks.limit(MAX_VALUES));
      return false;
    }
    return true;
  }

  private void leaf(Json value) {
    values++;
    add(value);
  }

  private void add(Json value) {
    if (open.isEmpty()) {
      root = value;
    } else {
      open.element().add(value);
    }
  }

  private Where path() {
    return open.isEmpty() ? Where.ROOT : open.element().next();
  }

  // The names of fields are few and come often.
  private String pooled(String name) {
    String known = names.get(name);
    if (known != null) {
      return known;
    }
    if (names.size() < POOLED_NAMES) {
      names.put(name, name);
    }
    return name;
  }
}
