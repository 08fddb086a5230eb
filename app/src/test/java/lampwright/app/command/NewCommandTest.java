package lampwright.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import lampwright.app.outline.Models;
import lampwright.app.start.ModelRequest;
import lampwright.app.start.NewModel;
import lampwright.engine.document.ModelKind;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NewCommandTest {
  @TempDir private Path folder;

  private Path file() {
    return folder.resolve("tug.lampwright.json");
  }

  private Project read() throws IOException {
    return ProjectReader.read(file()).project().orElseThrow();
  }

  @Test
  void writesTheProjectOfAKind() throws IOException {
    Run run = Run.of("new", "launch", file());
    assertThat(run.code()).isEqualTo(ExitCode.DONE);
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).contains("tug.lampwright.json: 10 lamps, 10 pixels, 0 outputs");
    assertThat(read()).isEqualTo(NewModel.make(ModelRequest.usual(ModelKind.LAUNCH)).project());
    assertThat(Run.of("check", file()).code()).isEqualTo(ExitCode.DONE);
  }

  @Test
  void takesControllerLampsAndName() throws IOException {
    Run run =
        Run.of(
            "new",
            "launch",
            file(),
            "--controller",
            "rp2040",
            "--lamps",
            "masthead=2,cabin=0",
            "--name",
            "Harbour tug");
    assertThat(run.code()).isEqualTo(ExitCode.DONE);
    assertThat(read().name()).isEqualTo("Harbour tug");
    assertThat(read().rig().controller().orElseThrow().id()).isEqualTo("rp2040");
    assertThat(read().rig().lamps()).hasSize(8);
    assertThat(read().rig().lamps()).noneMatch(lamp -> lamp.id().startsWith("cabin"));
  }

  @Test
  void saysWhichLedsBecamePixels() {
    Run run = Run.of("new", "recovery-vehicle", file(), "--controller", "attiny85");
    assertThat(run.code()).isEqualTo(ExitCode.DONE);
    assertThat(run.out())
        .contains("as pixels, since no outputs are left for plain LEDs: Headlamps");
  }

  @Test
  void whatDoesNotFitIsRefusedWithTheLimitAndNotWritten() {
    Run run =
        Run.of(
            "new",
            "recovery-vehicle",
            file(),
            "--controller",
            "attiny85",
            "--lamps",
            "sill-strip=2,beacons=4,side-markers=6,cab-light=1,search-light=1");
    assertThat(run.code()).isEqualTo(ExitCode.PROJECT_HAS_ERRORS);
    // 512 bytes of working memory: ATtiny85 datasheet.
    assertThat(run.err())
        .contains("do not fit:")
        .contains("ATtiny85")
        .contains("limit 512 bytes")
        .contains("[working-memory]");
    assertThat(file()).doesNotExist();
  }

  @Test
  void existingFileIsKeptUnlessForced() throws IOException {
    Files.writeString(file(), "mine");
    Run run = Run.of("new", "launch", file());
    assertThat(run.code()).isEqualTo(ExitCode.NO_READ_OR_WRITE);
    assertThat(run.err()).contains("exists already; --force replaces it");
    assertThat(file()).hasContent("mine");
    assertThat(Run.of("new", "launch", file(), "--force").code()).isEqualTo(ExitCode.DONE);
    assertThat(read().rig().lamps()).hasSize(10);
  }

  @Test
  void namesWhatWasPerhapsMeant() {
    assertWrong("KIND: lunch: must be one of ", "did you mean \"launch\"?", "lunch", file());
    assertWrong(
        "--controller: rp2041: must be one of ",
        "did you mean \"rp2040\"?",
        "launch",
        file(),
        "--controller",
        "rp2041");
    assertWrong(
        "--lamps: mastheads: must be one of ",
        "did you mean \"masthead\"?",
        "launch",
        file(),
        "--lamps",
        "mastheads=1");
  }

  @Test
  void countsOutsideTheirRangeAreRefused() {
    for (String word : new String[] {"masthead=3", "masthead=-1", "masthead=x", "masthead"}) {
      assertWrong(
          "--lamps: " + word + ": must be masthead= and 0 to 2",
          "",
          "launch",
          file(),
          "--lamps",
          word);
    }
    assertWrong(
        "no lamps: must be at least one",
        "",
        "launch",
        file(),
        "--lamps",
        "masthead=0,port-light=0,starboard-light=0,stern-light=0,deck-lights=0,search-light=0,cabin=0");
    assertWrong("--name: ", "", "launch", file(), "--name", "x".repeat(10_000));
  }

  private void assertWrong(String begin, String end, Object... words) {
    Object[] all = new Object[words.length + 1];
    all[0] = "new";
    System.arraycopy(words, 0, all, 1, words.length);
    Run run = Run.of(all);
    assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.WRONG_COMMAND_LINE);
    assertThat(run.err()).contains(begin).contains(end);
    assertThat(file()).doesNotExist();
  }

  @Test
  void tugIsALaunch() throws IOException {
    assertThat(Run.of("models", "tug").out()).isEqualTo(Run.of("models", "launch").out());
    Path tug = folder.resolve("t.lampwright.json");
    Path launch = folder.resolve("l.lampwright.json");
    assertThat(Run.of("new", "tug", tug).code()).isZero();
    assertThat(Run.of("new", "launch", launch).code()).isZero();
    assertThat(tug).hasSameBinaryContentAs(launch);
    assertThat(Run.of("models", "tugg").err())
        .contains("KIND: tugg: must be one of road-tractor, ", "; did you mean \"tug\"?");
  }

  @Test
  void noWordIsThatOfTwoKinds() {
    java.util.Set<String> words = new java.util.HashSet<>();
    for (ModelKind kind : ModelKind.values()) {
      assertThat(words.add(kind.key())).isTrue();
      assertThat(Models.otherWords(kind)).isNotEmpty().allMatch(words::add);
    }
  }

  @Test
  void modelsListsKindsAndTheirLamps() {
    Run kinds = Run.of("models");
    assertThat(kinds.out().lines()).hasSize(ModelKind.values().length);
    Run lamps = Run.of("models", "launch");
    assertThat(lamps.out()).contains("masthead").contains(" 1 of  2  1 pixel each");
    assertThat(Run.of("models", "planet").code()).isEqualTo(ExitCode.WRONG_COMMAND_LINE);
  }

  @Test
  void missingProjectAndMisspeltCommandAreToldApart() {
    Run file = Run.of(folder.resolve("no.lampwright.json"));
    assertThat(file.code()).isEqualTo(ExitCode.NO_READ_OR_WRITE);
    assertThat(file.err()).contains("no.lampwright.json: no such file");
    Run command = Run.of("chek");
    assertThat(command.code()).isEqualTo(ExitCode.WRONG_COMMAND_LINE);
    assertThat(command.err()).contains("did you mean \"check\"?");
  }
}
