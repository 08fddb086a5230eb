package lampwright.engine.disk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** One file beside its place. */
final class StagedFile extends NamedOutput {
  static final String WRITING = "could not write";
  static final StagedFiles.Mover ATOMIC =
      (from, to) -> Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);

  private final Path part;
  private boolean hasOld;

  StagedFile(Path target) throws IOException {
    // Not made from the name, which may be as long as a name can be.
    this(target, target.resolveSibling(Leftovers.name()));
  }

  private StagedFile(Path target, Path part) throws IOException {
    super(part, target);
    this.part = part;
    Leftovers.hold(channel());
  }

  // The writer is done with it; its bytes reach the disk with the others' at the commit.
  @Override
  public void close() throws IOException {
    flush();
  }

  void finish() throws IOException {
    try {
      Replaced.permissions(target(), part);
    } catch (IOException trouble) {
      throw clear(trouble);
    }
    force();
  }

  private Path old() {
    return part.resolveSibling(part.getFileName() + ".old");
  }

  void keepOld() throws IOException {
    if (Files.exists(target(), LinkOption.NOFOLLOW_LINKS)) {
      Replaced.keep(target(), old());
      hasOld = true;
    }
  }

  void moveIn(StagedFiles.Mover mover) throws IOException {
    mover.move(part, target());
    // Only now is it no more a part that could be taken for a leftover.
    channel().close();
  }

  void moveBack(IOException trouble) {
    try {
      if (hasOld) {
        ATOMIC.move(old(), target());
      } else {
        Files.deleteIfExists(target());
      }
    } catch (IOException second) {
      // Then the old file is left beside its place rather than lost.
      hasOld = false;
      trouble.addSuppressed(FileTroubles.clear("could not restore", target(), second));
    }
  }

  void discard() {
    try {
      channel().close();
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
