package lampwright.engine.disk;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WholeFileTest {
  @TempDir private Path folder;

  private List<String> names() throws IOException {
    try (Stream<Path> list = Files.list(folder)) {
      return list.map(p -> p.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void fileIsMadeAndReplaced() throws IOException {
    Path file = folder.resolve("a");

    WholeFile.write(file, "gr\u00f6\u00dfer");
    assertThat(Files.readAllBytes(file))
        .isEqualTo(
            new byte[] {
              0x67, 0x72, (byte) 0xC3, (byte) 0xB6, (byte) 0xC3, (byte) 0x9F, 0x65, 0x72
            });
    WholeFile.write(file, "new");

    assertThat(file).hasContent("new");
    assertThat(names()).containsExactly("a");
  }

  @Test
  void missingFolderIsMade() throws IOException {
    Path file = folder.resolve("x").resolve("y").resolve("a");

    WholeFile.write(file, "new");

    assertThat(file).hasContent("new");
  }

  @Test
  void folderThatIsAFileIsRefused() throws IOException {
    Path file = Files.writeString(folder.resolve("file"), "x");

    assertThatThrownBy(() -> WholeFile.write(file.resolve("a"), "new"))
        .isInstanceOf(IOException.class)
        .hasMessage(file + ": could not make the folder: a file");
  }

  @Test
  void targetThatIsAFolderIsRefused() throws IOException {
    Path target = Files.createDirectory(folder.resolve("a"));

    assertThatThrownBy(() -> WholeFile.write(target, "new"))
        .isInstanceOf(IOException.class)
        .hasMessage(target + ": could not write: it is a folder");
    assertThat(names()).containsExactly("a");
  }

  @Test
  void targetThatBecameAFolderFailsWithoutATrace() throws IOException {
    Path target = folder.resolve("a");
    try (StagedFile file = StagedFile.open(target)) {
      file.write("new".getBytes(UTF_8));
      Files.createDirectories(target.resolve("full"));
      assertThatThrownBy(file::commit)
          .isInstanceOf(IOException.class)
          .hasMessage(target + ": could not write: it is a folder");
    }

    assertThat(names()).containsExactly("a");
  }

  @Test
  void whatIsNotCommittedLeavesTheOldFileAndNothingBeside() throws IOException {
    Path target = Files.writeString(folder.resolve("a"), "old");
    try (StagedFile file = StagedFile.open(target)) {
      file.write("new".getBytes(UTF_8));
      assertThat(names()).hasSize(2);
    }

    assertThat(names()).containsExactly("a");
    assertThat(target).hasContent("old");
  }

  @Test
  void permissionsOfAReplacedFileStay() throws IOException {
    Path target = Files.writeString(folder.resolve("a"), "old");
    assumeTrue(Files.getFileStore(folder).supportsFileAttributeView("posix"));
    Files.setPosixFilePermissions(target, PosixFilePermissions.fromString("rw-r-----"));

    WholeFile.write(target, "new");

    assertThat(target).hasContent("new");
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(target)))
        .isEqualTo("rw-r-----");
  }
}
