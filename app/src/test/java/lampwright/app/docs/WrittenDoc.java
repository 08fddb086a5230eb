package lampwright.app.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A part of a document in docs/ that is made from the program, between two marks. With the system
 * property {@code lampwright.writeDocs} the document is written anew; without, it is compared.
 */
final class WrittenDoc {
  private static final String BEGIN = "<!-- made from the program: begin -->\n";
  private static final String END = "<!-- made from the program: end -->\n";

  private WrittenDoc() {}

  static void check(String name, String made) throws IOException {
    Path file = Path.of("..", "docs", name);
    String text = Files.readString(file);
    int begin = text.indexOf(BEGIN) + BEGIN.length();
    int end = text.indexOf(END);
    assertThat(begin).isGreaterThanOrEqualTo(BEGIN.length()).isLessThanOrEqualTo(end);
    if (Boolean.getBoolean("lampwright.writeDocs")) {
      Files.writeString(file, text.substring(0, begin) + made + text.substring(end));
      return;
    }
    assertThat(text.substring(begin, end))
        .as("docs/%s: write it anew with -Dlampwright.writeDocs=true", name)
        .isEqualTo(made);
  }
}
