package lampwright.engine.project;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.stream.Stream;

/** Brings the names in folders onto the disk, so that they survive a power cut. */
final class FolderFlush {
  private FolderFlush() {}

  /** One folder, where the system can do that for a folder. */
  static void one(Path folder) {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException unsupported) {
      return;
    }
  }

  /** A folder and all in it. */
  static void tree(Path folder) throws IOException {
    List<Path> folders;
    try (Stream<Path> all = Files.walk(folder)) {
      folders = all.filter(Files::isDirectory).toList();
    }
    folders.forEach(FolderFlush::one);
  }
}
