package lampwright.app.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.pattern.Patterns;
import lampwright.engine.scene.Cue;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Links of all pages lead somewhere, and the page of patterns has all of them as they are. */
class PagesTest {
  private static final Path ROOT = Path.of("..");
  private static final Path DOCS = ROOT.resolve("docs");
  private static final Path PATTERNS = DOCS.resolve("guide/patterns.lampwright.json");
  private static final Pattern LINK = Pattern.compile("\\]\\(([^)\\s]+)\\)");
  private static final Pattern HEADING = Pattern.compile("(?m)^#+ (.+)$");
  private static final Pattern JSON = Pattern.compile("(?s)```json\\n(.*?)\\n```");

  @TempDir private Path folder;

  private static List<Path> pages() throws IOException {
    try (Stream<Path> files = Files.walk(DOCS)) {
      List<Path> pages =
          new ArrayList<>(files.filter(file -> file.toString().endsWith(".md")).sorted().toList());
      pages.add(ROOT.resolve("README.md"));
      pages.add(ROOT.resolve("DEVELOPERS.md"));
      return pages;
    }
  }

  /** Headings as links name them: lower case, words joined by hyphens, nothing else. */
  private static Set<String> headings(Path page) throws IOException {
    Set<String> headings = new TreeSet<>();
    HEADING
        .matcher(Files.readString(page))
        .results()
        .map(
            heading ->
                heading
                    .group(1)
                    .toLowerCase(Locale.ROOT)
                    .replaceAll("[^a-z0-9 _-]", "")
                    .replace(' ', '-'))
        .forEach(headings::add);
    return headings;
  }

  @Test
  void everyLinkLeadsToAFileAndAHeadingOfIt() throws IOException {
    List<String> dead = new ArrayList<>();
    int links = 0;
    for (Path page : pages()) {
      for (MatchResult link : LINK.matcher(Files.readString(page)).results().toList()) {
        String target = link.group(1);
        if (target.startsWith("https://")) {
          continue;
        }
        links++;
        String[] parts = target.split("#", 2);
        Path file = parts[0].isEmpty() ? page : page.resolveSibling(parts[0]);
        if (!Files.exists(file) || (parts.length == 2 && !headings(file).contains(parts[1]))) {
          dead.add(page + ": " + target);
        }
      }
    }
    assertThat(links).isGreaterThan(50);
    assertThat(dead).isEmpty();
  }

  @Test
  void pageOfPatternsHasEveryPatternWithItsStrip() throws IOException {
    String page = Files.readString(DOCS.resolve("guide/patterns.md"));
    List<String> shown = new ArrayList<>();
    Project project = ProjectReader.read(PATTERNS).project().orElseThrow();
    for (var scene : project.scenes()) {
      Cue cue = scene.tracks().get(0).cues().get(0);
      shown.add(cue.pattern().kind());
      assertThat(page).contains("(../pictures/pattern-" + scene.id() + ".png)");
      assertThat(scene.id()).isEqualTo(cue.pattern().kind());
    }
    assertThat(shown).containsExactlyInAnyOrderElementsOf(Patterns.kinds());
  }

  /** The JSON of the page is that of the project from which the strips are made. */
  @Test
  void jsonOfThePatternsIsThatOfTheStrips() throws IOException {
    String page = Files.readString(DOCS.resolve("guide/patterns.md"));
    List<String> json = JSON.matcher(page).results().map(block -> block.group(1)).toList();
    Project strips = ProjectReader.read(PATTERNS).project().orElseThrow();
    assertThat(json).hasSameSizeAs(strips.scenes());
    for (int i = 0; i < json.size(); i++) {
      Path file = folder.resolve(i + ".lampwright.json");
      Files.writeString(
          file,
          """
          {"lampwright": 1, "name": "One",
           "rig": {"controller": "other",
             "chains": [{"id": "c", "pixelType": "sk6812-rgbw", "pixels": 1}],
             "lamps": [{"id": "lamp", "pixels": [{"chain": "c", "count": 1}]}]},
           "scenes": [{"id": "s", "lengthMs": 1000, "tracks": [{"lamps": ["lamp"], "cues": [
             {"lengthMs": 1000, "pattern": PATTERN}]}]}]}
          """
              .replace("PATTERN", json.get(i)));
      Project one = ProjectReader.read(file).project().orElseThrow();
      assertThat(one.scenes().get(0).tracks().get(0).cues().get(0).pattern())
          .isEqualTo(strips.scenes().get(i).tracks().get(0).cues().get(0).pattern());
    }
  }
}
