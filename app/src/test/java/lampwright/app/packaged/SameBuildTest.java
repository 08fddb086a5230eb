package lampwright.app.packaged;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.common.hash.Hashing;
import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The sources, built once more in another folder, zone and locale, give the same program. */
class SameBuildTest {
  private static final Path SOURCES = Path.of("..").toAbsolutePath().normalize();

  @TempDir Path folder;

  @Test
  void secondBuildGivesTheSameFiles() throws IOException, InterruptedException {
    Path copy = folder.resolve("another folder");
    copySources(copy);
    Path said = folder.resolve("said");
    ProcessBuilder build =
        new ProcessBuilder(
                Path.of(System.getProperty("lampwright.maven"), "bin", "mvn").toString(),
                "-o",
                "-B",
                "-q",
                // The checks of the sources change nothing of what is made from them.
                "-P!static-checks",
                // Nor does anything of the tests.
                "-Dwithout.tests=true",
                "-DskipTests",
                "-Dmaven.repo.local=" + System.getProperty("lampwright.repository"),
                "package")
            .directory(copy.toFile())
            .redirectErrorStream(true)
            .redirectOutput(said.toFile());
    build.environment().put("TZ", "Pacific/Kiritimati");
    build
        .environment()
        .put("MAVEN_OPTS", "-XX:TieredStopAtLevel=1 -Duser.language=tr -Duser.country=TR");
    Process process = build.start();
    assertThat(process.waitFor(10, TimeUnit.MINUTES)).as("the second build ends").isTrue();
    assertThat(process.exitValue()).as(Files.readString(said)).isZero();

    Map<String, String> first = files(Path.of(System.getProperty("lampwright.program")));
    assertThat(first.keySet()).anyMatch(name -> name.matches("lib/lampwright-engine.*\\.jar"));
    assertThat(files(copy.resolve("app/target/lampwright"))).isEqualTo(first);
  }

  private static void copySources(Path to) throws IOException {
    Files.walkFileTree(
        SOURCES,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult preVisitDirectory(Path at, BasicFileAttributes attributes)
              throws IOException {
            if (isMade(at)) {
              return FileVisitResult.SKIP_SUBTREE;
            }
            Files.createDirectories(to.resolve(SOURCES.relativize(at).toString()));
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
              throws IOException {
            Files.copy(file, to.resolve(SOURCES.relativize(file).toString()));
            return FileVisitResult.CONTINUE;
          }
        });
  }

  private static boolean isMade(Path folder) {
    // Packages may have that name too.
    return folder.endsWith(".git")
        || (folder.endsWith("target") && Files.exists(folder.resolveSibling("pom.xml")));
  }

  private static Map<String, String> files(Path program) throws IOException {
    Map<String, String> files = new TreeMap<>();
    try (Stream<Path> all = Files.walk(program)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        files.put(
            program.relativize(file).toString(),
            Hashing.sha256().hashBytes(Files.readAllBytes(file)).toString());
      }
    }
    return files;
  }

  /** Digests tell that a jar differs, not where; so this names what a build must not depend on. */
  @Test
  void entriesOfOurJarsHaveOneTime() throws IOException {
    Path program = Path.of(System.getProperty("lampwright.program"));
    List<Path> jars;
    try (Stream<Path> all = Files.list(program.resolve("lib"))) {
      jars = all.filter(jar -> jar.getFileName().toString().startsWith("lampwright-")).toList();
    }
    assertThat(jars).hasSize(3);
    for (Path jar : jars) {
      try (ZipFile zip = new ZipFile(jar.toFile())) {
        assertThat(zip.stream().map(entry -> entry.getTimeLocal()).distinct().toList())
            .as(jar.toString())
            .hasSize(1);
      }
    }
  }
}
