package lampwright.engine.disk;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Files that are beside their place while they are written, and what a killed process left of them.
 * The name tells the process:
 *
 * <pre>.lampwright-PID-STARTED-RANDOM.part</pre>
 *
 * PID in decimal, STARTED in milliseconds, RANDOM a UUID; {@code .part.old} is what is being
 * replaced. While it is written the process also holds a lock on it, which a system lets go of when
 * the process dies; on a shared disk other machines see the lock, and not the process.
 */
public final class Leftovers {
  private static final String PART = ".part";
  private static final Pattern NAME =
      Pattern.compile(
          "\\.lampwright-(\\d{1,19})-(\\d{1,15})-[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}"
              + "\\.part(\\.old)?");

  private Leftovers() {}

  /** A name that no other file has, for a file that this process writes. */
  public static String name() {
    Owner self = Owner.self();
    return ".lampwright-"
        + self.pid()
        + "-"
        + self.started().toEpochMilli()
        + "-"
        + UUID.randomUUID()
        + PART;
  }

  /** Says to others that it is being written; nothing on a disk that has no locks. */
  static void hold(FileChannel channel) {
    try {
      // Let go of with the channel.
      FileLock unused = channel.tryLock();
    } catch (IOException noLocks) {
      return;
    }
  }

  /**
   * Removes what processes that run no more left in a folder, and nothing else. What can't be
   * removed stays. Returns how many files were removed.
   */
  public static int sweep(Path folder) {
    int removed = 0;
    try (DirectoryStream<Path> parts = Files.newDirectoryStream(folder, ".lampwright-*.part*")) {
      for (Path part : parts) {
        if (isDead(part) && Files.deleteIfExists(part)) {
          removed++;
        }
      }
    } catch (IOException | DirectoryIteratorException unreadable) {
      // A folder that can't be read or changed keeps them.
      return removed;
    }
    return removed;
  }

  private static boolean isDead(Path part) {
    Optional<Owner> owner = owner(String.valueOf(part.getFileName()));
    return owner.isPresent()
        && Files.isRegularFile(part, LinkOption.NOFOLLOW_LINKS)
        && !owner.get().isAlive()
        && !isHeld(part);
  }

  /** The process that a name tells; none if it is no name of ours. */
  static Optional<Owner> owner(String name) {
    Matcher parts = NAME.matcher(name);
    try {
      return parts.matches()
          ? Optional.of(
              new Owner(
                  Long.parseLong(parts.group(1)),
                  Instant.ofEpochMilli(Long.parseLong(parts.group(2)))))
          : Optional.empty();
    } catch (NumberFormatException noProcess) {
      return Optional.empty();
    }
  }

  private static boolean isHeld(Path part) {
    try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE);
        FileLock lock = channel.tryLock()) {
      return lock == null;
    } catch (IOException noLocks) {
      // Then the process is all there is to ask.
      return false;
    }
  }
}
