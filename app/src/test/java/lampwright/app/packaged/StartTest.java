package lampwright.app.packaged;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How the program folder starts: with the archive of classes that the first run has made. */
class StartTest {
  private static final Path PROGRAM =
      Path.of(System.getProperty("lampwright.program", "target/lampwright")).toAbsolutePath();
  private static final Path SAMPLE =
      Path.of("..", "samples", "bench-rgbw.lampwright.json").toAbsolutePath().normalize();

  /**
   * Classes that {@code check} of a sample may load: what a start takes is mostly these. A count,
   * since a time says more about the machine. It was 3,225 before decision 42.
   */
  private static final int MOST_CLASSES = 2750;

  private static final Duration LONGEST = Duration.ofMinutes(5);

  @TempDir Path temp;
  private Path cache;

  @BeforeEach
  void cache() {
    cache = temp.resolve("a caf\u00e9's cache");
  }

  private ProcessBuilder check(Path program, String options) {
    ProcessBuilder builder =
        new ProcessBuilder(
            program.resolve("bin/lampwright").toString(), "check", SAMPLE.toString(), "--json");
    builder.environment().put("LAMPWRIGHT_CACHE", cache.toString());
    builder.environment().put("LAMPWRIGHT_JAVA_OPTIONS", options);
    builder.environment().remove("JAVA_TOOL_OPTIONS");
    return builder;
  }

  /** What it prints; nothing may be said on standard error, neither by it nor by the JVM. */
  private String run(Path program, String options) throws IOException, InterruptedException {
    Path errors = Files.createTempFile(temp, "errors", "");
    Process process = check(program, options).redirectError(errors.toFile()).start();
    String said = new String(process.getInputStream().readAllBytes(), UTF_8);
    assertThat(process.waitFor()).isZero();
    assertThat(errors).isEmptyFile();
    return said;
  }

  private List<Path> files(String ending) throws IOException {
    if (!Files.exists(cache)) {
      return List.of();
    }
    // As deep as what is kept; what is below comes and goes while an archive is made.
    try (Stream<Path> all = Files.walk(cache, 4)) {
      return all.filter(f -> f.toString().endsWith(ending)).toList();
    }
  }

  private void await(int made) throws IOException, InterruptedException {
    Instant end = Instant.now().plus(LONGEST);
    while (files(".key").size() < made || !files(".making").isEmpty()) {
      assertThat(Instant.now()).as("the archive is made").isBefore(end);
      Thread.sleep(100);
    }
  }

  private long classes(String from) throws IOException, InterruptedException {
    Path log = Files.createTempFile(temp, "classes", "");
    run(PROGRAM, "-Xlog:class+load:file=" + log);
    try (Stream<String> lines = Files.lines(log)) {
      return lines.filter(line -> line.contains(from)).count();
    }
  }

  @Test
  void checkLoadsNoMoreClassesThanItMay() throws IOException, InterruptedException {
    // The run that begins to make the archive has more to load.
    run(PROGRAM, "");
    await(1);
    assertThat(classes("source:")).isBetween(500L, (long) MOST_CLASSES);
  }

  @Test
  void secondRunTakesTheArchiveOfTheFirst() throws IOException, InterruptedException {
    String first = run(PROGRAM, "");
    await(1);
    assertThat(run(PROGRAM, "")).isEqualTo(first);
    assertThat(classes("lampwright-engine")).isZero();
    assertThat(files(".classes")).isEmpty();
  }

  @Test
  void manyThatStartAtOnceMakeOne() throws IOException, InterruptedException {
    List<Process> together = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      together.add(
          check(PROGRAM, "")
              .redirectErrorStream(true)
              .redirectOutput(temp.resolve("said" + i).toFile())
              .start());
    }
    for (Process process : together) {
      assertThat(process.waitFor()).isZero();
    }
    await(1);
    assertThat(files(".key")).hasSize(1);
    assertThat(files("").stream().filter(Files::isRegularFile)).hasSize(3);
  }

  @Test
  void archiveOfOtherJarsIsMadeAnewWithoutAWord() throws IOException, InterruptedException {
    Path program = temp.resolve("a program folder, \u00e9l\u00e8ve");
    try (Stream<Path> files = Files.walk(PROGRAM)) {
      for (Path file : files.toList()) {
        Files.copy(
            file,
            program.resolve(PROGRAM.relativize(file).toString()),
            StandardCopyOption.COPY_ATTRIBUTES);
      }
    }
    String first = run(program, "");
    await(1);
    String key = Files.readString(files(".key").get(0));
    try (Stream<Path> jars = Files.list(program.resolve("lib"))) {
      for (Path jar : jars.toList()) {
        Files.setLastModifiedTime(jar, FileTime.from(Instant.parse("2020-02-02T00:00:00Z")));
      }
    }
    assertThat(run(program, "")).isEqualTo(first);
    Instant end = Instant.now().plus(LONGEST);
    while (Files.readString(files(".key").get(0)).equals(key)) {
      assertThat(Instant.now()).as("the archive is made anew").isBefore(end);
      Thread.sleep(100);
    }
    assertThat(run(program, "")).isEqualTo(first);
  }

  @Test
  void damagedArchiveIsLeftAside() throws IOException, InterruptedException {
    String first = run(PROGRAM, "");
    await(1);
    for (Path archive : Stream.concat(files(".jsa").stream(), files(".aot").stream()).toList()) {
      byte[] bytes = Files.readAllBytes(archive);
      Files.delete(archive);
      Files.write(archive, Arrays.copyOf(bytes, bytes.length / 3));
    }
    assertThat(run(PROGRAM, "")).isEqualTo(first);
  }

  /** A file where the folder should be is in the way for root too, whom no permission stops. */
  @Test
  void cacheThatCanNotBeWrittenIsNotMissed() throws IOException, InterruptedException {
    Files.writeString(temp.resolve("file"), "");
    cache = temp.resolve("file").resolve("cache");
    assertThat(run(PROGRAM, "")).contains("lampwrightCheck");
  }
}
