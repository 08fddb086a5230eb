package lampwright.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** {@code rehearse} as a builder runs it. */
class RehearseTest {
  private static final String PROJECT =
      """
      {"lampwright": 1, "rig": {"outputs": [{"id": "o"}, {"id": "p"}],
       "lamps": [{"id": "stop", "output": "o"}, {"id": "horn", "output": "p"}],
       "inputs": [{"id": "throttle", "kind": "servo-pulse"}, {"id": "tow", "kind": "switch"}]},
       "scenes": [
        {"id": "rest", "lengthMs": 200, "tracks": [{"lamps": ["stop", "horn"], "cues": [
          {"lengthMs": 200, "pattern": {"kind": "fade", "fromLevel": 0.2, "toLevel": 0.4}}]}]},
        {"id": "driving", "lengthMs": 100, "loop": false, "tracks": [{"lamps": ["stop"], "cues": [
          {"lengthMs": 100, "pattern": {"kind": "fade", "fromLevel": 0.6, "toLevel": 1}}]}]},
        {"id": "slow", "lengthMs": 100, "framesPerSecond": 25}],
       "situations": [
        {"id": "rests", "scene": "rest", "start": "shared"},
        {"id": "drives", "priority": 10, "scene": "driving",
         "all": [{"input": "throttle", "aboveUs": 1540}]},
        {"id": "fails", "any": [{"input": "throttle", "lost": true}]}]}
      """;

  // Driving from 60 ms; at 160 ms, 100 ms after the last pulse, the channel is lost.
  private static final String DRIVE =
      "ms,input,value\n0,throttle,1500\n20,throttle,1500\n59.5,throttle,1700\n400,tow,1\n";

  @TempDir private Path folder;
  private Path project;
  private Path drive;
  private Path out;

  @BeforeEach
  void files() throws IOException {
    project = Files.writeString(folder.resolve("p.lampwright.json"), PROJECT);
    drive = Files.writeString(folder.resolve("d.csv"), DRIVE);
    out = folder.resolve("out").resolve("d.bin");
  }

  private Run rehearse(Object... more) {
    return Run.of(
        Stream.concat(
                Stream.of("rehearse", project, "--drive", drive, "--to", out), Stream.of(more))
            .toArray());
  }

  private byte[] bin(String scene) throws IOException {
    Path bins = folder.resolve("bins");
    assertThat(Run.of("export", project, "--to", bins, "--as", "bin", "--scene", scene).code())
        .isZero();
    return Files.readAllBytes(bins.resolve(scene + ".bin"));
  }

  @Test
  void framesAreComposedOfTheBytesOfTheScenes() throws IOException {
    Run run = rehearse();

    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    byte[] rest = bin("rest");
    byte[] driving = bin("driving");
    ByteArrayOutputStream expected = new ByteArrayOutputStream();
    for (int n = 0; n <= 20; n++) {
      // The scene of five frames plays once, and the lamp falls back where it is lost.
      boolean drives = n >= 3 && n < 8;
      expected.write(drives ? driving[2 * (n - 3)] : rest[2 * (n % 10)]);
      expected.write(rest[2 * (n % 10) + 1]);
    }
    assertThat(Files.readAllBytes(out)).isEqualTo(expected.toByteArray());
  }

  @Test
  void lengthIsThatOfTheDriveOrAsSet() throws IOException {
    assertThat(rehearse("--frames", "7").code()).isZero();
    assertThat(Files.size(out)).isEqualTo(14);
    assertThat(rehearse("--frames", "100").code()).isZero();
    assertThat(Files.size(out)).isEqualTo(200);
  }

  @Test
  void logSaysWhenAndWhy() {
    Run run = rehearse("--log");

    assertThat(run.out().lines())
        .containsExactly(
            "frame 0 (0.000 s): rests begins: always",
            "frame 3 (0.060 s): drives begins: throttle above 1540 us",
            "frame 8 (0.160 s): drives ends: no longer throttle above 1540 us",
            "frame 8 (0.160 s): fails begins: throttle lost");
  }

  /**
   * The recorded drive of the sample: nothing is known until the centre is learnt; a run on the
   * road; two taps; towed, with a contact that bounces; two taps; and the transmitter off for a
   * while.
   */
  @Test
  void sampleReactsToItsDrive() {
    Run run =
        Run.of(
            "rehearse",
            Run.sample("recovery-tractor"),
            "--drive",
            Run.SAMPLES.resolve("recovery-tractor.drive.csv"),
            "--to",
            out,
            "--log");

    assertThat(run.err()).isEmpty();
    assertThat(run.out().lines().map(line -> line.replaceFirst("[^:]*: ([^:]*):.*", "$1")))
        .containsExactly(
            "on-the-road begins",
            "signal-lost begins",
            "standing begins",
            "signal-lost ends",
            "standing ends",
            "standing begins",
            "work-switch begins",
            "working begins",
            "towed begins",
            "towed ends",
            "work-switch ends",
            "working ends",
            "standing ends",
            "signal-lost begins",
            "standing begins");
  }

