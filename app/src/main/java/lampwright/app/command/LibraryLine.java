package lampwright.app.command;

import java.util.function.Function;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Command lines as the library reads them that describes commands by their annotations. */
final class LibraryLine {
  private final Terminal terminal;
  private final Failures failures;
  private final Function<String[], CommandLine> commands;

  private LibraryLine(Terminal terminal, Function<String[], CommandLine> commands) {
    this.terminal = terminal;
    this.failures = new Failures(terminal);
    this.commands = commands;
  }

  /** Those that ask for the program's commands. */
  static LibraryLine of(Terminal terminal) {
    return new LibraryLine(terminal, words -> Commands.of(terminal, words));
  }

  /** Those of one command. */
  static LibraryLine of(Terminal terminal, Object command) {
    return new LibraryLine(
        terminal, words -> new CommandLine(command, new TerminalFactory(terminal)));
  }

  /** Runs one and returns its exit code. */
  int run(String... arguments) {
    return commandLine(arguments).execute(arguments);
  }

  // What is set here is passed on to the commands that are there.
  private CommandLine commandLine(String... arguments) {
    CommandLine line = commands.apply(arguments);
    line.setOut(terminal.out());
    line.setErr(terminal.err());
    line.setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF));
    line.setUsageHelpLongOptionsMaxWidth(30);
    line.setUsageHelpWidth(100);
    line.setParameterExceptionHandler((wrong, words) -> wrongCommandLine(wrong));
    line.setExecutionExceptionHandler((fault, command, parsed) -> failures.failed(fault));
    return line;
  }

  private int wrongCommandLine(ParameterException wrong) {
    CommandLine command = wrong.getCommandLine();
    failures.say(plain(String.valueOf(wrong.getMessage())));
    UnmatchedArgumentException.printSuggestions(wrong, terminal.err());
    terminal.err().println("Try '" + command.getCommandSpec().qualifiedName() + " --help'.");
    return ExitCode.WRONG_COMMAND_LINE;
  }

  // The library names types of Java, and begins some messages as no other of ours does.
  private static String plain(String message) {
    return message
        .replaceFirst("^Error: ", "")
        .replaceFirst("(?s)cannot convert ('.*') to BigDecimal \\(.*", "$1 is not a number")
        .replaceFirst("is not a double$", "is not a number")
        .replaceFirst("is not an int$", "is not a whole number");
  }
}
