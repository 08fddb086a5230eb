package lampwright.app.command;

import static lampwright.app.command.Run.sample;
import static org.assertj.core.api.Assertions.assertThat;

import com.google.common.hash.Hashing;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import lampwright.app.Main;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The program itself, started in the settings of other people's machines: the bytes of every export
 * hang on the project alone.
 */
class SameExportsTest {
  private static final Path HERE = Path.of(System.getProperty("java.home"));

  @TempDir static Path folder;
  private static Map<String, String> usual;

  @BeforeAll
  static void exportAsUsual() throws IOException, InterruptedException {
    usual = export(HERE, folder.resolve("usual"), List.of());
    assertThat(usual.keySet())
        .contains("working.c", "working.bin", "working.packed", "working.hex", "working.csv")
        .hasSizeGreaterThan(20);
  }

  @Execution(ExecutionMode.CONCURRENT)
  @ParameterizedTest
  @ValueSource(
      strings = {
        // Each value of one setting with one of every other; Windows ends lines so.
        "-Duser.language=tr -Duser.country=TR -Dline.separator=\r\n -Dfile.encoding=ISO-8859-1",
        "-Duser.language=ar -Duser.country=EG -Duser.extensions=u-nu-arab"
            + " -Duser.timezone=America/St_Johns -Dfile.encoding=UTF-16",
        "-Duser.language=de -Duser.country=DE -Duser.timezone=Pacific/Kiritimati"
            + " -Dsun.jnu.encoding=US-ASCII -XX:TieredStopAtLevel=1 -XX:ActiveProcessorCount=1",
      })
  void everySettingGivesTheSameBytes(String settings) throws IOException, InterruptedException {
    Path to = folder.resolve("settings " + Integer.toHexString(settings.hashCode()));
    assertThat(export(HERE, to, List.of(settings.split(" ")))).isEqualTo(usual);
  }

  /** Every other Java that is installed beside this one and is new enough. */
  @Test
  void everyJavaGivesTheSameBytes() throws IOException, InterruptedException {
    int found = 0;
    for (Path other : otherJavas()) {
      assertThat(export(other, folder.resolve("java" + found++), List.of()))
          .as(other.toString())
          .isEqualTo(usual);
    }
    System.out.println("Exports compared with those of " + found + " other versions of Java.");
  }

  private static List<Path> otherJavas() throws IOException {
    List<Path> others = new ArrayList<>();
    try (Stream<Path> beside = Files.list(HERE.toRealPath().getParent())) {
      for (Path java : beside.sorted().toList()) {
        Path release = java.resolve("release");
        if (Files.isExecutable(java.resolve("bin/java"))
            && Files.isRegularFile(release)
            && newerThanThis(Files.readString(release))) {
          others.add(java);
        }
      }
    }
    return others;
  }

  private static boolean newerThanThis(String release) {
    return release
        .lines()
        .filter(line -> line.startsWith("JAVA_VERSION="))
        .map(line -> line.replaceAll("[^0-9.]", "").replaceAll("[.].*", ""))
        .anyMatch(feature -> Integer.parseInt(feature) > Runtime.version().feature());
  }

  /** All files of an export of a sample by name, with their digests. */
  private static Map<String, String> export(Path java, Path to, List<String> settings)
      throws IOException, InterruptedException {
    Files.createDirectories(to);
    List<String> words = new ArrayList<>(List.of(java.resolve("bin/java").toString()));
    words.addAll(settings);
    words.addAll(List.of("-cp", System.getProperty("java.class.path"), Main.class.getName()));
    Path project = sample("recovery-tractor").toAbsolutePath().normalize();
    words.addAll(List.of("export", project.toString(), "--to", "out"));
    words.addAll(List.of("--as", "c,bin,packed,hex,csv,firmware"));
    Process process =
        new ProcessBuilder(words)
            .directory(to.toFile())
            .redirectErrorStream(true)
            .redirectOutput(to.resolve("said").toFile())
            .start();
    assertThat(process.waitFor()).as(settings + ": see " + to.resolve("said")).isZero();
    Map<String, String> files = new TreeMap<>();
    Path out = to.resolve("out");
    try (Stream<Path> all = Files.walk(out)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        byte[] bytes = Files.readAllBytes(file);
        files.put(out.relativize(file).toString(), digest(bytes));
      }
    }
    return files;
  }

  private static String digest(byte[] bytes) {
    return bytes.length + " bytes, " + Hashing.sha256().hashBytes(bytes);
  }
}
