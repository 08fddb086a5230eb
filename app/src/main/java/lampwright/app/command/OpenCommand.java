package lampwright.app.command;

import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import lampwright.app.workshop.WorkshopLauncher;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Opens the workshop. */
@Command(
    name = "open",
    mixinStandardHelpOptions = true,
    description = {
      "Opens the workshop, with a project or with a new one.",
      "Errors in the project file are shown there."
    },
    footer = {
      "",
      "Examples:",
      "  lampwright open samples/recovery-tractor.lampwright.json",
      "  lampwright"
    })
final class OpenCommand implements Callable<Integer> {
  private final Terminal terminal;

  @Parameters(
      paramLabel = "PROJECT",
      arity = "0..1",
      description = "the project file (*.lampwright.json). Default: a new project")
  private Optional<Path> file = Optional.empty();

  OpenCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws NoSuchFileException {
    return openFile(terminal, file);
  }

  /**
   * Opens the workshop and waits until it is closed.
   *
   * @throws NoSuchFileException if there is no such file; then no window is opened
   */
  static int openFile(Terminal terminal, Optional<Path> file) throws NoSuchFileException {
    if (file.isPresent() && !Files.exists(file.get())) {
      throw new NoSuchFileException(file.get().toString());
    }
    return open(terminal, file);
  }

  private static int open(Terminal terminal, Optional<Path> file) {
    Optional<String> trouble = WorkshopLauncher.open(file);
    trouble.ifPresent(terminal::refuse);
    return trouble.isPresent() ? ExitCode.NO_READ_OR_WRITE : ExitCode.DONE;
  }
}
