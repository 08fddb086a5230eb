package lampwright.app.packaged;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;

/** The Debian package, where the profile {@code installer} has made one. */
@EnabledIfSystemProperty(named = "lampwright.installer", matches = ".+")
class InstallerTest {
  /** Installed, as the goal is. */
  private static final long MOST_BYTES = 90L << 20;

  @TempDir Path folder;
  private Path program;

  @BeforeEach
  void unpack() throws IOException, InterruptedException {
    assumeTrue(Files.isExecutable(Path.of("/usr/bin/dpkg-deb")), "needs dpkg-deb");
    try (Stream<Path> files = Files.list(Path.of(System.getProperty("lampwright.installer")))) {
      Path deb = files.filter(file -> file.toString().endsWith(".deb")).findFirst().orElseThrow();
      run("dpkg-deb", "-x", deb.toString(), folder.toString());
      run("dpkg-deb", "-e", deb.toString(), folder.resolve("control").toString());
    }
    program = folder.resolve("opt/lampwright");
  }

  private String run(String... words) throws IOException, InterruptedException {
    ProcessBuilder builder = new ProcessBuilder(words).redirectErrorStream(true);
    builder.directory(folder.toFile());
    // A Java that fails, so that none but its own is used.
    Path bin = Files.createDirectories(folder.resolve("none/bin"));
    Path java = bin.resolve("java");
    Files.writeString(java, "#!/bin/sh\necho another Java\nexit 9\n");
    assertThat(java.toFile().setExecutable(true)).isTrue();
    Map<String, String> environment = builder.environment();
    environment.put("JAVA_HOME", folder.resolve("none").toString());
    environment.put("PATH", bin + ":/usr/bin:/bin");
    environment.put("HOME", folder.toString());
    environment.remove("XDG_CACHE_HOME");
    Process process = builder.start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as(said).isZero();
    return said;
  }

  @Test
  void commandsRunWithTheJavaThatIsInstalled() throws IOException, InterruptedException {
    String lampwright = program.resolve("bin/lampwright").toString();
    String sample = Path.of("../samples/recovery-tractor.lampwright.json").toRealPath().toString();
    assertThat(run(lampwright, "--version")).contains("ampwright");
    run(lampwright, "export", sample, "--to", "out", "--as", "c,bin");
    assertThat(folder.resolve("out/driving.bin")).isNotEmptyFile();
    run(lampwright, "picture", sample, "--to", "out/chart.png");
    assertThat(folder.resolve("out/chart.png")).isNotEmptyFile();
  }

  @Test
  void licencesAreInIt() {
    for (String name :
        List.of("LICENSE", "NOTICE", "licences/libraries.csv", "runtime/legal/java.base")) {
      assertThat(program.resolve("lib").resolve(name)).exists();
    }
  }

  @Test
  void installedSizeIsWithinTheGoal() throws IOException {
    try (Stream<Path> files = Files.walk(program)) {
      assertThat(files.filter(Files::isRegularFile).mapToLong(file -> file.toFile().length()).sum())
          .isLessThan(MOST_BYTES);
    }
  }

  @Test
  void menuEntryAndFileTypeAreThere() throws IOException {
    assertThat(program.resolve("lib/lampwright-lampwright.desktop"))
        .content()
        .contains("Exec=/opt/lampwright/bin/lampwright %f", "application/x-lampwright-project");
    assertThat(program.resolve("lib/lampwright-lampwright-MimeInfo.xml"))
        .content()
        .contains("*.lampwright.json");
    assertThat(folder.resolve("control/postinst")).content().contains("/usr/bin/lampwright");
    assertThat(folder.resolve("control/prerm")).content().contains("rm -f /usr/bin/lampwright");
  }
}
