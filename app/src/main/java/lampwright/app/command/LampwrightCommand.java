package lampwright.app.command;

import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The program itself; {@link Commands} has its commands. */
@Command(
    name = Commands.PROGRAM,
    mixinStandardHelpOptions = true,
    versionProvider = ProgramVersion.class,
    synopsisSubcommandLabel = "[COMMAND]",
    description = {
      "Designs the lighting of a scale model, checks that it fits the hardware, and exports it to a"
          + " microcontroller.",
      "Without a command, opens the workshop, with a project if a file is given.",
      ""
    },
    commandListHeading = "%nCommands:%n",
    footer = {
      "",
      "Examples:",
      "  lampwright samples/harbour-dusk.lampwright.json",
      "  lampwright new launch tug.lampwright.json",
      "  lampwright check samples/recovery-tractor.lampwright.json",
      "  lampwright measure samples/recovery-tractor.lampwright.json",
      "  lampwright export samples/recovery-tractor.lampwright.json --to out --as c,bin",
      "",
      "Exit codes: 0 done; 1 the project has errors, or does not fit the request; 2 wrong command line;"
          + " 3 I/O error, or an internal error."
    })
final class LampwrightCommand implements Callable<Integer> {
  private final Terminal terminal;

  @Spec private CommandSpec spec;

  @Parameters(
      paramLabel = "PROJECT",
      arity = "0..1",
      description = "the project file (*.lampwright.json) to open in the workshop")
  private Optional<Path> file = Optional.empty();

  LampwrightCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws NoSuchFileException {
    if (file.isPresent()
        && !Files.exists(file.get())
        && OpenCommand.isCommand(file.get().toString())) {
      throw new ParameterException(
          spec.commandLine(),
          UnknownWord.of("COMMAND", file.get().toString(), spec.subcommands().keySet()));
    }
    return OpenCommand.openFile(terminal, file);
  }
}
