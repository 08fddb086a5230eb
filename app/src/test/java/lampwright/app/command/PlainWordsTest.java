package lampwright.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A plain command line does what the library that reads all others makes of it. */
class PlainWordsTest {
  private static final Path FILE = Path.of("..", "samples", "bench-rgbw.lampwright.json");

  private static final List<String> WORDS =
      List.of(
          FILE.toString(),
          "none.json",
          "--json",
          "--strict",
          "--jso",
          "--help",
          "--",
          "@none",
          "",
          "'" + FILE + "'",
          "--scene=walk",
          "-x");

  /** Every line of up to two words, and all of three that have the file and a flag. */
  static List<List<String>> lines() {
    List<List<String>> lines = new ArrayList<>(List.of(List.of()));
    for (String one : WORDS) {
      lines.add(List.of(one));
      for (String two : WORDS) {
        lines.add(List.of(one, two));
      }
      lines.add(List.of("--json", one, "--strict"));
      lines.add(List.of(FILE.toString(), "--json", one));
    }
    return lines;
  }

  private static Run run(boolean plainly, List<String> words) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    Terminal terminal = new Terminal(new PrintWriter(out), new PrintWriter(err), false);
    CommandLineProgram program =
        plainly ? CommandLineProgram.on(terminal) : CommandLineProgram.withoutPlainWords(terminal);
    int code = program.run(words.toArray(String[]::new));
    return new Run(code, out.toString(), err.toString());
  }

  @ParameterizedTest
  @MethodSource("lines")
  void plainLineDoesWhatTheLibraryMakesOfIt(List<String> line) {
    for (String command : List.of("check", "measure")) {
      List<String> words = new ArrayList<>(List.of(command));
      words.addAll(line);
      assertThat(run(true, words)).isEqualTo(run(false, words));
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"p.json", "p.json --json", "--json p.json", "a-b.json"})
  void fileAndFlagsArePlain(String line) {
    assertThat(PlainWords.of(("check " + line).split(" "), Set.of("--json"))).isPresent();
  }
}
