package lampwright.app;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The program as it is started: by the script of the program folder. */
class LauncherTest {
  @TempDir private Path folder;
  private Path launcher;

  /** The script, and a Java that takes these classes in place of those of the program folder. */
  @BeforeEach
  void launcher() throws IOException {
    assumeTrue(Files.isExecutable(Path.of("/bin/sh")));
    launcher = Files.createDirectories(folder.resolve("bin")).resolve("lampwright");
    Files.copy(Path.of("src/main/dist/bin/lampwright"), launcher);
    Path java = Files.createDirectories(folder.resolve("java/bin")).resolve("java");
    Files.writeString(
        java,
        """
        #!/bin/sh
        options=
        printf '%%s\\n' "$@" > '%s'
        while :; do
          case $1 in
            lampwright.app.Main | lampwright.app/lampwright.app.Main) break ;;
            -Dfile*) options="$options $1" ;;
          esac
          shift
        done
        shift
        exec '%s' $options -cp '%s' lampwright.app.Main "$@"
        """
            .formatted(
                folder.resolve("words"),
                Path.of(System.getProperty("java.home"), "bin", "java"),
                System.getProperty("java.class.path")));
    assertThat(java.toFile().setExecutable(true)).isTrue();
  }

  private String run(Map<String, String> environment, String... arguments)
      throws IOException, InterruptedException {
    return runAfter("", environment, arguments);
  }

  private String runAfter(String before, Map<String, String> environment, String... arguments)
      throws IOException, InterruptedException {
    // In a shell: this process can't pass a name that its own locale has no characters for.
    ProcessBuilder builder = new ProcessBuilder(List.of("/bin/sh"));
    builder.environment().keySet().removeIf(name -> name.startsWith("LC_") || name.equals("LANG"));
    builder.environment().put("JAVA_HOME", folder.resolve("java").toString());
    builder.environment().put("LAMPWRIGHT_CACHE", folder.resolve("cache").toString());
    builder.environment().putAll(environment);
    builder.redirectErrorStream(true).directory(folder.toFile());
    Process process = builder.start();
    String script =
        "mkdir -p caf\u00e9 && cp p.json caf\u00e9\n"
            + before
            + "/bin/sh bin/lampwright "
            + String.join(" ", arguments)
            + "\n";
    try (var in = process.getOutputStream()) {
      in.write(script.getBytes(UTF_8));
    }
    String said = new String(process.getInputStream().readAllBytes(), UTF_8);
    process.waitFor();
    return said;
  }

  private void project() throws IOException {
    Files.writeString(
        folder.resolve("p.json"),
        "{\"lampwright\": 1, \"name\": \"K\u00fcste\", \"rig\": {\"outputs\": [{\"id\": \"o\"}]}}");
  }

  @ParameterizedTest
  @CsvSource({"LC_ALL, C", "LC_ALL, POSIX", "LC_CTYPE, C", "LANG, C", "LANGUAGE, C"})
  void pathWithAccentsIsFoundAndNamedInTheCLocale(String name, String locale)
      throws IOException, InterruptedException {
    project();

    assertThat(run(Map.of(name, locale), "check", "caf\u00e9/p.json"))
        .doesNotContain("could not read")
        .contains("caf\u00e9/p.json");
  }

  @Test
  void encodingOfFilesDoesNotChangeWhatIsPrinted() throws IOException, InterruptedException {
    project();
    Map<String, String> utf16 = Map.of("LAMPWRIGHT_JAVA_OPTIONS", "-Dfile.encoding=UTF-16");

    assertThat(run(utf16, "check", "caf\u00e9/p.json", "--json"))
        .isEqualTo(run(Map.of(), "check", "caf\u00e9/p.json", "--json"))
        .contains("lampwrightCheck");
    assertThat(run(utf16, "nonsense")).isEqualTo(run(Map.of(), "nonsense")).contains("nonsense");
  }

  /** A file that may grow no more fails as on a full disk: nothing is left, and it is named. */
  @Test
  void fullDiskNamesTheFileAndLeavesNothing() throws IOException, InterruptedException {
    Files.writeString(
        folder.resolve("p.json"),
        """
        {"lampwright": 1, "name": "Full", "rig": {
           "chains": [{"id": "c", "pixelType": "ws2812b", "pixels": 400}]},
         "scenes": [{"id": "on", "lengthMs": 10000}]}
        """);
    // 64 KiB, in blocks of 512 bytes; the table has 600,000 bytes.
    String said =
        runAfter("ulimit -f 128\n", Map.of(), "export", "p.json", "--to", "out", "--as", "bin");

    assertThat(said).contains("on.bin: could not write: ").doesNotContain("Exception");
    assertThat(folder.resolve("out")).doesNotExist();
  }

  private List<String> words(Map<String, String> environment, String... arguments)
      throws IOException, InterruptedException {
    project();
    run(environment, arguments);
    return Files.readAllLines(folder.resolve("words"));
  }

