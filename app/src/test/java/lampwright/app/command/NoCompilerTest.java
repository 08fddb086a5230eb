package lampwright.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import lampwright.app.Main;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** The program itself, started where no other program can be found: an RP2040 needs none. */
@Execution(ExecutionMode.CONCURRENT)
class NoCompilerTest {
  private static final String PROJECT =
      """
      {"lampwright": 1,
       "rig": {"controller": "CONTROLLER",
         "chains": [{"id": "c", "pixelType": "sk6812-rgbw", "pixels": 3}],
         "outputs": [{"id": "o", "drive": "driver"}],
         "lamps": [{"id": "l", "pixels": [{"chain": "c", "count": 3}]},
                   {"id": "p", "output": "o"}]},
       "scenes": [{"id": "s", "lengthMs": 200, "framesPerSecond": 50, "tracks": [
         {"lamps": ["l", "p"], "cues": [{"lengthMs": 200, "pattern": {"kind": "fade"}}]}]}]}
      """;

  @TempDir Path folder;

  private record Said(int code, String text) {}

  /** With an environment that has nothing but a search path to an empty folder. */
  private Said run(String... arguments) throws IOException, InterruptedException {
    List<String> words =
        new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin/java").toString()));
    words.addAll(List.of("-XX:TieredStopAtLevel=1", "-cp", System.getProperty("java.class.path")));
    words.add(Main.class.getName());
    words.addAll(List.of(arguments));
    Path said = folder.resolve("said");
    ProcessBuilder builder =
        new ProcessBuilder(words)
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .redirectOutput(said.toFile());
    builder.environment().clear();
    builder
        .environment()
        .putAll(Map.of("PATH", Files.createDirectories(folder.resolve("nothing")).toString()));
    int code = builder.start().waitFor();
    return new Said(code, Files.readString(said));
  }

  private String project(String controller) throws IOException {
    return Files.writeString(
            folder.resolve(controller + ".lampwright.json"),
            PROJECT.replace("CONTROLLER", controller))
        .toString();
  }

  @Test
  void rp2040IsExportedAndProvedWithoutAnyOtherProgram() throws Exception {
    String project = project("rp2040");
    Said exported = run("export", project, "--as", "uf2", "--to", "out");
    assertThat(exported.code()).as(exported.text()).isZero();
    assertThat(Files.size(folder.resolve("out/s.uf2"))).isGreaterThan(32_768).isLessThan(100_000);
    Said proved = run("prove", project, "--waveform", "waves");
    assertThat(proved.code()).as(proved.text()).isZero();
    assertThat(proved.text()).contains(" proved ");
    assertThat(folder.resolve("waves/s.vcd")).isNotEmptyFile();
  }

  /** That the search path is really empty: an AVR's proof wants compilers, and says so. */
  @Test
  void otherControllersSayWhichProgramIsMissing() throws Exception {
    Said refused = run("prove", project("atmega328p"));
    assertThat(refused.code()).isEqualTo(3);
    assertThat(refused.text()).contains("gcc");
  }
}
