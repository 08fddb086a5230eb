package lampwright.engine.disk;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FileSetTest {
  private static final List<String> NAMES = List.of("a.h", "a.c", "show/src/b.c", "show/README.md");

  @TempDir Path parent;

  private void write(String text, List<String> names, Mover mover) throws IOException {
    try (FileSet set = FileSet.in(parent.resolve("out"), mover)) {
      for (String name : names) {
        put(set, name, text);
      }
      set.commit();
    }
  }

  private static void put(FileSet set, String name, String text) throws IOException {
    try (OutputStream out = set.open(name)) {
      out.write(text.getBytes(UTF_8));
    }
  }

  private void write(String text) throws IOException {
    write(text, NAMES, Mover.ATOMIC);
  }

  // The files of the folder by name; what is ours to work with would show among them.
  private Map<String, String> files() throws IOException {
    Map<String, String> files = new TreeMap<>();
    Path out = parent.resolve("out");
    try (Stream<Path> all = Files.walk(out)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        files.put(out.relativize(file).toString().replace('\\', '/'), Files.readString(file));
      }
    }
    return files;
  }

  private static Map<String, String> all(String text) {
    Map<String, String> files = new TreeMap<>();
    NAMES.forEach(name -> files.put(name, text));
    return files;
  }

  @Test
  void filesAppearTogetherAndReplaceOthers() throws IOException {
    write("one");
    assertThat(files()).isEqualTo(all("one"));
    write("two");
    assertThat(files()).isEqualTo(all("two"));
    assertThat(parent.resolve("out").toFile().list())
        .containsExactlyInAnyOrder("a.h", "a.c", "show");
  }

  @Test
  void withoutCommitNothingIsLeftNotEvenTheFolder() throws IOException {
    try (FileSet set = FileSet.in(parent.resolve("out"))) {
      put(set, "a.c", "one");
    }
    assertThat(parent).isEmptyDirectory();
  }

  @Test
  void droppedFileGoesWithTheOthers() throws IOException {
    write("one");
    try (FileSet set = FileSet.in(parent.resolve("out"))) {
      set.drop("a.h");
      set.drop("never-there");
      put(set, "a.c", "two");
      set.commit();
    }
    assertThat(files()).doesNotContainKey("a.h").containsEntry("a.c", "two");
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3})
  void failureLeavesEveryFileAsItWas(int good) throws IOException {
    int[] moves = {0};
    Mover fails =
        (from, to) -> {
          if (moves[0]++ == good) {
            throw new IOException("the disk is gone");
          }
          Mover.ATOMIC.move(from, to);
        };
    assertThatThrownBy(() -> write("one", NAMES, fails)).hasMessageContaining("the disk is gone");
    assertThat(parent).isEmptyDirectory();
    write("one");
    moves[0] = 0;
    assertThatThrownBy(() -> write("two", NAMES, fails)).hasMessageContaining(NAMES.get(good));
    assertThat(files()).isEqualTo(all("one"));
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3})
  void whatWasAgreedToIsCompletedByTheNextProgram(int good) throws Exception {
    write("one");
    // Another program, so that the system lets go of its lock.
    int code = SetWriter.run(parent.resolve("out"), "two", good, NAMES);
    assertThat(code).isEqualTo(SetWriter.KILLED);
    try (FileSet set = FileSet.in(parent.resolve("out"))) {
      assertThat(set).isNotNull();
    }
    assertThat(files()).isEqualTo(all("two"));
  }

  @Test
  void whatWasNotAgreedToIsClearedAway() throws Exception {
    write("one");
    int code = SetWriter.run(parent.resolve("out"), "two", SetWriter.BEFORE_COMMIT, NAMES);
    assertThat(code).isEqualTo(SetWriter.KILLED);
    assertThat(parent.resolve("out").resolve(FileSet.WORK_FOLDER)).exists();
    write("three", List.of("a.h"), Mover.ATOMIC);
    Map<String, String> due = all("one");
    due.put("a.h", "three");
    assertThat(files()).isEqualTo(due);
  }

  @Test
  void killsAtAnyTimeLeaveOldOrNewOrWhatTheNextCompletes() throws Exception {
    for (int kill = 0; kill < 6; kill++) {
      Process process = SetWriter.start(parent.resolve("out"), "x", SetWriter.FOR_EVER, NAMES);
      assertThat(process.getInputStream().read()).isEqualTo('.');
      Thread.sleep(7L * kill * kill);
      process.destroyForcibly().waitFor();
      boolean agreed = Files.exists(parent.resolve("out/.lampwright-export/plan"));
      if (!agreed) {
        Map<String, String> files = files();
        files.keySet().removeIf(name -> name.startsWith(FileSet.WORK_FOLDER));
        assertThat(files.values().stream().distinct()).as("kill " + kill).hasSizeLessThan(2);
      }
      FileSet.in(parent.resolve("out")).close();
      assertThat(files().values().stream().distinct()).as("kill " + kill).hasSizeLessThan(2);
    }
  }

  @Test
  void anotherProgramAtTheSameTimeIsRefused() throws IOException {
    try (FileSet first = FileSet.in(parent.resolve("out"))) {
      put(first, "a.c", "one");
      assertThatThrownBy(() -> FileSet.in(parent.resolve("out")))
          .hasMessageContaining("another program is exporting here");
      first.commit();
    }
    assertThat(files()).containsOnlyKeys("a.c");
  }

  @Test
  void linksAreNotReplacedNorFollowed() throws IOException {
    assumeTrue(FileSystems.getDefault().supportedFileAttributeViews().contains("posix"));
    Path out = Files.createDirectory(parent.resolve("out"));
    Path elsewhere = Files.createDirectory(parent.resolve("elsewhere"));
    Files.createSymbolicLink(out.resolve("show"), elsewhere);
    Files.createSymbolicLink(out.resolve("a.c"), parent.resolve("nowhere"));
    assertThatThrownBy(() -> write("one", List.of("show/b.c"), Mover.ATOMIC))
        .hasMessageContaining("show: could not write: it is a link");
    assertThatThrownBy(() -> write("one", List.of("a.c"), Mover.ATOMIC))
        .hasMessageContaining("a.c: could not write: it is a link");
    assertThat(elsewhere).isEmptyDirectory();
    assertThat(out.resolve("a.c")).isSymbolicLink();
  }

  @Test
  void permissionsOfWhatIsReplacedStay() throws IOException {
    assumeTrue(FileSystems.getDefault().supportedFileAttributeViews().contains("posix"));
    write("one");
    Path file = parent.resolve("out/a.c");
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-rw----"));
    write("two");
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
        .isEqualTo("rw-rw----");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "/",
        "a//b",
        "../a",
        "a/../../b",
        "a/.",
        ".lampwright-export/plan",
        "a\nb",
        "a\\b",
        "c:d"
      })
  void namesThatLeadElsewhereAreRefused(String name) throws IOException {
    try (FileSet set = FileSet.in(parent.resolve("out"))) {
      assertThatThrownBy(() -> set.open(name)).isInstanceOf(IllegalArgumentException.class);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "add a", "add ../x\nend\n", "burn a\nend\n", "end", "add a\0\nend\n"})
  void planThatWeDidNotWriteIsNotPlayed(String plan) throws IOException {
    Path work = Files.createDirectories(parent.resolve("out/.lampwright-export"));
    Files.writeString(work.resolve("plan"), plan);
    assertThatThrownBy(() -> FileSet.in(parent.resolve("out")))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("plan of Lampwright's");
  }

  @Test
  void fileInTheWayOfAFolderIsNamed() throws IOException {
    Files.writeString(Files.createDirectory(parent.resolve("out")).resolve("show"), "mine");
    assertThatThrownBy(() -> write("one"))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("show: could not write: not a folder");
    assertThat(files()).isEqualTo(Map.of("show", "mine"));
  }
}