  private Path archive(String kind, String ending) throws IOException {
    // The folder as the script finds it, without links.
    String home = folder.toRealPath() + "";
    String java = folder.resolve("java") + "";
    return folder
        .resolve("cache/lampwright/start")
        .resolve("java" + java.replace('/', '-'))
        .resolve(kind + home.replace('/', '-') + ending);
  }

  private void put(Path file) throws IOException {
    Files.createDirectories(file.getParent());
    Files.writeString(file, "");
  }

  @Test
  void shortCommandsHaveOneCompilerAndLongOnesBoth() throws IOException, InterruptedException {
    assertThat(words(Map.of(), "check", "p.json")).contains("-XX:TieredStopAtLevel=1");
    assertThat(words(Map.of(), "export", "p.json", "--to", "out"))
        .doesNotContain("-XX:TieredStopAtLevel=1")
        .contains("lampwright.app.Main");
    // The window has the second one later than a JVM has by itself.
    assertThat(words(Map.of(), "none.json"))
        .doesNotContain("-XX:TieredStopAtLevel=1")
        .anyMatch(word -> word.startsWith("-XX:Tier4InvocationThreshold="));
  }

  @Test
  void windowIsOnTheModulePath() throws IOException, InterruptedException {
    assertThat(words(Map.of(), "none.json"))
        .contains("--module-path", "lampwright.app/lampwright.app.Main");
    assertThat(words(Map.of(), "check", "p.json")).doesNotContain("--module-path");
  }

  @Test
  void nativeCodeIsAllowedWhereItIsLoaded() throws IOException, InterruptedException {
    assertThat(words(Map.of(), "live", "--list"))
        .contains("--enable-native-access=ALL-UNNAMED")
        .doesNotContain("--module-path");
    assertThat(words(Map.of(), "check", "p.json"))
        .noneMatch(word -> word.startsWith("--enable-native-access"));
  }

  /** Newer versions of Java would make code for each record of a project. */
  @Test
  void constructorsAreCalledWithoutCodeOfTheirOwn() throws IOException, InterruptedException {
    assertThat(words(Map.of(), "check", "p.json"))
        .contains("-Djdk.reflect.useNativeAccessorOnly=true");
  }

  @Test
  void archiveThatIsThereIsTaken() throws IOException, InterruptedException {
    String option = "-XX:SharedArchiveFile=" + archive("short", ".jsa");
    assertThat(words(Map.of(), "check", "p.json"))
        .doesNotContain(option)
        .contains("-Dlampwright.archive=" + archive("short", ""));
    put(archive("short", ".jsa"));
    assertThat(words(Map.of(), "check", "p.json")).contains(option);
    put(archive("short", ".aot"));
    assertThat(words(Map.of(), "check", "p.json"))
        .doesNotContain(option)
        .contains("-XX:AOTCache=" + archive("short", ".aot"));
  }

  @Test
  void longCommandsHaveAnArchiveOfTheirOwn() throws IOException, InterruptedException {
    put(archive("short", ".jsa"));
    assertThat(words(Map.of(), "export", "p.json", "--to", "out"))
        .noneMatch(word -> word.startsWith("-XX:SharedArchiveFile="))
        .contains("-Dlampwright.archive=" + archive("commands", ""));
  }

  /** Java opens each jar on the way to what it looks for: tables are in the first two. */
  @Test
  void jarsWithTablesAreFirst() throws IOException, InterruptedException {
    Path jars = Files.createDirectories(folder.toRealPath().resolve("lib"));
    for (String name :
        List.of("a", "lampwright-app", "lampwright-engine", "lampwright-exporters")) {
      Files.createFile(jars.resolve(name + "-1.jar"));
    }
    List<String> words = words(Map.of(), "check", "p.json");
    assertThat(words.get(words.indexOf("-cp") + 1))
        .isEqualTo(
            "%1$s/lampwright-engine-1.jar:%1$s/lampwright-exporters-1.jar:%1$s/lampwright-app-1.jar:%1$s/*"
                .formatted(jars));
  }

  @Test
  void windowWritesWhatItLoadsWhereThereIsNoArchive() throws IOException, InterruptedException {
    String list = "-XX:DumpLoadedClassList=";
    assertThat(words(Map.of(), "open", "none")).anyMatch(word -> word.startsWith(list));
    Path noFolder = Files.createFile(folder.resolve("file"));
    assertThat(words(Map.of("LAMPWRIGHT_CACHE", noFolder.toString()), "open", "none"))
        .noneMatch(word -> word.startsWith(list));
    put(archive("window", ".jsa"));
    assertThat(words(Map.of(), "open", "none"))
        .noneMatch(word -> word.startsWith(list))
        .contains("-XX:SharedArchiveFile=" + archive("window", ".jsa"));
  }

  @ParameterizedTest
  @CsvSource({"LAMPWRIGHT_CACHE, none", "LAMPWRIGHT_CACHE, relative", "LAMPWRIGHT_CACHE, ''"})
  void withoutACacheThereIsNoArchive(String name, String value)
      throws IOException, InterruptedException {
    assertThat(words(Map.of(name, value), "check", "p.json"))
        .noneMatch(word -> word.contains("archive") || word.contains("Archive"));
  }
}
