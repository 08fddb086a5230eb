package lampwright.engine.disk;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Where a set of files is made ready and what was agreed to is written down:
 *
 * <pre>
 * lock      held by the program that writes; the system lets go of it if that is killed
 * new/      the files to come
 * old/      the files that they replace, until all have moved
 * plan      what moves: from the instant this exists the set is complete, and only has to be moved
 * undo      the same, from the instant a move failed: then the old files come back
 * </pre>
 */
final class WorkFolder {
  private static final String LOCK = "lock";
  private static final String PLAN = "plan";
  private static final String UNDO = "undo";
  private static final String NEW = "new";
  private static final String OLD = "old";

  private final Path folder;
  private final Path work;
  private final FileChannel lock;
  private boolean keep;

  private WorkFolder(Path folder, Path work, FileChannel lock) {
    this.folder = folder;
    this.work = work;
    this.lock = lock;
  }

  /**
   * The work folder of a folder, locked for this program.
   *
   * @throws IOException if another program has it, or it can't be made
   */
  static WorkFolder in(Path folder) throws IOException {
    Path work = folder.resolve(FileSet.WORK_FOLDER);
    for (int tries = 0; tries < 5; tries++) {
      try {
        if (!Files.isDirectory(work, LinkOption.NOFOLLOW_LINKS)) {
          Files.createDirectory(work);
        }
        WorkFolder locked = locked(folder, work);
        if (locked != null) {
          return locked;
        }
      } catch (NoSuchFileException gone) {
        // The program that had it has just removed it.
      } catch (OverlappingFileLockException here) {
        break;
      } catch (IOException trouble) {
        throw FileTroubles.clear(NamedOutput.WRITING, folder, trouble);
      }
    }
    throw new IOException(
        FileTroubles.text(
            folder, NamedOutput.WRITING + ": another program is exporting here; try again later"));
  }

  private static @Nullable WorkFolder locked(Path folder, Path work) throws IOException {
    Path file = work.resolve(LOCK);
    FileChannel channel =
        FileChannel.open(file, StandardOpenOption.WRITE, StandardOpenOption.CREATE);
    boolean isHeld = false;
    boolean ours = false;
    try {
      FileLock held = channel.tryLock();
      isHeld = held != null;
      if (isHeld) {
        // What is locked may have been removed by the program that had it before.
        byte[] token = UUID.randomUUID().toString().getBytes(UTF_8);
        channel.truncate(0);
        channel.write(ByteBuffer.wrap(token));
        ours = Arrays.equals(RegularFile.read(file, token.length), token);
      }
      return ours ? new WorkFolder(folder, work, channel) : null;
    } catch (IOException trouble) {
      if (isHeld) {
        removeUnused(work);
      }
      throw trouble;
    } finally {
      if (!ours) {
        channel.close();
      }
    }
  }

  // On a full disk not even the token can be written; what another program left for later stays.
  private static void removeUnused(Path work) {
    try {
      List<Path> all;
      try (Stream<Path> inside = Files.list(work)) {
        all = inside.toList();
      }
      if (all.equals(List.of(work.resolve(LOCK)))) {
        Files.delete(work.resolve(LOCK));
        Files.delete(work);
      }
    } catch (IOException left) {
      // The next program to write here clears it away.
      return;
    }
  }

  /** Where a new file is written; the folders to it are made. */
  Path fresh(String name) throws IOException {
    return madeReady(NEW, name);
  }

  private Path madeReady(String part, String name) throws IOException {
    Path file = work.resolve(part).resolve(name);
    try {
      Files.createDirectories(file.resolveSibling(""));
    } catch (IOException trouble) {
      throw FileTroubles.clear(NamedOutput.WRITING, folder.resolve(name), trouble);
    }
    return file;
  }

  /** Completes a set that was agreed to, or takes one back that failed; clears all else away. */
  void recover(Mover mover) throws IOException {
    if (Files.exists(work.resolve(PLAN))) {
      SetPlan plan = SetPlan.read(work.resolve(PLAN));
      forward(plan, mover);
      Files.delete(work.resolve(PLAN));
    } else if (Files.exists(work.resolve(UNDO))) {
      back(SetPlan.read(work.resolve(UNDO)));
      Files.delete(work.resolve(UNDO));
    }
    clear();
  }

  void exchange(SetPlan plan, Mover mover) throws IOException {
    for (SetPlan.Step step : plan.steps()) {
      keepOld(step);
    }
    flushAll();
    writePlan(plan);
    try {
      forward(plan, mover);
    } catch (IOException trouble) {
      takeBack(plan, trouble);
      throw trouble;
    }
    Files.delete(work.resolve(PLAN));
  }

  private void flushAll() throws IOException {
    try (Stream<Path> all = Files.walk(work)) {
      all.filter(Files::isDirectory).forEach(Folders::flush);
    }
  }

