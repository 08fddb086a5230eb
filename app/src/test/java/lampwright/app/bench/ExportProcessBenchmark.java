package lampwright.app.bench;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Whole processes from start to end: one export of a sample by the program folder, and beside it
 * the bare start of a Java program that does nothing.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 2)
@Measurement(iterations = 15)
public class ExportProcessBenchmark {
  private final Path app = Path.of(System.getProperty("lampwright.app", "app")).toAbsolutePath();
  private Path folder = app;

  /** A folder for what is exported. */
  @Setup
  public void makeFolder() throws IOException {
    folder = Files.createTempDirectory("lampwright-bench");
  }

  /** {@code lampwright export} of the recovery tractor as C and binary. */
  @Benchmark
  public int export() throws IOException, InterruptedException {
    return run(
        app.resolve("target/lampwright/bin/lampwright").toString(),
        "export",
        app.resolve("../samples/recovery-tractor.lampwright.json").toString(),
        "--to",
        folder.toString(),
        "--as",
        "c,bin");
  }

  /** A Java program that does nothing. */
  @Benchmark
  public int bareStart() throws IOException, InterruptedException {
    return run(
        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
        "-XX:+UseSerialGC",
        "-Xshare:auto",
        "-cp",
        app.resolve("target/test-classes").toString(),
        BareProgram.class.getName());
  }

  private static int run(String... words) throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(List.of(words))
            .redirectErrorStream(true)
            .redirectOutput(new File("/dev/null"))
            .start();
    int code = process.waitFor();
    if (code != 0) {
      throw new IOException(String.join(" ", words) + ": exit code " + code);
    }
    return code;
  }
}
