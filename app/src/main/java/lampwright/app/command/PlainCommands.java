package lampwright.app.command;

import java.util.Optional;
import java.util.concurrent.Callable;

/** The commands that a plain command line can ask for. */
final class PlainCommands {
  private PlainCommands() {}

  /** The command that a plain command line asks for; empty where it is not plain. */
  static Optional<? extends Callable<Integer>> of(Terminal terminal, String... arguments) {
    return switch (arguments.length == 0 ? "" : arguments[0]) {
      case "check" -> CheckCommand.plain(terminal, arguments);
      case "measure" -> MeasureCommand.plain(terminal, arguments);
      default -> OpenCommand.plain(terminal, arguments);
    };
  }
}
