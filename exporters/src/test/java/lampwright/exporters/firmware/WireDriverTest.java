package lampwright.exporters.firmware;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import lampwright.exporters.OutsideTools;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The wire driver alone, with a stand-in for the player: shell scripts in src/test/wire build it
 * for every controller and pixel type, run it on libsimavr, and check each bit's times, the resets,
 * PWM, frame rates, interrupts that come in between, and that the prover finds faults that were put
 * in. sigrok-cli reads the same waveforms.
 */
class WireDriverTest {
  private static final Path SCRIPTS = Path.of("src/test/wire");
  private static final Path RESOURCES = Path.of("src/main/resources/lampwright/exporters");

  @TempDir Path root;

  @BeforeEach
  void layOut() throws IOException {
    OutsideTools tools = OutsideTools.onThisMachine();
    tools.findSimulator();
    tools.find("g++", "g++");
    tools.find("arm-none-eabi-gcc", "gcc-arm-none-eabi");
    tools.find("sigrok-cli", "sigrok-cli");
    tools.find("make", "make");
    copy(SCRIPTS, root.resolve("test"));
    copy(RESOURCES.resolve("firmware"), root.resolve("library"));
    copy(SCRIPTS.resolve("sample"), root.resolve("library/src"));
    copy(RESOURCES.resolve("prover"), root.resolve("prover"));
    Files.copy(SCRIPTS.resolve("prover.mk"), root.resolve("prover/Makefile"));
    // The stand-in takes the player's place.
    for (String part : new String[] {"player.c", "player.h", "player_avr.S"}) {
      Files.delete(root.resolve("library/src/lampwright_" + part));
    }
  }

  @Test
  void everyBitOfEveryCaseIsWithinItsLimits() throws IOException, InterruptedException {
    assertThat(run("run_tests.sh")).contains(" passed, 0 failed");
  }

  @Test
  void hookIsCleanOnEveryCompiler() throws IOException, InterruptedException {
    assertThat(run("hook.sh")).contains(" passed, 0 failed");
  }

  private String run(String script) throws IOException, InterruptedException {
    Path said = root.resolve("said.txt");
    Process process =
        new ProcessBuilder("sh", "test/" + script)
            .directory(root.toFile())
            .redirectErrorStream(true)
            .redirectOutput(said.toFile())
            .start();
    int code = process.waitFor();
    String text = Files.readString(said);
    assertThat(code).as(text).isZero();
    return text;
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> files = Files.walk(from)) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        Path target = to.resolve(from.relativize(file).toString());
        Files.createDirectories(target.getParent());
        Files.copy(file, target);
      }
    }
  }
}
