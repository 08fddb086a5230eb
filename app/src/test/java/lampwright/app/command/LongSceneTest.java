package lampwright.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import lampwright.app.Main;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A scene of 1,000,000 frames, in a Java program that may hold 256 MiB. */
class LongSceneTest {
  private static final String PROJECT =
      """
      {"lampwright": 1,
       "rig": {"chains": [{"id": "c", "pixelType": "sk6812-rgbw", "pixels": 2}],
               "lamps": [{"id": "l", "pixels": [{"chain": "c", "count": 2}]}]},
       "scenes": [{"id": "s", "lengthMs": 10000000, "framesPerSecond": 100, "tracks": [
         {"lamps": ["l"], "cues": [{"lengthMs": 10000000, "pattern":
           {"kind": "rotating-beacon", "colour": "#FFA000", "perMinute": 117}}]}]}]}
      """;

  @TempDir Path folder;

  @Test
  void exportsInto256MebibytesOfHeap() throws IOException, InterruptedException {
    Path project = Files.writeString(folder.resolve("p.lampwright.json"), PROJECT);
    Process process =
        new ProcessBuilder(
                List.of(
                    Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                    "-Xmx256m",
                    "-cp",
                    System.getProperty("java.class.path"),
                    Main.class.getName(),
                    "export",
                    project.toString(),
                    "--to",
                    folder.toString(),
                    "--as",
                    "c,bin"))
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve("said").toFile())
            .start();
    assertThat(process.waitFor()).as(Files.readString(folder.resolve("said"))).isZero();
    assertThat(folder.resolve("s.bin")).hasSize(8_000_000);
    assertThat(folder.resolve("s.c").toFile().length()).isGreaterThan(8_000_000);
  }
}
