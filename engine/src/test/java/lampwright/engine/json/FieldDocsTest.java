package lampwright.engine.json;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * The schema and the tables of docs are those that the fields give. To write them anew: {@code mvn
 * -o test -pl engine -Dtest=FieldDocsTest -Dlampwright.writeDocs=true}.
 */
class FieldDocsTest {
  private static final boolean WRITE = Boolean.getBoolean("lampwright.writeDocs");
  private static final Path DOCS = Path.of("..", "docs");

  @Test
  void publishedSchemaIsThatOfTheFields() throws IOException {
    holds(DOCS.resolve("project.schema.json"), ProjectSchema.text());
  }

  @Test
  void tablesOfFieldsAreThoseOfTheFields() throws IOException {
    Path file = DOCS.resolve("formats.md");
    String text = Files.readString(file);
    for (Map.Entry<String, String> table : FieldTables.all().entrySet()) {
      Matcher place =
          Pattern.compile(
                  "(<!-- fields: " + table.getKey() + " -->\n).*?(<!-- end -->)", Pattern.DOTALL)
              .matcher(text);
      assertThat(place.find()).as("a place for the fields of " + table.getKey()).isTrue();
      text = place.replaceFirst("$1" + Matcher.quoteReplacement(table.getValue()) + "$2");
    }
    holds(file, text);
  }

  private static void holds(Path file, String expected) throws IOException {
    if (WRITE) {
      Files.writeString(file, expected);
    }
    assertThat(Files.readString(file)).isEqualTo(expected);
  }
}
