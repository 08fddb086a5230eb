package lampwright.engine.json;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import lampwright.engine.disk.FileTroubles;
import lampwright.engine.disk.Leftovers;
import lampwright.engine.disk.RegularFile;
import lampwright.engine.disk.WholeFile;
import lampwright.engine.document.Project;

/** Saves projects, and reads the bytes of their files. */
public final class ProjectFiles {
  private static final int MAX_LINKS = 40;

  private ProjectFiles() {}

  /**
   * The bytes of a project file, for {@link ProjectReader#read(String, byte[])}. Of a file that is
   * too large, only as many as show that.
   *
   * @throws java.nio.file.NoSuchFileException if there is no such file
   * @throws IOException if it is no regular file or cannot be read; its message names the file and
   *     says why
   */
  public static byte[] contents(Path file) throws IOException {
    return RegularFile.start(file, ProjectReader.MAX_BYTES + 1);
  }

  /**
   * Saves a project. The file is replaced at once by a whole one; on any failure it stays as it
   * was. A symbolic link stays, and the file that it names is replaced, or made if it is missing.
   * What killed processes left in the folder is removed.
   *
   * @throws IOException if it cannot be written; its message names the file and says why
   */
  public static void save(Project project, Path file) throws IOException {
    String text = ProjectWriter.write(project);
    Path target = file.toAbsolutePath();
    if (Files.isDirectory(target)) {
      throw new IOException(FileTroubles.text(file, "could not write: it is a folder"));
    }
    try {
      target = named(target);
    } catch (IOException trouble) {
      throw FileTroubles.clear("could not write", file, trouble);
    }
    Path folder = target.getParent();
    if (folder == null || !Files.isDirectory(folder)) {
      throw new IOException(FileTroubles.text(file, "could not write: there is no such folder"));
    }
    Leftovers.sweep(folder);
    WholeFile.write(target, text);
  }

  private static Path named(Path file) throws IOException {
    Path at = file;
    for (int links = 0; Files.isSymbolicLink(at); links++) {
      if (links == MAX_LINKS) {
        throw new FileSystemException(file.toString(), null, "too many links to links");
      }
      at = at.resolveSibling(Files.readSymbolicLink(at));
    }
    return at;
  }
}
