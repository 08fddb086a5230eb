package lampwright.app.workshop.disk;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;

/**
 * Says to other Lampwrights of this user that a file is open in this one, by a lock in the state
 * folder. The system lets go of the lock when the process dies, however it dies.
 */
public final class FileClaim implements AutoCloseable {
  private final Path mark;
  private final FileChannel channel;

  private FileClaim(Path mark, FileChannel channel) {
    this.mark = mark;
    this.channel = channel;
  }

  /**
   * Claims a file.
   *
   * @return empty if another has it
   * @throws IOException if the state folder can't be written
   */
  public static Optional<FileClaim> of(Path state, Path file) throws IOException {
    Path folder = Files.createDirectories(state.resolve("open"));
    byte[] name = canonical(file).toString().getBytes(StandardCharsets.UTF_8);
    Path mark = folder.resolve(FileHash.of(name) + ".lock");
    if (Files.exists(mark) && !Files.isRegularFile(mark)) {
      // Opening a pipe would wait for whoever is at its other end.
      throw new IOException(mark + ": needs a regular file");
    }
    FileChannel channel =
        FileChannel.open(mark, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    try {
      FileLock lock = channel.tryLock();
      if (lock != null) {
        return Optional.of(new FileClaim(mark, channel));
      }
    } catch (OverlappingFileLockException ours) {
      // Another window of this process.
    } catch (IOException trouble) {
      channel.close();
      throw trouble;
    }
    channel.close();
    return Optional.empty();
  }

  // Two names of one file are one claim.
  private static Path canonical(Path file) {
    try {
      return file.toRealPath();
    } catch (IOException notThereYet) {
      return file.toAbsolutePath().normalize();
    }
  }

  /** Lets go of the file. */
  @Override
  public void close() {
    try {
      // First the name: once the lock is gone another may hold a lock on the same mark.
      Files.deleteIfExists(mark);
    } catch (IOException stays) {
      // An empty mark without a lock claims nothing.
    }
    try {
      channel.close();
    } catch (IOException closed) {
      return;
    }
  }
}
