package lampwright.engine.disk;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** One file that is written beside its place and moved into it once it is whole on the disk. */
final class StagedFile extends NamedOutput {
  private final Path part;

  private StagedFile(Path target, Path part) throws IOException {
    super(part, target);
    this.part = part;
    Leftovers.hold(channel());
  }

  /**
   * Opens one.
   *
   * @throws IOException if what is there can't be replaced, or nothing can be written
   */
  static StagedFile open(Path target) throws IOException {
    checkTarget(target);
    try {
      // Not made from the name, which may be as long as a name can be.
      return new StagedFile(target, target.resolveSibling(Leftovers.name()));
    } catch (IOException trouble) {
      throw FileTroubles.clear(WRITING, target, trouble);
    }
  }

  /**
   * Moves it into place.
   *
   * @throws IOException if it can't be; then what is there is as it was
   */
  void commit() throws IOException {
    force();
    checkTarget(target());
    try {
      Replaced.permissions(target(), part);
      Mover.ATOMIC.move(part, target());
      // Only now is it no more a part that could be taken for a leftover.
      channel().close();
    } catch (IOException trouble) {
      throw clear(trouble);
    }
    Path folder = target().getParent();
    if (folder != null) {
      // So that the name survives a power cut.
      Folders.flush(folder);
    }
  }

  /** Discards what was not moved into place. */
  @Override
  public void close() {
    try {
      channel().close();
      Files.deleteIfExists(part);
    } catch (IOException left) {
      // The system that refuses this has refused the write before, and that was reported.
      return;
    }
  }

  /** Whether a file may be put there, whatever is there now. */
  static void checkTarget(Path target) throws IOException {
    if (Files.isDirectory(target)) {
      throw new IOException(FileTroubles.text(target, WRITING + ": it is a folder"));
    }
    if (Files.exists(target) && !Files.isRegularFile(target)) {
      throw new IOException(
          FileTroubles.text(target, WRITING + ": it is a pipe, a device or the like"));
    }
    if (Files.exists(target) && !Files.isWritable(target)) {
      throw new IOException(FileTroubles.text(target, WRITING + ": it is write-protected"));
    }
  }
}
