package lampwright.engine.project;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** Saves projects, and reads the bytes of their files. */
public final class ProjectFiles {
  private ProjectFiles() {}

  /**
   * The bytes of a project file, for {@link ProjectReader#read(String, byte[])}. Of a file that is
   * too large, only as many as show that.
   *
   * @throws java.nio.file.NoSuchFileException if there is no such file
   * @throws IOException if it cannot be read; its message names the file and says why
   */
  public static byte[] contents(Path file) throws IOException {
    if (Files.isDirectory(file)) {
      throw new IOException(FileTroubles.text(file, "is a folder, not a project file"));
    }
    try (InputStream in = Files.newInputStream(file)) {
      return in.readNBytes(ProjectReader.MAX_BYTES + 1);
    } catch (NoSuchFileException missing) {
      NoSuchFileException clear =
          new NoSuchFileException(
              Harmless.text(file.toString(), Harmless.MAX_NAME),
              null,
              "could not read: there is no such file");
      clear.initCause(missing);
      throw clear;
    } catch (FileSystemException trouble) {
      throw FileTroubles.clear("could not read", file, trouble);
    }
  }

  /**
   * Saves a project. The file is replaced at once by a whole one; on any failure it stays as it
   * was. A symbolic link stays, and the file that it names is replaced.
   *
   * @throws IOException if it cannot be written; its message names the file and says why
   */
  public static void save(Project project, Path file) throws IOException {
    byte[] bytes = ProjectWriter.write(project).getBytes(StandardCharsets.UTF_8);
    Path target = file.toAbsolutePath();
    if (Files.isDirectory(target)) {
      throw new IOException(FileTroubles.text(file, "could not write: it is a folder"));
    }
    try {
      if (Files.isSymbolicLink(target) && Files.exists(target)) {
        target = target.toRealPath();
      }
    } catch (IOException trouble) {
      throw FileTroubles.clear("could not write", file, trouble);
    }
    Path folder = target.getParent();
    if (folder == null || !Files.isDirectory(folder)) {
      throw new IOException(FileTroubles.text(file, "could not write: there is no such folder"));
    }
    try (StagedFiles files = StagedFiles.in(folder)) {
      try (OutputStream out = files.open(String.valueOf(target.getFileName()))) {
        out.write(bytes);
      }
      files.commit();
    }
  }
}
