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
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledForJreRange;
import org.junit.jupiter.api.condition.JRE;
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
  private static final int MOST_CLASSES = 2550;

  private static final Duration LONGEST = Duration.ofMinutes(5);

  /** The archive that the first runs have made, for all tests. */
  @TempDir static Path shared;

  private static final List<String> FIRST = new ArrayList<>();
  private static Path made;

  @TempDir Path temp;
  private Path cache;

  // Making an archive takes longer than all the rest here: it is made by those who start at once.
  @BeforeAll
  static void manyStartAtOnce() throws IOException, InterruptedException {
    made = shared.resolve("a caf\u00e9's cache");
    List<Process> together = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      together.add(
          check(PROGRAM, made, "")
              .redirectErrorStream(true)
              .redirectOutput(shared.resolve("said" + i).toFile())
              .start());
    }
    for (int i = 0; i < 3; i++) {
      assertThat(together.get(i).waitFor()).isZero();
      FIRST.add(Files.readString(shared.resolve("said" + i)));
    }
    await(made);
  }

  private static void await(Path cache) throws IOException, InterruptedException {
    Instant end = Instant.now().plus(LONGEST);
    while (files(cache, ".key").isEmpty() || !files(cache, ".making").isEmpty()) {
      assertThat(Instant.now()).as("the archive is made").isBefore(end);
      Thread.sleep(100);
    }
  }

  /** A cache of its own for each test, with that archive. */
  @BeforeEach
  void cache() throws IOException {
    cache = temp.resolve("a caf\u00e9's cache");
    copy(made, cache);
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> files = Files.walk(from)) {
      for (Path file : files.toList()) {
        Files.copy(
            file, to.resolve(from.relativize(file).toString()), StandardCopyOption.COPY_ATTRIBUTES);
      }
    }
  }

  private static ProcessBuilder check(Path program, Path cache, String options) {
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
    Process process = check(program, cache, options).redirectError(errors.toFile()).start();
    String said = new String(process.getInputStream().readAllBytes(), UTF_8);
    assertThat(process.waitFor()).isZero();
    assertThat(errors).isEmptyFile();
    return said;
  }

  private static List<Path> files(Path cache, String ending) throws IOException {
    if (!Files.exists(cache)) {
      return List.of();
    }
    // As deep as what is kept; what is below comes and goes while an archive is made.
    try (Stream<Path> all = Files.walk(cache, 4)) {
      return all.filter(f -> f.toString().endsWith(ending)).toList();
    }
  }

  private long classes(String from) throws IOException, InterruptedException {
    Path log = Files.createTempFile(temp, "classes", "");
    run(PROGRAM, "-Xlog:class+load:file=" + log);
    try (Stream<String> lines = Files.lines(log)) {
      return lines.filter(line -> line.contains(from)).count();
    }
  }

  // From Java 25 on all of a cache is loaded, needed or not.
  @Test
  @EnabledForJreRange(max = JRE.JAVA_24)
  void checkLoadsNoMoreClassesThanItMay() throws IOException, InterruptedException {
    // The run that begins to make the archive has more to load.
    assertThat(classes("source:")).isBetween(500L, (long) MOST_CLASSES);
  }

  /** Reading a command line with it takes longer than reading a project. */
  @Test
  void checkLoadsNothingOfTheLibraryForCommandLines() throws IOException, InterruptedException {
    assertThat(classes(" picocli.")).isZero();
  }

  @Test
  void secondRunTakesTheArchiveOfTheFirst() throws IOException, InterruptedException {
    assertThat(run(PROGRAM, "")).isEqualTo(FIRST.get(0));
    assertThat(classes("lampwright-engine")).isZero();
    assertThat(files(cache, ".classes")).isEmpty();
  }

  @Test
  void manyThatStartAtOnceMakeOne() throws IOException {
    assertThat(FIRST).hasSize(3).containsOnly(FIRST.get(0));
    assertThat(FIRST.get(0)).contains("lampwrightCheck");
    assertThat(files(made, ".key")).hasSize(1);
    assertThat(files(made, "").stream().filter(Files::isRegularFile)).hasSize(3);
  }

  @Test
  void archiveOfOtherJarsIsMadeAnewWithoutAWord() throws IOException, InterruptedException {
    Path program = temp.resolve("a program folder, \u00e9l\u00e8ve");
    copy(PROGRAM, program);
    cache = temp.resolve("another caf\u00e9's cache");
    assertThat(run(program, "")).isEqualTo(FIRST.get(0));
    await(cache);
    String key = Files.readString(files(cache, ".key").get(0));
    try (Stream<Path> jars = Files.list(program.resolve("lib"))) {
      for (Path jar : jars.toList()) {
        Files.setLastModifiedTime(jar, FileTime.from(Instant.parse("2020-02-02T00:00:00Z")));
      }
    }
    assertThat(run(program, "")).isEqualTo(FIRST.get(0));
    Instant end = Instant.now().plus(LONGEST);
    while (Files.readString(files(cache, ".key").get(0)).equals(key)) {
      assertThat(Instant.now()).as("the archive is made anew").isBefore(end);
      Thread.sleep(100);
    }
    assertThat(run(program, "")).isEqualTo(FIRST.get(0));
  }

  @Test
  void damagedArchiveIsLeftAside() throws IOException, InterruptedException {
    List<Path> archives =
        Stream.concat(files(cache, ".jsa").stream(), files(cache, ".aot").stream()).toList();
    assertThat(archives).isNotEmpty();
    for (Path archive : archives) {
      byte[] bytes = Files.readAllBytes(archive);
      Files.delete(archive);
      Files.write(archive, Arrays.copyOf(bytes, bytes.length / 3));
    }
    assertThat(run(PROGRAM, "")).isEqualTo(FIRST.get(0));
  }

  /** A file where the folder should be is in the way for root too, whom no permission stops. */
  @Test
  void cacheThatCanNotBeWrittenIsNotMissed() throws IOException, InterruptedException {
    Files.writeString(temp.resolve("file"), "");
    cache = temp.resolve("file").resolve("cache");
    assertThat(run(PROGRAM, "")).contains("lampwrightCheck");
  }
}