  private void writePlan(SetPlan plan) throws IOException {
    Path part = work.resolve("plan.part");
    try {
      try (FileChannel channel =
          FileChannel.open(part, StandardOpenOption.WRITE, StandardOpenOption.CREATE)) {
        ByteBuffer bytes = ByteBuffer.wrap(plan.bytes());
        while (bytes.hasRemaining()) {
          channel.write(bytes);
        }
        channel.force(true);
      }
      Files.move(part, work.resolve(PLAN), StandardCopyOption.ATOMIC_MOVE);
      Folders.flush(work);
    } catch (IOException trouble) {
      throw FileTroubles.clear(NamedOutput.WRITING, work, trouble);
    }
  }

  private void keepOld(SetPlan.Step step) throws IOException {
    if (step.change() == SetPlan.Change.ADD) {
      return;
    }
    Path place = folder.resolve(step.name());
    Path old = madeReady(OLD, step.name());
    try {
      Replaced.keep(place, old);
      if (step.change() == SetPlan.Change.REPLACE) {
        Replaced.permissions(place, work.resolve(NEW).resolve(step.name()));
      }
    } catch (IOException trouble) {
      throw FileTroubles.clear(NamedOutput.WRITING, place, trouble);
    }
  }

  // May be begun anew wherever it was stopped.
  private void forward(SetPlan plan, Mover mover) throws IOException {
    Set<Path> changed = new LinkedHashSet<>();
    for (SetPlan.Step step : plan.steps()) {
      Path place = folder.resolve(step.name());
      Path fresh = work.resolve(NEW).resolve(step.name());
      try {
        if (step.change() == SetPlan.Change.DROP) {
          Files.deleteIfExists(place);
        } else if (Files.exists(fresh)) {
          Folders.make(place.resolveSibling(""));
          mover.move(fresh, place);
        }
      } catch (IOException trouble) {
        throw FileTroubles.clear(NamedOutput.WRITING, place, trouble);
      }
      changed.add(place.resolveSibling(""));
    }
    changed.forEach(Folders::flush);
  }

  private void takeBack(SetPlan plan, IOException trouble) {
    try {
      Files.move(work.resolve(PLAN), work.resolve(UNDO), StandardCopyOption.ATOMIC_MOVE);
      back(plan);
      Files.delete(work.resolve(UNDO));
    } catch (IOException second) {
      // The old files are still here, and the next program to write brings them back.
      keep = true;
      trouble.addSuppressed(second);
    }
  }

  private void back(SetPlan plan) throws IOException {
    for (SetPlan.Step step : plan.steps()) {
      Path place = folder.resolve(step.name());
      Path old = work.resolve(OLD).resolve(step.name());
      try {
        if (step.change() != SetPlan.Change.ADD) {
          if (Files.exists(old)) {
            Files.move(old, place, StandardCopyOption.ATOMIC_MOVE);
          }
        } else {
          if (!Files.exists(work.resolve(NEW).resolve(step.name()))) {
            Files.deleteIfExists(place);
          }
          removeEmptyFolders(step.name());
        }
      } catch (IOException trouble) {
        throw FileTroubles.clear("could not restore", place, trouble);
      }
      Folders.flush(place.resolveSibling(""));
    }
  }

  // Folders that were made for a file that did not stay, from the innermost outwards.
  private void removeEmptyFolders(String name) throws IOException {
    Path relative = Path.of(name);
    for (int parts = relative.getNameCount() - 1; parts > 0; parts--) {
      Path at = folder.resolve(relative.subpath(0, parts));
      if (Files.isDirectory(at)) {
        try (Stream<Path> inside = Files.list(at)) {
          if (inside.findAny().isPresent()) {
            return;
          }
        }
        Files.delete(at);
      }
    }
  }

  private void clear() throws IOException {
    for (String part : List.of(NEW, OLD, "plan.part")) {
      deleteTree(work.resolve(part));
    }
  }

  private static void deleteTree(Path start) throws IOException {
    if (!Files.exists(start, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    List<Path> all;
    try (Stream<Path> found = Files.walk(start)) {
      all = found.sorted(Comparator.reverseOrder()).toList();
    }
    for (Path path : all) {
      Files.delete(path);
    }
  }

  /** Removes the work folder and lets go of it, unless it holds what must come back. */
  void close() {
    try {
      try {
        if (!keep && lock.isOpen()) {
          clear();
          // Removed while it is still held, so that nobody else's is.
          Files.deleteIfExists(work.resolve(LOCK));
          Files.deleteIfExists(work);
        }
      } finally {
        lock.close();
      }
    } catch (IOException left) {
      // The next program to write here clears it away.
      return;
    }
  }
}
