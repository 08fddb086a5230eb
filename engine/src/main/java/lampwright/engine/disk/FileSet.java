package lampwright.engine.disk;

import java.io.Closeable;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import lampwright.engine.check.SafeText;

/**
 * Files of a folder and of the folders in it, exchanged as one set. They are written into a work
 * folder first. {@link #commit()} writes down what will move before it moves anything: a program
 * that is killed before that leaves every file as it was, and one that is killed after it leaves a
 * set that the next program to write here completes. A failure leaves every file as it was.
 *
 * <p>One program at a time writes a folder. Messages of the exceptions name the file and the
 * reason. Not for use by several threads.
 */
public final class FileSet implements Closeable {
  /** The folder in which a set is made ready; whatever it holds is ours. */
  public static final String WORK_FOLDER = ".lampwright-export";

  private final Path folder;
  private final WorkFolder work;
  private final Mover mover;
  private final boolean madeFolder;
  private final Map<String, StagedSetFile> written = new LinkedHashMap<>();
  private final Set<String> dropped = new LinkedHashSet<>();
  private boolean committed;

  private FileSet(Path folder, WorkFolder work, Mover mover, boolean madeFolder) {
    this.folder = folder;
    this.work = work;
    this.mover = mover;
    this.madeFolder = madeFolder;
  }

  /**
   * A set of files of this folder, which is made if it is missing. Completes or clears away what a
   * program left that was killed here.
   *
   * @throws IOException if it can't be made, or another program writes here
   */
  public static FileSet in(Path folder) throws IOException {
    return in(folder, Mover.ATOMIC);
  }

  static FileSet in(Path folder, Mover mover) throws IOException {
    boolean made = Folders.makeToWrite(folder);
    try {
      WorkFolder work = WorkFolder.in(folder);
      try {
        work.recover(mover);
      } catch (IOException trouble) {
        work.close();
        throw trouble;
      }
      return new FileSet(folder, work, mover, made);
    } catch (IOException trouble) {
      if (made) {
        removeEmpty(folder);
      }
      throw trouble;
    }
  }

  private static void removeEmpty(Path folder) {
    try {
      Files.deleteIfExists(folder);
    } catch (IOException kept) {
      // It is not empty: another program has put something there.
      return;
    }
  }

  /**
   * Opens a file to write; close it before the next is opened.
   *
   * @param name relative to the folder, with {@code /} between the parts
   * @throws IllegalArgumentException if it leads out of the folder, or is in the set already
   * @throws IOException if something is there that can't be replaced, or nothing can be written
   */
  public OutputStream open(String name) throws IOException {
    SetPlan.checkName(name);
    if (written.containsKey(name) || dropped.contains(name)) {
      throw new IllegalArgumentException("name: " + SafeText.quoted(name) + ": is in the set");
    }
    checkPlace(name);
    StagedSetFile file = StagedSetFile.open(work.fresh(name), folder.resolve(name));
    written.put(name, file);
    return file;
  }

  /**
   * Removes a file with the exchange of the set, if it is there.
   *
   * @param name as of {@link #open}
   */
  public void drop(String name) throws IOException {
    SetPlan.checkName(name);
    if (written.containsKey(name)) {
      throw new IllegalArgumentException("name: " + SafeText.quoted(name) + ": is in the set");
    }
    checkPlace(name);
    dropped.add(name);
  }

  /**
   * Exchanges the files.
   *
   * @throws IOException if one of them can't be; then all are as they were
   */
  public void commit() throws IOException {
    for (StagedSetFile file : written.values()) {
      file.close();
    }
    List<SetPlan.Step> steps = new ArrayList<>();
    for (String name : written.keySet()) {
      checkPlace(name);
      steps.add(new SetPlan.Step(there(name) ? SetPlan.Change.REPLACE : SetPlan.Change.ADD, name));
    }
    for (String name : dropped) {
      checkPlace(name);
      if (there(name)) {
        steps.add(new SetPlan.Step(SetPlan.Change.DROP, name));
      }
    }
    work.exchange(new SetPlan(steps), mover);
    committed = true;
    close();
  }

  private boolean there(String name) {
    return Files.exists(folder.resolve(name), LinkOption.NOFOLLOW_LINKS);
  }

  /** Discards what was not exchanged; a folder that was made for it goes too. */
  @Override
  public void close() {
    written.values().forEach(StagedSetFile::discard);
    work.close();
    if (madeFolder && !committed) {
      removeEmpty(folder);
    }
  }

  // A link would be replaced, or lead out of the folder; who made it meant something by it.
  private void checkPlace(String name) throws IOException {
    Path at = folder;
    for (Path part : Path.of(name)) {
      if (!Files.isDirectory(at)) {
        if (Files.exists(at)) {
          throw new IOException(FileTroubles.text(at, NamedOutput.WRITING + ": not a folder"));
        }
        return;
      }
      at = at.resolve(part);
      if (Files.isSymbolicLink(at)) {
        throw new IOException(
            FileTroubles.text(at, NamedOutput.WRITING + ": it is a link; remove it first"));
      }
    }
    StagedFile.checkTarget(at);
  }
}
