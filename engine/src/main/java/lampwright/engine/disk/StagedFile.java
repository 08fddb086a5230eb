package lampwright.engine.disk;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;

/** One file beside its place. */
final class StagedFile extends OutputStream {
  static final String WRITING = "could not write";
  static final StagedFiles.Mover ATOMIC =
      (from, to) -> Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);

  private final Path target;
  private final Path part;
  private final FileChannel channel;
  private final OutputStream out;
  private boolean hasOld;

  StagedFile(Path target) throws IOException {
    this.target = target;
    // Not made from the name, which may be as long as a name can be.
    this.part = target.resolveSibling(Leftovers.name());
    this.channel = FileChannel.open(part, StandardOpenOption.WRITE, StandardOpenOption.CREATE_NEW);
    Leftovers.hold(channel);
    this.out = new BufferedOutputStream(Channels.newOutputStream(channel), 1 << 16);
  }

  /** Its place. */
  Path target() {
    return target;
  }

  @Override
  public void write(int value) throws IOException {
    try {
      out.write(value);
    } catch (IOException trouble) {
      throw FileTroubles.clear(WRITING, target, trouble);
    }
  }

  @Override
  public void write(byte[] bytes, int from, int count) throws IOException {
    try {
      out.write(bytes, from, count);
    } catch (IOException trouble) {
      throw FileTroubles.clear(WRITING, target, trouble);
    }
  }

  // The writer is done with it; its bytes reach the disk with the others' at the commit.
  @Override
  public void close() throws IOException {
    flush();
  }

  @Override
  public void flush() throws IOException {
    try {
      if (channel.isOpen()) {
        out.flush();
      }
    } catch (IOException trouble) {
      throw FileTroubles.clear(WRITING, target, trouble);
    }
  }

  void finish() throws IOException {
    try {
      out.flush();
      copyPermissions();
      channel.force(true);
    } catch (IOException trouble) {
      throw FileTroubles.clear(WRITING, target, trouble);
    }
  }

  private void copyPermissions() throws IOException {
    PosixFileAttributeView old = Files.getFileAttributeView(target, PosixFileAttributeView.class);
    if (old != null && Files.exists(target)) {
      Files.setPosixFilePermissions(part, old.readAttributes().permissions());
    }
  }

  private Path old() {
    return part.resolveSibling(part.getFileName() + ".old");
  }

  void keepOld() throws IOException {
    if (Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
      try {
        Files.createLink(old(), target);
      } catch (IOException | UnsupportedOperationException noLinks) {
        Files.copy(target, old(), StandardCopyOption.COPY_ATTRIBUTES);
      }
      hasOld = true;
    }
  }

  void moveIn(StagedFiles.Mover mover) throws IOException {
    mover.move(part, target);
    // Only now is it no more a part that could be taken for a leftover.
    channel.close();
  }

  void moveBack(IOException trouble) {
    try {
      if (hasOld) {
        ATOMIC.move(old(), target);
      } else {
        Files.deleteIfExists(target);
      }
    } catch (IOException second) {
      // Then the old file is left beside its place rather than lost.
      hasOld = false;
      trouble.addSuppressed(FileTroubles.clear("could not restore", target, second));
    }
  }

  void discard() {
    try {
      channel.close();
      Files.deleteIfExists(part);
      if (hasOld) {
        Files.deleteIfExists(old());
      }
    } catch (IOException left) {
      // The system that refuses this has refused the write before, and that was reported.
      return;
    }
  }
}
