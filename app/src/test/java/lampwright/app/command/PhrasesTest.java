package lampwright.app.command;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Words that builders and engineers stumbled over do not come back: in help, documents, the schema,
 * findings, exported texts and Javadoc. The window's texts have a test of their own.
 */
class PhrasesTest {
  private static final Path ROOT = Path.of("..");

  /** A phrase and what the trade says. */
  private record Phrase(Pattern pattern, String better) {
    static Phrase of(String regex, String better) {
      return new Phrase(Pattern.compile(regex, Pattern.CASE_INSENSITIVE), better);
    }
  }

  /** Wherever somebody reads, Javadoc included. */
  private static final List<Phrase> EVERYWHERE =
      List.of(
          Phrase.of("\\(from memory\\)", "a source, with clause and revision"),
          Phrase.of("\\bhardly\\b", "barely, probably not"),
          Phrase.of("\\bchosen\\b", "selected"),
          Phrase.of("\\bbears?\\b", "is rated for"),
          Phrase.of("\\bhangs?\\b", "is connected to"),
          Phrase.of("\\bstands\\b", "is"),
          Phrase.of("\\blights? of navigation\\b", "aids to navigation"),
          Phrase.of("\\bin one another\\b", "nested"),
          Phrase.of("\\bparted by\\b", "separated by"),
          Phrase.of("\\bmade if it is not there\\b", "created if missing"),
          Phrase.of(
              "\\b(?<!-)(\\d+|bytes|cycles|flashes|frames|turns|times|drives|mA|ms|us|rate|one) a"
                  + " (second|minute|frame|byte|pixel|package|column|row|line|run|chain)\\b",
              "per"));

  /** What users read, besides. */
  private static final List<Phrase> FOR_USERS =
      List.of(
          Phrase.of("\\bpasses a limit\\b", "exceeds a limit"),
          Phrase.of("\\bV at most\\b", "V maximum"),
          Phrase.of("\\bpixels? stand\\b", "are rated for"),
          Phrase.of("\\bget too little\\b", "are under-voltage"),
          Phrase.of("\\b(is fed|is driven with) [{\\d]", "supply is, data level is"),
          Phrase.of("\\ball in turn\\b", "one after another"),
          Phrase.of("(?<!that something )\\b(is|are) safe\\b", "the figure and its limit"),
          Phrase.of("\\b(hardly|difference) to be seen\\b|is to be seen", "visible"),
          Phrase.of("\\bneeds text\\b|: needs \\d", "must be"),
          Phrase.of("\\bsays every\\b", "lists every"),
          Phrase.of("\\bwritten beside\\b", "written to a temporary folder"),
          Phrase.of("\\bthe seam\\b", "the wrap-around"),
          Phrase.of("\\bcould not read or write\\b", "I/O error"),
          Phrase.of("\\bwhat hangs where\\b", "pin assignment"),
          Phrase.of("\\b(stick's way|of the stick)\\b", "of full stick travel"),
          Phrase.of("\\bgive up after\\b", "latch after"),
          Phrase.of("\\bthe first follows again\\b", "loops"),
          Phrase.of("\\bwave swings\\b", "reverses direction"),
          Phrase.of("\\bfed before the first\\b", "power injected at"),
          Phrase.of("\\bbattery: feeds\\b", "no fuse is set"),
          Phrase.of("\\bis the bench where\\b", "is a tool for"),
          Phrase.of("\\bof yours\\b", "your own"),
          Phrase.of("\\bagain and again\\b", "in a loop"),
          Phrase.of("\\bparts of a byte\\b", "rounding"),
          Phrase.of("\\bshut up in\\b", "enclosed"),
          Phrase.of("\\bgive or take\\b", "plus or minus"));

  /** What may stay, and why. */
  private static final Map<String, String> ALLOWED =
      Map.of(
          "docs/performance.md", "its tables are printed by the tools that measure",
          "docs/packed.md", "the bytes of a format that is published are told as they were");

