package lampwright.engine.json;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lampwright.engine.document.Project;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.Patterns;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** docs/project.schema.json agrees with the reader, as a general-purpose validator judges it. */
class ProjectSchemaTest {
  private static final String SCHEMA_TEXT = schemaText();
  private static final Schema SCHEMA =
      SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
          .getSchema(SCHEMA_TEXT, InputFormat.JSON);

  /** What a schema can't tell: each is part of a message of the reader. */
  private static final List<String> BEYOND_A_SCHEMA =
      List.of(
          "must differ from the ids of built-in",
          "must be unique",
          "past the end of chain",
          "already",
          "duplicate field",
          "must be the id of",
          "must be a built-in pixel type or one of",
          "x + y must be at most 1",
          "must be the minimum first",
          "must be the lesser width first",
          "minVolts, which is",
          "frames",
          "a period of 0 ms",
          "the time of the keyframe before",
          "must be a light character",
          "must end with its period",
          "must have the letters of the pixel type's order",
          "must be used with a pixel type that has a white emitter",
          "decimals",
          "further from 0",
          // Not JSON for other readers, or not numbers that they hold.
          "NaN",
          "Infinity",
          "1e");

  private static String schemaText() {
    try {
      return Files.readString(Path.of("..", "docs", "project.schema.json"));
    } catch (IOException missing) {
      throw new UncheckedIOException(missing);
    }
  }

  private static boolean valid(String json) {
    try {
      return SCHEMA.validate(json, InputFormat.JSON).isEmpty();
    } catch (JacksonException notJson) {
      return false;
    }
  }

  static Stream<ReadRejectionTest.Case> casesOfASchema() throws IOException {
    return ReadRejectionTest.cases()
        .filter(c -> c.problems().stream().noneMatch(ProjectSchemaTest::beyondASchema));
  }

  private static boolean beyondASchema(String problem) {
    return BEYOND_A_SCHEMA.stream().anyMatch(problem::contains);
  }

  @Provide
  Arbitrary<Project> projects() {
    return ProjectArbitraries.projects();
  }

