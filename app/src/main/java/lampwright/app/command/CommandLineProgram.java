package lampwright.app.command;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import lampwright.engine.project.Harmless;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportRefusedException;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** The whole command line: reads the words, runs the command, gives the exit code. */
public final class CommandLineProgram {
  private final Terminal terminal;
  private final CommandLine commands;

  private CommandLineProgram(Terminal terminal) {
    this.terminal = terminal;
    this.commands = new CommandLine(new LampwrightCommand(terminal), new TerminalFactory(terminal));
    commands.setOut(terminal.out());
    commands.setErr(terminal.err());
    commands.setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF));
    commands.setUsageHelpLongOptionsMaxWidth(30);
    commands.setUsageHelpWidth(100);
    commands.setParameterExceptionHandler((wrong, arguments) -> wrongCommandLine(wrong));
    commands.setExecutionExceptionHandler((fault, command, parsed) -> failed(fault));
  }

  /** The program on the streams of this process. */
  public static CommandLineProgram onSystemStreams() {
    return on(Terminal.ofSystem());
  }

  static CommandLineProgram on(Terminal terminal) {
    return new CommandLineProgram(terminal);
  }

  /** Runs one command line and returns its exit code. */
  public int run(String... arguments) {
    int code;
    try {
      code = commands.execute(arguments);
    } catch (OutOfMemoryError tooLarge) {
      terminal.endProgress();
      say(
          "out of memory: give it more, such as LAMPWRIGHT_JAVA_OPTIONS=-Xmx4g, or divide the"
              + " project");
      code = ExitCode.NO_READ_OR_WRITE;
    }
    terminal.out().flush();
    terminal.err().flush();
    return code;
  }

  private int wrongCommandLine(ParameterException wrong) {
    CommandLine command = wrong.getCommandLine();
    say(String.valueOf(wrong.getMessage()));
    UnmatchedArgumentException.printSuggestions(wrong, terminal.err());
    terminal.err().println("Try '" + command.getCommandSpec().qualifiedName() + " --help'.");
    return ExitCode.WRONG_COMMAND_LINE;
  }

  private int failed(Exception fault) throws Exception {
    if (fault instanceof IOException io) {
      return noReadOrWrite(io);
    }
    if (fault instanceof UncheckedIOException io) {
      return noReadOrWrite(io.getCause());
    }
    if (fault instanceof ExportRefusedException) {
      terminal.endProgress();
      say(String.valueOf(fault.getMessage()));
      return ExitCode.PROJECT_HAS_ERRORS;
    }
    if (fault instanceof CancelledException) {
      say(String.valueOf(fault.getMessage()));
      return ExitCode.NO_READ_OR_WRITE;
    }
    throw fault;
  }

  private int noReadOrWrite(IOException fault) {
    terminal.endProgress();
    say(words(fault));
    return ExitCode.NO_READ_OR_WRITE;
  }

  // The library's file exceptions often carry only the name of the file.
  private static String words(IOException fault) {
    if (fault instanceof NoSuchFileException missing) {
      return missing.getFile() + ": no such file";
    }
    if (fault instanceof AccessDeniedException denied) {
      return denied.getFile() + ": permission denied";
    }
    if (fault instanceof FileSystemException system && system.getReason() != null) {
      return system.getFile() + ": " + system.getReason();
    }
    return fault.getMessage() == null ? fault.getClass().getSimpleName() : fault.getMessage();
  }

  private void say(String message) {
    terminal.err().println("lampwright: " + Harmless.text(message, Harmless.MAX_MESSAGE));
  }
}
