package lampwright.engine.disk;

import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import lampwright.engine.check.SafeText;

/**
 * Writes files of one folder all or none. Each is written beside its place; {@link #commit()} moves
 * them into place once all of them are whole on the disk. A failure before or midway leaves every
 * file as it was, and nothing beside.
 *
 * <p>Messages of the exceptions name the file and the reason. Not for use by several threads.
 */
public final class StagedFiles implements Closeable {
  /** Moves a file into place, replacing what is there, at once. */
  interface Mover {
    void move(Path from, Path to) throws IOException;
  }

  private final Path folder;
  private final Mover mover;
  private final List<StagedFile> staged = new ArrayList<>();

  StagedFiles(Path folder, Mover mover) {
    this.folder = folder;
    this.mover = mover;
  }

  /**
   * Files of this folder, which is made if it is missing.
   *
   * @throws IOException if it cannot be made
   */
  public static StagedFiles in(Path folder) throws IOException {
    Folders.makeToWrite(folder);
    return new StagedFiles(folder, StagedFile.ATOMIC);
  }

  /**
   * Opens a file to write. Closing the stream is not needed.
   *
   * @param name of the file in its place, without a folder
   * @throws IllegalArgumentException if it is no plain name, or was opened before
   * @throws IOException if it cannot be written
   */
  public OutputStream open(String name) throws IOException {
    if (!isPlainName(name)) {
      throw new IllegalArgumentException(
          "name: " + SafeText.quoted(name) + ": must be the name of a file, without a folder");
    }
    Path target = folder.resolve(name);
    if (staged.stream().anyMatch(s -> s.target().equals(target))) {
      throw new IllegalArgumentException("name: " + SafeText.quoted(name) + ": is open already");
    }
    checkTarget(target);
    try {
      StagedFile file = new StagedFile(target);
      staged.add(file);
      return file;
    } catch (IOException trouble) {
      throw FileTroubles.clear(StagedFile.WRITING, target, trouble);
    }
  }

  /**
   * Moves all files into place.
   *
   * @throws IOException if one of them cannot be; then all are as they were
   */
  public void commit() throws IOException {
    for (StagedFile file : staged) {
      file.finish();
      checkTarget(file.target());
    }
    int moved = 0;
    try {
      // One move is atomic by itself; for more, what is replaced is kept until all are done.
      if (staged.size() > 1) {
        for (StagedFile file : staged) {
          file.keepOld();
        }
      }
      for (StagedFile file : staged) {
        file.moveIn(mover);
        moved++;
      }
    } catch (IOException trouble) {
      for (StagedFile file : staged.subList(0, moved)) {
        file.moveBack(trouble);
      }
      Path at = staged.get(Math.min(moved, staged.size() - 1)).target();
      throw FileTroubles.clear(StagedFile.WRITING, at, trouble);
    }
    // So that the names survive a power cut.
    Folders.flush(folder);
    close();
  }

  /** Discards what was not moved into place. */
  @Override
  public void close() {
    staged.forEach(StagedFile::discard);
    staged.clear();
  }

  static void checkTarget(Path target) throws IOException {
    if (Files.isDirectory(target)) {
      throw new IOException(FileTroubles.text(target, StagedFile.WRITING + ": it is a folder"));
    }
    if (Files.exists(target) && !Files.isRegularFile(target)) {
      throw new IOException(
          FileTroubles.text(target, StagedFile.WRITING + ": it is a pipe, a device or the like"));
    }
    if (Files.exists(target) && !Files.isWritable(target)) {
      throw new IOException(
          FileTroubles.text(target, StagedFile.WRITING + ": it is write-protected"));
    }
  }

  private static boolean isPlainName(String name) {
    boolean safe = name.chars().noneMatch(c -> c == '/' || c == '\\' || c == ':' || c < ' ');
    return safe && !name.isBlank() && !name.equals(".") && !name.equals("..");
  }
}
