package lampwright.app.workshop.model.files;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A real process is killed in the middle of its edits. */
class KillTest {
  @TempDir Path folder;

  @Test
  @Timeout(600)
  void killedProcessLeavesAtLeastWhatItSaidWasSafe() throws IOException, InterruptedException {
    Locale.setDefault(Locale.ROOT);
    Path state = folder.resolve("state");
    Path file = Shop.saved(folder.resolve("p.lampwright.json"), "0");
    Process child = start(state, file, 0);
    int safe = 0;
    try (BufferedReader out = child.inputReader(UTF_8)) {
      // The first is kept at once; the second only by a write a second later.
      for (int heard = 0; heard < 2; heard++) {
        safe = Integer.parseInt(out.readLine());
      }
      child.destroyForcibly().waitFor();
    } finally {
      child.destroyForcibly();
    }
    assertThat(Shop.on(file).name()).isEqualTo("0");
    Shop next = new Shop(state);
    next.dialogs.answers.add("Recover changes");
    // The system let go of the dead one's claim, so that this is the only question.
    next.open(file);
    assertThat(Integer.parseInt(next.name())).isGreaterThanOrEqualTo(safe).isGreaterThan(1);
    next.bench.undo();
    assertThat(next.files.document().changed()).isFalse();
  }

  /**
   * Killed at random instants among edits and saves: what is offered is newer than what the file
   * holds, as the words say, and nothing is left beside the two.
   */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  @Timeout(600)
  void killedWhileSavingOffersOnlyWhatIsNewer(long seed) throws IOException, InterruptedException {
    Locale.setDefault(Locale.ROOT);
    Path state = folder.resolve("state");
    Path file = Shop.saved(folder.resolve("p.lampwright.json"), "0");
    Random random = new Random(seed);
    Process child = start(state, file, 1 + random.nextInt(4));
    try (BufferedReader out = child.inputReader(UTF_8)) {
      int heard = Integer.parseInt(out.readLine());
      assertThat(heard).isPositive();
      Thread.sleep(random.nextInt(1000));
    } finally {
      child.destroyForcibly().waitFor();
    }
    int saved = Integer.parseInt(Shop.on(file).name());
    Shop next = new Shop(state);
    next.dialogs.answers.add("Recover changes");
    next.open(file);
    if (next.dialogs.asked.isEmpty()) {
      assertThat(next.name()).isEqualTo(Integer.toString(saved));
    } else {
      assertThat(next.dialogs.asked.get(0)).doesNotContain("something else");
      assertThat(Integer.parseInt(next.name())).isGreaterThan(saved);
    }
    try (Stream<Path> left = Files.list(folder)) {
      assertThat(left.map(p -> p.getFileName().toString()))
          .isSubsetOf("state", "p.lampwright.json", ".p.lampwright.json.recovery");
    }
  }

  private static Process start(Path state, Path file, int editsASave) throws IOException {
    Path java = Path.of(System.getProperty("java.home"), "bin", "java");
    String[] command = {
      java.toString(),
      "-Xmx128m",
      "-XX:+UseSerialGC",
      "-cp",
      System.getProperty("java.class.path"),
      KilledChild.class.getName(),
      state.toString(),
      file.toString(),
      Integer.toString(editsASave)
    };
    return new ProcessBuilder(List.of(command))
        .redirectError(ProcessBuilder.Redirect.INHERIT)
        .start();
  }
}
