package lampwright.engine.project;

import java.io.BufferedOutputStream;
import java.io.Closeable;
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
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

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

  private static final String WRITING = "could not write";
  private static final Mover ATOMIC =
      (from, to) -> Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);

  private final Path folder;
  private final Mover mover;
  private final List<Staged> staged = new ArrayList<>();

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
    try {
      if (!Files.isDirectory(folder)) {
        Files.createDirectories(folder);
      }
    } catch (java.nio.file.FileAlreadyExistsException file) {
      throw new IOException(FileTroubles.text(folder, "could not make the folder: a file"), file);
    } catch (IOException trouble) {
      throw FileTroubles.clear("could not make the folder", folder, trouble);
    }
    return new StagedFiles(folder, ATOMIC);
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
          "name: " + Harmless.quoted(name) + ": needs the name of a file, without a folder");
    }
    Path target = folder.resolve(name);
    if (staged.stream().anyMatch(s -> s.target.equals(target))) {
      throw new IllegalArgumentException("name: " + Harmless.quoted(name) + ": is open already");
    }
    checkTarget(target);
    try {
      Staged file = new Staged(target, beside(target));
      staged.add(file);
      return file;
    } catch (IOException trouble) {
      throw FileTroubles.clear(WRITING, target, trouble);
    }
  }

  /**
   * Moves all files into place.
   *
   * @throws IOException if one of them cannot be; then all are as they were
   */
  public void commit() throws IOException {
    for (Staged file : staged) {
      file.finish();
      checkTarget(file.target);
    }
    int moved = 0;
    try {
      // One move is atomic by itself; for more, what is replaced is kept until all are done.
      if (staged.size() > 1) {
        for (Staged file : staged) {
          file.keepOld();
        }
      }
      for (Staged file : staged) {
        file.moveIn(mover);
        moved++;
      }
    } catch (IOException trouble) {
      for (Staged file : staged.subList(0, moved)) {
        file.moveBack(trouble);
      }
      Path at = staged.get(Math.min(moved, staged.size() - 1)).target;
      throw FileTroubles.clear(WRITING, at, trouble);
    }
    forceFolder();
    close();
  }

  /** Discards what was not moved into place. */
  @Override
  public void close() {
    staged.forEach(Staged::discard);
    staged.clear();
  }

  private static void checkTarget(Path target) throws IOException {
    if (Files.isDirectory(target)) {
      throw new IOException(FileTroubles.text(target, WRITING + ": it is a folder"));
    }
    if (Files.exists(target) && !Files.isWritable(target)) {
      throw new IOException(FileTroubles.text(target, WRITING + ": it is write-protected"));
    }
  }

  private static boolean isPlainName(String name) {
    boolean safe = name.chars().noneMatch(c -> c == '/' || c == '\\' || c == ':' || c < ' ');
    return safe && !name.isBlank() && !name.equals(".") && !name.equals("..");
  }

  private static Path beside(Path target) {
    return target.resolveSibling("." + target.getFileName() + "." + UUID.randomUUID() + ".part");
  }

  // So that the names survive a power cut; not every system can do that for a folder.
  private void forceFolder() {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException unsupported) {
      return;
    }
  }

  /** One file beside its place. */
  private static final class Staged extends OutputStream {
    private final Path target;
    private final Path part;
    private final FileChannel channel;
    private final OutputStream out;
    private boolean hasOld;

    Staged(Path target, Path part) throws IOException {
      this.target = target;
      this.part = part;
      this.channel =
          FileChannel.open(part, StandardOpenOption.WRITE, StandardOpenOption.CREATE_NEW);
      this.out = new BufferedOutputStream(Channels.newOutputStream(channel), 1 << 16);
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
        channel.force(true);
        channel.close();
        copyPermissions();
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

    void moveIn(Mover mover) throws IOException {
      mover.move(part, target);
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
}