  @Test
  void helpSaysWhatTheTradeSays() {
    Map<String, String> texts = new TreeMap<>();
    texts.put("help", Run.of("--help").out());
    for (String command :
        List.of(
            "open",
            "check",
            "measure",
            "export",
            "prove",
            "rehearse",
            "live",
            "picture",
            "sheet",
            "explain",
            "pixels")) {
      texts.put("help of " + command, Run.of(command, "--help").out());
    }
    assertThat(texts.values()).allMatch(text -> text.contains("Usage: lampwright"));
    assertThat(found(texts, true)).isEmpty();
  }

  @Test
  void documentsSayWhatTheTradeSays() throws IOException {
    Map<String, String> texts = new TreeMap<>();
    try (Stream<Path> docs = Files.list(ROOT.resolve("docs"))) {
      docs.filter(file -> file.toString().matches(".*\\.(md|json)"))
          .filter(file -> !file.endsWith("workshop.md"))
          .forEach(file -> texts.put("docs/" + file.getFileName(), read(file)));
    }
    for (String name : List.of("README.md", "DEVELOPERS.md")) {
      texts.put(name, read(ROOT.resolve(name)));
    }
    assertThat(texts).hasSizeGreaterThan(7);
    texts.keySet().removeAll(ALLOWED.keySet());
    assertThat(found(texts, true)).isEmpty();
  }

  @Test
  void exportedTextsAndFieldsSayWhatTheTradeSays() throws IOException {
    Map<String, String> texts = new TreeMap<>();
    for (String module : List.of("engine", "exporters")) {
      for (Path file : files(ROOT.resolve(module).resolve("src/main/resources"))) {
        if (!file.toString().matches(".*(\\.S|\\.bin|prover\\.c|cie-1931.*)")) {
          texts.put(file.toString(), read(file));
        }
      }
    }
    assertThat(texts).hasSizeGreaterThan(30);
    assertThat(found(texts, true)).isEmpty();
  }

  @Test
  void messagesSayWhatTheTradeSays() throws IOException {
    assertThat(found(sources("\"(?:[^\"\\\\\\n]|\\\\.)*\""), true)).isEmpty();
  }

  @Test
  void javadocSaysWhatTheTradeSays() throws IOException {
    assertThat(found(sources("/\\*\\*.*?\\*/"), false)).isEmpty();
  }

  @Test
  void aPhraseIsFound() {
    assertThat(found(Map.of("x", "90 flashes a minute\nthe chosen lamp"), false))
        .containsExactly("x: \"chosen\": selected", "x: \"flashes a minute\": per");
  }

  /** What matches in the sources of all modules; the window has a test of its own. */
  private static Map<String, String> sources(String regex) throws IOException {
    Pattern part = Pattern.compile(regex, Pattern.DOTALL);
    Map<String, String> texts = new TreeMap<>();
    for (String module : List.of("engine", "exporters", "app")) {
      for (Path file : files(ROOT.resolve(module).resolve("src/main/java"))) {
        String name = file.toString().replace('\\', '/');
        if (name.endsWith(".java") && !name.contains("/app/workshop/")) {
          StringBuilder text = new StringBuilder();
          part.matcher(read(file))
              .results()
              .map(MatchResult::group)
              .forEach(m -> text.append(m).append('\n'));
          texts.put(name, text.toString());
        }
      }
    }
    assertThat(texts).hasSizeGreaterThan(200);
    return texts;
  }

  private static List<String> found(Map<String, String> texts, boolean forUsers) {
    List<Phrase> phrases = new ArrayList<>(EVERYWHERE);
    if (forUsers) {
      phrases.addAll(FOR_USERS);
    }
    List<String> found = new ArrayList<>();
    texts.forEach(
        (name, text) -> {
          String oneLine = text.replaceAll("\\s*\\n\\s*\\*?\\s*", " ");
          for (Phrase phrase : phrases) {
            phrase
                .pattern()
                .matcher(oneLine)
                .results()
                .forEach(m -> found.add(name + ": \"" + m.group() + "\": " + phrase.better()));
          }
        });
    return found;
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.filter(Files::isRegularFile).sorted().toList();
    }
  }

  private static String read(Path file) {
    try {
      return Files.readString(file, UTF_8);
    } catch (IOException failed) {
      throw new UncheckedIOException(failed);
    }
  }
}
