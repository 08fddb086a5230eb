package lampwright.app.command;

import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import lampwright.app.workshop.WorkshopLauncher;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Opens the workshop. */
@Command(
    name = OpenCommand.NAME,
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
  static final String NAME = "open";

  private final Terminal terminal;

  @Parameters(
      paramLabel = "PROJECT",
      arity = "0..1",
      description = "the project file (*.lampwright.json). Default: a new project")
  private Optional<Path> file = Optional.empty();

  OpenCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  private OpenCommand(Terminal terminal, Optional<Path> file) {
    this.terminal = terminal;
    this.file = file;
  }

  /** The command of a plain command line, also of one that has nothing but a file that is there. */
  static Optional<OpenCommand> plain(Terminal terminal, String... arguments) {
    boolean named = arguments.length > 0 && arguments[0].equals(NAME);
    List<String> words = List.of(arguments).subList(named ? 1 : 0, arguments.length);
    if (words.isEmpty()) {
      return Optional.of(new OpenCommand(terminal, Optional.empty()));
    }
    String file = words.get(0);
    if (words.size() > 1 || !PlainWords.plain(file) || (!named && !isFile(file))) {
      return Optional.empty();
    }
    return Optional.of(new OpenCommand(terminal, Optional.of(Path.of(file))));
  }

  private static boolean isFile(String word) {
    return !isCommand(word) && Files.exists(Path.of(word));
  }

  /** Whether a word can be that of a command, if a misspelt one, rather than a file. */
  static boolean isCommand(String word) {
    return word.matches("[A-Za-z-]+");
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
