package lampwright.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.ProcessBuilder.Redirect;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How the process ends. */
class MainTest {
  private static final String SAMPLE =
      Path.of("..", "samples", "bench-rgbw.lampwright.json").toString();

  /** The program in a process that another thread would hold for good. */
  static final class Held {
    private Held() {}

    public static void main(String[] arguments) {
      new Thread(
              () -> {
                try {
                  new CountDownLatch(1).await();
                } catch (InterruptedException end) {
                  Thread.currentThread().interrupt();
                }
              })
          .start();
      Main.main(arguments);
    }
  }

  private static int run(Class<?> program, String... arguments)
      throws IOException, InterruptedException {
    List<String> words =
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-cp",
            System.getProperty("java.class.path"),
            program.getName());
    Process process =
        new ProcessBuilder(Stream.concat(words.stream(), List.of(arguments).stream()).toList())
            .redirectErrorStream(true)
            .redirectOutput(Redirect.DISCARD)
            .start();
    boolean ended = process.waitFor(1, TimeUnit.MINUTES);
    process.destroyForcibly();
    assertThat(ended).as("the process ended").isTrue();
    return process.exitValue();
  }

  @ParameterizedTest
  @CsvSource({"check, 0", "chek, 2"})
  void exitCodeIsThatOfTheCommand(String command, int code) throws Exception {
    assertThat(run(Main.class, command, SAMPLE)).isEqualTo(code);
  }

  @Test
  void noOtherThreadHoldsTheProcess() throws Exception {
    assertThat(run(Held.class, "check", SAMPLE)).isZero();
  }
}
