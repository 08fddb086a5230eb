package lampwright.engine.json;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Each block of rejections.txt puts one fault into base.lampwright.json and names the problems, to
 * the letter, that reading it must give.
 */
class ReadRejectionTest {
  /** One fault. */
  record Case(String replace, String by, List<String> problems) {
    @Override
    public String toString() {
      return replace + " -> " + by;
    }

    private static Case parse(String block) {
      List<String> lines = block.lines().toList();
      return new Case(
          lines.get(0).substring("replace: ".length()),
          lines.get(1).substring("by: ".length()),
          lines.subList(2, lines.size()));
    }
  }

  static Stream<Case> cases() throws IOException {
    return Arrays.stream(resource("rejections.txt").split("\n\n")).map(Case::parse);
  }

  static String resource(String name) throws IOException {
    try (InputStream in = ReadRejectionTest.class.getResourceAsStream("/project/" + name)) {
      return new String(in.readAllBytes(), UTF_8);
    }
  }

  @Test
  void baseHasNoProblem() throws IOException {
    ReadResult read = ProjectReader.read("base", resource("base.lampwright.json").getBytes(UTF_8));

    assertThat(read.problems()).isEmpty();
    assertThat(read.project()).isPresent();
  }

  @ParameterizedTest
  @MethodSource("cases")
  void faultIsReportedWithPlaceAndRemedy(Case fault) throws IOException {
    assertThat(problems(fault)).isEqualTo(fault.problems());
  }

  @Test
  void messagesAreTheSameInTurkishAndGerman() throws IOException {
    Locale before = Locale.getDefault();
    try {
      for (String tag : List.of("tr-TR", "de-DE")) {
        Locale.setDefault(Locale.forLanguageTag(tag));
        for (Case fault : cases().toList()) {
          assertThat(problems(fault)).as(tag).isEqualTo(fault.problems());
        }
      }
    } finally {
      Locale.setDefault(before);
    }
  }

  /** The base file with this fault in it. */
  static String broken(Case fault) throws IOException {
    String base = resource("base.lampwright.json");
    assertThat(base).contains(fault.replace());
    int at = base.indexOf(fault.replace());
    return base.substring(0, at) + fault.by() + base.substring(at + fault.replace().length());
  }

  private static List<String> problems(Case fault) throws IOException {
    ReadResult read = ProjectReader.read("broken", broken(fault).getBytes(UTF_8));

    assertThat(read.project()).isEmpty();
    return read.problems().stream().map(p -> "error: " + p.text()).toList();
  }
}
