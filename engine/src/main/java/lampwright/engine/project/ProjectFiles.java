package lampwright.engine.project;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Saves projects. */
public final class ProjectFiles {
  private ProjectFiles() {}

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
