package lampwright.app.command;

import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;

/** The program itself: names the commands. */
@Command(
    name = "lampwright",
    mixinStandardHelpOptions = true,
    versionProvider = ProgramVersion.class,
    synopsisSubcommandLabel = "COMMAND",
    subcommands = {
      OpenCommand.class,
      CheckCommand.class,
      MeasureCommand.class,
      ExportCommand.class,
      ProveCommand.class,
      PixelsCommand.class
    },
    description = {
      "Designs the lighting of a scale model, checks that it fits the hardware, and exports it to a"
          + " microcontroller.",
      "Without a command, opens the workshop.",
      ""
    },
    commandListHeading = "%nCommands:%n",
    footer = {
      "",
      "Examples:",
      "  lampwright check samples/recovery-tractor.lampwright.json",
      "  lampwright measure samples/recovery-tractor.lampwright.json",
      "  lampwright export samples/recovery-tractor.lampwright.json --to out --as c,bin",
      "",
      "Exit codes: 0 done; 1 the project has errors, or does not fit the request; 2 wrong command line;"
          + " 3 I/O error, or an internal error."
    })
final class LampwrightCommand implements Callable<Integer> {
  private final Terminal terminal;

  LampwrightCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() {
    return OpenCommand.open(terminal, Optional.empty());
  }
}
