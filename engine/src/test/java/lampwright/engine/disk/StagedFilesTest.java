package lampwright.engine.disk;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class StagedFilesTest {
  @TempDir private Path folder;

  private static void write(StagedFiles files, String name, String text) throws IOException {
    try (OutputStream out = files.open(name)) {
      out.write(text.getBytes(UTF_8));
    }
  }

  private List<String> names() throws IOException {
    try (Stream<Path> list = Files.list(folder)) {
      return list.map(p -> p.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void filesStandInPlaceAfterCommitAlone() throws IOException {
    try (StagedFiles files = StagedFiles.in(folder)) {
      write(files, "a.h", "new a");
      write(files, "a.c", "new c");
      assertThat(folder.resolve("a.h")).doesNotExist();
      files.commit();
    }

    assertThat(names()).containsExactly("a.c", "a.h");
    assertThat(folder.resolve("a.h")).hasContent("new a");
    assertThat(folder.resolve("a.c")).hasContent("new c");
  }

  @Test
  void closeWithoutCommitLeavesNothing() throws IOException {
    Files.writeString(folder.resolve("a.h"), "old");

    try (StagedFiles files = StagedFiles.in(folder)) {
      write(files, "a.h", "new");
    }

    assertThat(names()).containsExactly("a.h");
    assertThat(folder.resolve("a.h")).hasContent("old");
  }

  @Test
  void missingFolderIsMade() throws IOException {
    Path deep = folder.resolve("x").resolve("y");
    try (StagedFiles files = StagedFiles.in(deep)) {
      write(files, "a.h", "new");
      files.commit();
    }

    assertThat(deep.resolve("a.h")).hasContent("new");
  }

  @Test
  void folderThatIsAFileIsRefused() throws IOException {
    Path file = Files.writeString(folder.resolve("file"), "x");

    assertThatThrownBy(() -> StagedFiles.in(file))
        .isInstanceOf(IOException.class)
        .hasMessage(file + ": could not make the folder: a file");
  }

  @Test
  void targetThatIsAFolderIsRefused() throws IOException {
    Path target = Files.createDirectory(folder.resolve("a.h"));
    try (StagedFiles files = StagedFiles.in(folder)) {
      assertThatThrownBy(() -> files.open("a.h"))
          .isInstanceOf(IOException.class)
          .hasMessage(target + ": could not write: it is a folder");
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", " ", ".", "..", "../x", "a/b", "a\\b", "/x", "C:x", "a\u0000b", "a\nb"})
  void nameThatIsNoPlainNameIsRefused(String name) throws IOException {
    try (StagedFiles files = StagedFiles.in(folder)) {
      assertThatThrownBy(() -> files.open(name)).isInstanceOf(IllegalArgumentException.class);
    }
    assertThat(names()).isEmpty();
  }

  @Test
  void sameNameTwiceIsRefused() throws IOException {
    try (StagedFiles files = StagedFiles.in(folder)) {
      write(files, "a.h", "new");
      assertThatThrownBy(() -> files.open("a.h"))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("name: \"a.h\": is open already");
    }
  }

  @Test
  void failureMidwayRestoresWhatWasReplacedAndRemovesWhatWasNew() throws IOException {
    Files.writeString(folder.resolve("a"), "old a");
    Files.writeString(folder.resolve("c"), "old c");
    StagedFiles.Mover fails =
        (from, to) -> {
          if (to.endsWith("c")) {
            throw new IOException("No space left on device");
          }
          Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        };

    try (StagedFiles files = new StagedFiles(folder, fails)) {
      write(files, "a", "new a");
      write(files, "b", "new b");
      write(files, "c", "new c");
      assertThatThrownBy(files::commit)
          .isInstanceOf(IOException.class)
          .hasMessage(folder.resolve("c") + ": could not write: No space left on device");
    }

    assertThat(names()).containsExactly("a", "c");
    assertThat(folder.resolve("a")).hasContent("old a");
    assertThat(folder.resolve("c")).hasContent("old c");
  }

  @Test
  void targetThatBecameAFolderFailsWithoutATrace() throws IOException {
    Files.writeString(folder.resolve("a"), "old a");
    try (StagedFiles files = StagedFiles.in(folder)) {
      write(files, "a", "new a");
      write(files, "b", "new b");
      Files.createDirectories(folder.resolve("b").resolve("full"));
      assertThatThrownBy(files::commit).isInstanceOf(IOException.class);
    }

    assertThat(names()).containsExactly("a", "b");
    assertThat(folder.resolve("a")).hasContent("old a");
  }

  @Test
  void permissionsOfAReplacedFileStay() throws IOException {
    Path target = Files.writeString(folder.resolve("a"), "old");
    if (!Files.getFileStore(folder).supportsFileAttributeView("posix")) {
      return;
    }
    Files.setPosixFilePermissions(target, PosixFilePermissions.fromString("rw-r-----"));

    try (StagedFiles files = StagedFiles.in(folder)) {
      write(files, "a", "new");
      files.commit();
    }

    assertThat(target).hasContent("new");
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(target)))
        .isEqualTo("rw-r-----");
  }
}