  @ParameterizedTest
  @ValueSource(strings = {"base.lampwright.json", "formatted.lampwright.json"})
  void sampleFilesAreValid(String name) throws IOException {
    assertThat(SCHEMA.validate(ReadRejectionTest.resource(name), InputFormat.JSON)).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("casesOfASchema")
  void whatTheReaderRefusesTheSchemaRefuses(ReadRejectionTest.Case fault) throws IOException {
    assertThat(valid(ReadRejectionTest.broken(fault))).isFalse();
  }

  @Test
  void mostRejectionsAreWithinASchema() throws IOException {
    assertThat(casesOfASchema().count()).isGreaterThan(100);
  }

  @Property(tries = 60, seed = "7")
  void writtenProjectsAreValid(@ForAll("projects") Project project) {
    String json = ProjectWriter.write(project);

    // Half of a surrogate pair is text to us and none to the validator's parser.
    Assume.that(!json.contains("\\ud83d\""));
    assertThat(SCHEMA.validate(json, InputFormat.JSON)).isEmpty();
  }

  @Property(tries = 150, seed = "8")
  void whatTheReaderAcceptsTheSchemaAccepts(@ForAll Random random) throws IOException {
    String base = ReadRejectionTest.resource("formatted.lampwright.json");
    String mutated = MutatedFileTest.swapTokens(base, random);

    ReadResult read = ProjectReader.read("p", mutated.getBytes(UTF_8));

    if (read.project().isPresent()) {
      assertThat(SCHEMA.validate(mutated, InputFormat.JSON)).as(mutated).isEmpty();
    } else if (read.problems().stream().noneMatch(p -> beyondASchema(p.text()))) {
      assertThat(valid(mutated)).as(read.lines().toString()).isFalse();
    }
  }

  @Test
  void kindsOfPatternAreThoseOfTheReader() {
    JsonNode kinds = JsonMapper.shared().readTree(SCHEMA_TEXT).at("/$defs/pattern/oneOf");
    Set<String> names =
        kinds
            .valueStream()
            .map(each -> each.get("$ref").asString().replace("#/$defs/pattern-", ""))
            .collect(Collectors.toSet());

    assertThat(names).containsExactlyInAnyOrderElementsOf(Patterns.kinds());
  }

  @Test
  void aFileWithEveryDefaultOfTheSchemaIsReadLikeOneWithout() {
    // The schema's defaults, written out by hand from it, must be the reader's.
    String bare =
        """
        {"lampwright": 1, "rig": {"outputs": [{"id": "o"}],
         "chains": [{"id": "c", "pixelType": "ws2812b", "pixels": 2}],
         "lamps": [{"id": "l", "output": "o"}, {"id": "m", "pixels": [{"chain": "c"}]}]},
         "scenes": [{"id": "s", "lengthMs": 1000, "tracks": [{"lamps": ["l"],
           "cues": [{"lengthMs": 1000, "pattern": {"kind": "steady"}}]}]}]}
        """;
    JsonMapper mapper = JsonMapper.shared();
    JsonNode schema = mapper.readTree(SCHEMA_TEXT);
    JsonNode root = mapper.readTree(bare);
    fill(schema, schema, root);

    Project filled =
        ProjectReader.read("f", root.toString().getBytes(UTF_8)).project().orElseThrow();

    assertThat(root.toString()).contains("\"forwardVolts\":2.1").contains("\"dither\":\"off\"");
    assertThat(ProjectReader.read("b", bare.getBytes(UTF_8)).project()).contains(filled);
  }

  @ParameterizedTest
  @MethodSource("kinds")
  void defaultsOfEachPatternAreTheReaders(String kind) {
    JsonMapper mapper = JsonMapper.shared();
    JsonNode schema = mapper.readTree(SCHEMA_TEXT);
    String frames = kind.equals("keyframes") ? ", \"frames\": [{\"atMs\": 0}]" : "";
    JsonNode bare = mapper.readTree("{\"kind\": \"" + kind + "\"" + frames + "}");
    JsonNode filled = bare.deepCopy();
    fill(schema, schema.at("/$defs").get("pattern-" + kind), filled);

    assertThat(pattern(filled)).isEqualTo(pattern(bare));
    assertThat(filled.has("level")).isTrue();
  }

  static List<String> kinds() {
    return Patterns.kinds();
  }

  private static Pattern pattern(JsonNode json) {
    Problems problems = new Problems();
    Json parsed = JsonTree.parse(json.toString().getBytes(UTF_8), problems).orElseThrow();
    Pattern pattern =
        new ShapeReader()
            .value(Patterns.ANY, new Located(parsed, Where.ROOT, problems))
            .orElseThrow();
    assertThat(problems.listed()).isEmpty();
    return pattern;
  }

  // Puts in each default of the schema's plain properties that the value lacks.
  private static void fill(JsonNode root, JsonNode schema, JsonNode value) {
    JsonNode own = resolve(root, schema);
    if (value.isArray()) {
      value.forEach(item -> fill(root, own.get("items"), item));
    } else if (value.isObject() && own.has("properties")) {
      for (var property : own.get("properties").properties()) {
        JsonNode of = resolve(root, property.getValue());
        JsonNode usual =
            property.getValue().has("default")
                ? property.getValue().get("default")
                : of.get("default");
        if (value.has(property.getKey())) {
          fill(root, of, value.get(property.getKey()));
        } else if (usual != null) {
          ((ObjectNode) value).set(property.getKey(), usual);
        }
      }
    }
  }

  private static JsonNode resolve(JsonNode root, JsonNode schema) {
    return schema.has("$ref") ? root.at(schema.get("$ref").asString().substring(1)) : schema;
  }
}
