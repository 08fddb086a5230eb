package lampwright.engine.disk;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectFiles;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Rig;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LeftoversTest {
  private static final String UUID = "-0a1b2c3d-0000-4000-8000-0123456789ab";

  /** Of this process's number, but started before any computer was. */
  private static final String DEAD = ".lampwright-" + ProcessHandle.current().pid() + "-1" + UUID;

  private static final Project PROJECT =
      Project.of("p", Rig.of(List.of(), List.of(DriverOutput.of("o")), List.of()));

  @TempDir private Path folder;

  /** Opens a file to write, says so, and waits to be killed. */
  static final class Child {
    private Child() {}

    public static void main(String[] arguments) throws IOException, InterruptedException {
      try (StagedFile out = StagedFile.open(Path.of(arguments[0], "p"))) {
        out.write("half".getBytes(UTF_8));
        out.flush();
        System.out.println("open");
        TimeUnit.MINUTES.sleep(5);
      }
    }
  }

  private List<String> names() throws IOException {
    try (Stream<Path> list = Files.list(folder)) {
      return list.map(p -> p.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void partOfAProcessStaysWhileItRunsAndIsRemovedOnceItIsKilled()
      throws IOException, InterruptedException {
    Process child =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                Child.class.getName(),
                folder.toString())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    try {
      assertThat(child.inputReader(UTF_8).readLine()).isEqualTo("open");
      assertThat(Leftovers.sweep(folder)).isZero();
      assertThat(names()).hasSize(1);
    } finally {
      child.destroyForcibly().waitFor();
    }

    assertThat(names()).hasSize(1);
    ProjectFiles.save(PROJECT, folder.resolve("q"));
    assertThat(names()).containsExactly("q");
  }

  @Test
  void whatIsReplacedOfADeadProcessIsRemovedToo() throws IOException {
    Files.writeString(folder.resolve(DEAD + ".part"), "x");
    Files.writeString(folder.resolve(DEAD + ".part.old"), "x");

    assertThat(Leftovers.sweep(folder)).isEqualTo(2);
    assertThat(names()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        ".lampwright-1-1.part",
        ".lampwright-x-1-0a1b2c3d-0000-4000-8000-0123456789ab.part",
        ".lampwright-99999999999999999999-1-0a1b2c3d-0000-4000-8000-0123456789ab.part",
        ".lampwright-7-1-0A1B2C3D-0000-4000-8000-0123456789AB.part",
        ".lampwright-7-1-0a1b2c3d-0000-4000-8000-0123456789ab.part.txt",
        ".lampwright-7-1-0a1b2c3d-0000-4000-8000-0123456789ab.partial",
        "x.lampwright-7-1-0a1b2c3d-0000-4000-8000-0123456789ab.part"
      })
  void whatHasNoNameOfOursStays(String name) throws IOException {
    Files.writeString(folder.resolve(name), "the builder's");

    assertThat(Leftovers.sweep(folder)).isZero();
    assertThat(names()).containsExactly(name);
  }

  @Test
  void folderAndLinkOfSuchANameStay() throws IOException {
    Files.createDirectory(folder.resolve(DEAD + ".part"));
    Path precious = Files.writeString(folder.resolve("precious"), "x");
    Files.createSymbolicLink(folder.resolve(DEAD + ".part.old"), precious);

    assertThat(Leftovers.sweep(folder)).isZero();
    assertThat(names()).hasSize(3);
  }

  @Test
  void ownPartStays() throws IOException {
    try (StagedFile file = StagedFile.open(folder.resolve("p"))) {
      file.write(1);
      assertThat(Leftovers.sweep(folder)).isZero();
      file.commit();
    }
    assertThat(names()).containsExactly("p");
  }

  @Test
  void missingFolderHasNone() {
    assertThat(Leftovers.sweep(folder.resolve("none"))).isZero();
  }
}
