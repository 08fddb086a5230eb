package lampwright.engine.disk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import lampwright.engine.json.ProjectReader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RegularFileTest {
  private static final Duration NEVER = Duration.ofMinutes(5);

  @TempDir private Path folder;

  private void refused(Path file, String message) {
    assertThatThrownBy(() -> assertTimeoutPreemptively(NEVER, () -> RegularFile.read(file, 10)))
        .isInstanceOf(IOException.class)
        .hasMessage(file + ": could not read: " + message);
  }

  @Test
  void fileOfTheGreatestSizeIsReadAndOneMoreIsRefused() throws IOException {
    Path file = Files.writeString(folder.resolve("f"), "0123456789");
    assertThat(RegularFile.text(file, 10)).isEqualTo("0123456789");
    Files.writeString(file, "0123456789x");
    refused(file, "it has more than 10 bytes");
  }

  @Test
  void fileOfManyGigabytesCostsNoMore() throws IOException {
    Path file = folder.resolve("sparse");
    try (RandomAccessFile sparse = new RandomAccessFile(file.toFile(), "rw")) {
      sparse.setLength(20L << 30);
    }
    refused(file, "it has more than 10 bytes");
  }

  @Test
  void pipeThatNobodyWritesIsRefusedAtOnce() throws InterruptedException {
    Path pipe = NamedPipe.at(folder.resolve("pipe"));
    refused(pipe, "it is a pipe, a device or the like; it must be a regular file");
    assertThatThrownBy(() -> assertTimeoutPreemptively(NEVER, () -> ProjectReader.read(pipe)))
        .hasMessageEndingWith("must be a regular file");
  }

  @Test
  void deviceWithoutEndIsRefused() {
    Path zero = Path.of("/dev/zero");
    assumeTrue(Files.exists(zero));
    refused(zero, "it is a pipe, a device or the like; it must be a regular file");
  }

  @Test
  void missingFileKeepsItsKind() {
    assertThatThrownBy(() -> RegularFile.read(folder.resolve("none"), 10))
        .isInstanceOf(NoSuchFileException.class)
        .hasMessageContaining("there is no such file");
  }
}
