package lampwright.app.workshop.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The words of the window and of its guide are those of the trade. What a reader once stumbled over
 * is listed here, phrase by phrase and pattern by pattern, so that it does not come back.
 */
class WordsTest {
  /** Texts that had another wording, in lower case. */
  private static final List<String> PHRASES =
      List.of(
          "hold to that current",
          "only tell",
          "by one factor",
          "each frame by itself",
          "all drives times",
          "takes to light up",
          "takes to go dark",
          "again and again",
          "full pace",
          "half pace",
          "parts of a byte",
          "carried to the next frame",
          "meets light below",
          "the brighter wins",
          "lamps see it",
          "joined as one row",
          "holds, then jumps",
          "by a curve",
          "takes the common part",
          "drive the emitters by their codes",
          "matched by colour",
          "may be off by",
          "draws when dark",
          "lit for",
          "dark for",
          "gap after the group",
          "lit share",
          "once round in",
          "fills over",
          "holds for",
          "whether it is stated",
          "wire by gauge",
          "wire by area",
          "fed at one end",
          "share that is used",
          "power's gamma",
          "from level to light",
          "white tint",
          "hazard lamp",
          "look closer",
          "further away",
          "cut out",
          "last files",
          "lets go",
          "beats a minute",
          "share out",
          "wished",
          "by this lamp",
          "a lamp a pixel",
          "go on without saving",
          "know before you use it",
          "beware",
          "can't be written like this",
          "bare bytes",
          "nothing passes a limit",
          "looks odd");

  /** Clauses and stubs that were labels; within a sentence they are English. */
  private static final List<String> LABELS =
      List.of(
          "pixels are",
          "how many",
          "it gives at most",
          "it gives",
          "starts at",
          "lasts",
          "drawn from",
          "goes on",
          "light x {0}",
          "it stays",
          "covers it",
          "each alone",
          "begins again at its end",
          "from above",
          "stated",
          "show");

  /** What is wrong wherever it is written, with what the trade writes. */
  private static final Map<Pattern, String> PATTERNS =
      Map.ofEntries(
          pattern("chosen|choose|chooses", "selected, select"),
          pattern("an? (second|minute|millisecond|frame|byte|pixel|row|column) ?([.,)]|$)", "per"),
          pattern("(times|flashes|turns|frames|bytes|\\}) an? (second|minute|frame|byte)", "per"),
          pattern("stands?|standing", "is, must be, rated"),
          pattern("bears?|bearing", "is rated for"),
          pattern("hangs?|hanging", "is connected to"),
          pattern("tells?|says?", "reports, lists"),
          pattern("stated|states", "set, specified"),
          pattern("pace", "speed"),
          pattern("shares?", "percentage"),
          pattern("hardly|gravest|worth knowing", "plain words"),
          pattern("slips?", "tab"),
          pattern("cue sheets?", "cue settings"),
          pattern("look (at|closer|later)", "zoom, decide"),
          pattern("from memory", "a source"),
          pattern("safe|safely", "the figure and its limit"),
          pattern("can't|won't|isn't|doesn't", "cannot, will not"),
          pattern("one's own", "custom"),
          pattern("(passes|exceeds) a limit", "is over the limit"));

  // A space parts number and unit (SI Brochure, 9th edition, 5.4.3; from memory); no line breaks
  // there.
  private static final Pattern LOOSE_UNIT =
      Pattern.compile(
          "(\\d|\\}) (ms|s|us|ns|Hz|MHz|V|mA|A|mAh|mm|mcd|K|KiB|MiB|%|lm|frames/s|flashes/min)(?![\\w'])");

  private static Map.Entry<Pattern, String> pattern(String regex, String better) {
    return Map.entry(
        Pattern.compile("\\b(?:" + regex + ")(?!\\w)", Pattern.CASE_INSENSITIVE), better);
  }

  static Stream<Path> bundles() throws IOException {
    List<Path> found = new ArrayList<>();
    for (String module : List.of("../app", "../engine", "../exporters")) {
      Path resources = Path.of(module, "src/main/resources");
      if (Files.isDirectory(resources)) {
        try (Stream<Path> files = Files.walk(resources)) {
          files.filter(WordsTest::isOfTheWindow).forEach(found::add);
        }
      }
    }
    return found.stream().sorted();
  }

  // The words of fields are read in documents, not in the window.
  private static boolean isOfTheWindow(Path file) {
    return file.toString().endsWith(".properties") && !file.endsWith("document/fields.properties");
  }

  @Test
  void thereAreBundles() throws IOException {
    assertThat(bundles()).hasSizeGreaterThan(10);
  }

  @ParameterizedTest
  @MethodSource("bundles")
  void textsAreInTheWordsOfTheTrade(Path bundle) throws IOException {
    Properties texts = load(bundle);
    List<String> found = new ArrayList<>();
    texts.forEach((key, value) -> found.addAll(faults(key + ": ", (String) value)));
    assertThat(found).as("%s", bundle).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("bundles")
  void unitsStayWithTheirNumbers(Path bundle) throws IOException {
    Properties texts = load(bundle);
    texts.forEach(
        (key, value) ->
            assertThat(LOOSE_UNIT.matcher((String) value).find())
                .as("%s %s: %s", bundle, key, value)
                .isFalse());
  }

  /** A label is a noun: it ends without a full stop, and it is not long. */
  @Test
  void labelsOfSettingsAreShort() throws IOException {
    load(Path.of("src/main/resources/lampwright/app/workshop/settings.properties"))
        .forEach(
            (key, value) -> {
              if (!((String) key).matches(".*(hint|accessible|spaces|more|numbers|range.*)")) {
                assertThat((String) value).as("%s", key).hasSizeLessThan(40).doesNotContain(".");
              }
            });
  }

  @Test
  void theGuideUsesTheWordsOfTheWindow() throws IOException {
    List<String> found = new ArrayList<>();
    for (String line : Files.readAllLines(Path.of("../docs/workshop.md"))) {
      found.addAll(faults("", line));
    }
    assertThat(found).isEmpty();
  }

  @Test
  void whatWasWrongIsFound() {
    assertThat(faults("", "Choose all cues of the chosen lamps")).isNotEmpty();
    assertThat(faults("", "Repeats every {0} s, {1} times a minute.")).isNotEmpty();
    assertThat(faults("", "how it is stated")).isNotEmpty();
    assertThat(faults("", "duty cycle")).isEmpty();
    assertThat(LOOSE_UNIT.matcher("{0} of {1} A").find()).isTrue();
    assertThat(LOOSE_UNIT.matcher("{0} of {1}\u00a0A").find()).isFalse();
  }

  private static List<String> faults(String where, String text) {
    String lower = text.toLowerCase(Locale.ROOT);
    List<String> found = new ArrayList<>();
    if (LABELS.contains(lower.strip())) {
      found.add(where + "a label that is no noun: " + text);
    }
    for (String phrase : PHRASES) {
      if (lower.contains(phrase)) {
        found.add(where + "\"" + phrase + "\" in: " + text);
      }
    }
    for (Map.Entry<Pattern, String> pattern : PATTERNS.entrySet()) {
      if (pattern.getKey().matcher(text).find()) {
        found.add(where + pattern.getKey() + " (better: " + pattern.getValue() + ") in: " + text);
      }
    }
    return found;
  }

  private static Properties load(Path bundle) throws IOException {
    Properties texts = new Properties();
    try (var in = Files.newBufferedReader(bundle, StandardCharsets.UTF_8)) {
      texts.load(in);
    }
    return texts;
  }
}
