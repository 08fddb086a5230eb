package lampwright.app.workshop.disk;

import java.io.IOException;
import java.nio.file.Path;

/** The folder of a project, and the files in it that the project names. */
public final class ProjectFolder {
  private ProjectFolder() {}

  /**
   * Whether a file that is in a folder leads out of it by a link: it could show what is none of the
   * project's.
   *
   * @throws IOException if there is no such file
   */
  public static boolean leadsOut(Path folder, Path file) throws IOException {
    return !file.toRealPath().startsWith(folder.toRealPath());
  }
}
