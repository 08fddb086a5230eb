package lampwright.app.workshop.model.files;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A real process is killed in the middle of its edits. */
class KillTest {
  @TempDir Path folder;

  @Test
  @Timeout(60)
  void killedProcessLeavesAtLeastWhatItSaidWasSafe() throws IOException, InterruptedException {
    Locale.setDefault(Locale.ROOT);
    Path state = folder.resolve("state");
    Path file = Shop.saved(folder.resolve("p.lampwright.json"), "0");
    Process child = start(state, file);
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
    next.asker.answers.add("Recover the changes");
    // The system let go of the dead one's claim, so that this is the only question.
    next.open(file);
    assertThat(Integer.parseInt(next.name())).isGreaterThanOrEqualTo(safe).isGreaterThan(1);
    next.bench.undo();
    assertThat(next.files.document().changed()).isFalse();
  }

  private static Process start(Path state, Path file) throws IOException {
    Path java = Path.of(System.getProperty("java.home"), "bin", "java");
    String[] command = {
      java.toString(),
      "-Xmx128m",
      "-XX:+UseSerialGC",
      "-cp",
      System.getProperty("java.class.path"),
      KilledChild.class.getName(),
      state.toString(),
      file.toString()
    };
    return new ProcessBuilder(List.of(command))
        .redirectError(ProcessBuilder.Redirect.INHERIT)
        .start();
  }
}