  @Test
  void fileIsReplacedOnlyByAWholeOne() throws IOException {
    Files.createDirectories(out.getParent());
    Files.writeString(out, "old");
    Files.writeString(drive, DRIVE + "5,throttle,1500\n1000,throtle,1500\n");

    Run run = rehearse();

    assertThat(run.code()).isEqualTo(ExitCode.PROJECT_HAS_ERRORS);
    assertThat(run.err().lines())
        .containsExactly(
            drive + ": error: line 6: \"5\": ms must be at least 400, that of the row before",
            drive
                + ": error: line 7: \"throtle\": input must be the id of an input of the project;"
                + " did you mean \"throttle\"?");
    assertThat(Files.readString(out)).isEqualTo("old");
    try (Stream<Path> left = Files.list(out.getParent())) {
      assertThat(left).containsExactly(out);
    }
  }

  @Test
  void driveWithoutRowsNeedsALength() throws IOException {
    Files.writeString(drive, "ms,input,value\n");

    assertThat(rehearse().code()).isEqualTo(ExitCode.PROJECT_HAS_ERRORS);
    assertThat(rehearse().err()).contains("has no rows: set the length with --frames");
    assertThat(Files.exists(out)).isFalse();
    assertThat(rehearse("--frames", "1").code()).isZero();
    assertThat(Files.size(out)).isEqualTo(2);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"priority\": 10,|\"priority\": 0,|error: situations[1].priority at line 12,|"
            + "[situation-priority]",
        "\"scene\": \"driving\",|\"scene\": \"slow\",|error: situations[1].scene at line 12,|"
            + "[situation-rate]",
        "\"kind\": \"switch\"|\"kind\": \"swich\"|did you mean \"switch\"?|must be servo-pulse"
      })
  void projectThatCannotBePlayedIsRefused(String good, String bad, String place, String what)
      throws IOException {
    Files.writeString(project, PROJECT.replace(good, bad));

    Run run = rehearse();

    assertThat(run.code()).isEqualTo(ExitCode.PROJECT_HAS_ERRORS);
    assertThat(run.err()).contains(place).contains(what);
    assertThat(Files.exists(out)).isFalse();
    Run check = Run.of("check", project);
    assertThat(check.code()).isEqualTo(ExitCode.PROJECT_HAS_ERRORS);
    assertThat(check.err()).contains(place).contains(what);
  }

  @Test
  void withoutASceneThereIsNothingToPlay() throws IOException {
    Files.writeString(
        project,
        PROJECT.replace("\"scene\": \"rest\", ", "").replace("\"scene\": \"driving\",", ""));

    Run run = rehearse();

    assertThat(run.code()).isEqualTo(ExitCode.PROJECT_HAS_ERRORS);
    assertThat(run.err()).contains("no situation has a scene, so there is nothing to play");
  }

  @ParameterizedTest
  @CsvSource({"0", "-1", "100000001", "x"})
  void lengthThatIsNoneIsAWrongCommandLine(String frames) {
    assertThat(rehearse("--frames", frames).code()).isEqualTo(ExitCode.WRONG_COMMAND_LINE);
    assertThat(Files.exists(out)).isFalse();
  }

  @Test
  void driveAndOutputAreRequired() {
    for (List<Object> words :
        List.<List<Object>>of(
            List.of("rehearse", project, "--drive", drive),
            List.of("rehearse", project, "--to", out))) {
      assertThat(Run.of(words.toArray()).code()).isEqualTo(ExitCode.WRONG_COMMAND_LINE);
    }
  }

  @Test
  void whatCannotBeReadOrWrittenIsSaid() throws IOException {
    assertThat(Run.of("rehearse", project, "--drive", folder, "--to", out).code())
        .isEqualTo(ExitCode.NO_READ_OR_WRITE);
    Files.createDirectories(out);
    Run run = rehearse();
    assertThat(run.code()).isEqualTo(ExitCode.NO_READ_OR_WRITE);
    assertThat(run.err()).contains("could not write: it is a folder");
    Files.delete(drive);
    assertThat(rehearse().code()).isEqualTo(ExitCode.NO_READ_OR_WRITE);
  }
}
