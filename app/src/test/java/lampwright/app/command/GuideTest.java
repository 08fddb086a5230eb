package lampwright.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands and the JSON of the guide do what it says. */
class GuideTest {
  private static final Path GUIDE = Path.of("..", "docs", "guide");
  private static final String PROJECT = "harbour-tug.lampwright.json";
  private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

  @TempDir private Path folder;

  private static String guide() throws IOException {
    return Files.readString(GUIDE.resolve("README.md"));
  }

  /** The commands that the guide prints, in order, with files in the folder of the test. */
  private List<List<String>> commands() throws IOException {
    return guide()
        .lines()
        .filter(line -> line.startsWith("    lampwright "))
        .map(line -> words(line.substring("    lampwright ".length())))
        .toList();
  }

  private List<String> words(String line) {
    return WORD.matcher(line)
        .results()
        .map(word -> word.group(1) == null ? word.group(2) : word.group(1))
        .map(word -> word.equals(PROJECT) || word.equals("out") ? inFolder(word) : word)
        .toList();
  }

  private String inFolder(String name) {
    return folder.resolve(name).toString();
  }

  private static List<String> json() throws IOException {
    return Pattern.compile("```json\\n(.*?)\\n```", Pattern.DOTALL)
        .matcher(guide())
        .results()
        .map((MatchResult block) -> block.group(1))
        .toList();
  }

  private static void run(List<String> command) {
    Run run = Run.of(command.toArray());
    assertThat(run.code()).as(command + ": " + run.err()).isZero();
  }

  @Test
  void commandsAndJsonMakeTheProjectOfTheGuide() throws IOException {
    List<List<String>> commands = new ArrayList<>(commands());
    assertThat(commands)
        .extracting(command -> command.get(0))
        .containsExactly("models", "new", "check", "measure", "export");
    run(commands.remove(0));
    run(commands.remove(0));
    Path file = folder.resolve(PROJECT);
    List<String> json = json();
    assertThat(json).hasSize(2);
    String made = Files.readString(file);
    assertThat(made.split(Pattern.quote(json.get(0)), -1)).as("once in the file").hasSize(2);
    Files.writeString(file, made.replace(json.get(0), json.get(1)));
    commands.forEach(GuideTest::run);

    Project byHand = ProjectReader.read(file).project().orElseThrow();
    Project finished = ProjectReader.read(GUIDE.resolve(PROJECT)).project().orElseThrow();
    assertThat(byHand).isEqualTo(finished);
    assertThat(folder.resolve("out/under-way.bin")).hasSize(200 * 48);
    assertThat(folder.resolve("out/under-way.c")).exists();
    assertThat(folder.resolve("out/under-way.h")).exists();
  }

  @Test
  void everyPictureAndFileThatTheGuideNamesIsThere() throws IOException {
    List<String> named =
        Pattern.compile("\\]\\(([^)#]+)\\)")
            .matcher(guide())
            .results()
            .map(link -> link.group(1))
            .toList();
    assertThat(named).hasSizeGreaterThan(3);
    assertThat(named).allSatisfy(name -> assertThat(GUIDE.resolve(name)).exists());
  }
}
