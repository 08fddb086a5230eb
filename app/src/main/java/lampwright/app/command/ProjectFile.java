package lampwright.app.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import lampwright.engine.check.SafeText;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.json.ReadResult;
import picocli.CommandLine.Parameters;

/** The project that a command works on. */
final class ProjectFile {
  @Parameters(paramLabel = "PROJECT", description = "the project file (*.lampwright.json)")
  private Path file;

  ProjectFile() {}

  ProjectFile(Path file) {
    this.file = file;
  }

  /** The file as named on the command line. */
  Path path() {
    return file;
  }

  /** Its name as messages show it. */
  String shown() {
    return shown(file);
  }

  /** The name of a file or folder as messages show it. */
  static String shown(Path path) {
    return SafeText.text(path.toString(), SafeText.MAX_MESSAGE);
  }

  /**
   * Reads it and says everything that is wrong with it on standard error.
   *
   * @return empty if the project has errors
   */
  Optional<Project> read(Terminal terminal) throws IOException {
    return result(terminal).project();
  }

  /** The same with where everything is in the file. */
  ReadResult result(Terminal terminal) throws IOException {
    ReadResult result = ProjectReader.read(file);
    result.lines().forEach(terminal.err()::println);
    return result;
  }
}
