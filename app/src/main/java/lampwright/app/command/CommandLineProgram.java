package lampwright.app.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import java.util.function.Function;
import lampwright.engine.check.SafeText;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportRefusedException;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** The whole command line: reads the words, runs the command, gives the exit code. */
public final class CommandLineProgram {
  private final Terminal terminal;
  private final Function<String[], Optional<? extends Callable<Integer>>> plainly;
  private final Function<String[], CommandLine> commands;

  private CommandLineProgram(
      Terminal terminal,
      Function<String[], Optional<? extends Callable<Integer>>> plainly,
      Function<String[], CommandLine> commands) {
    this.terminal = terminal;
    this.plainly = plainly;
    this.commands = commands;
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
    line.setExecutionExceptionHandler((fault, command, parsed) -> failed(fault));
    return line;
  }

  /**
   * Runs one command line on the streams of this process and returns its exit code. Whatever goes
   * wrong, also on other threads, is said in a line.
   */
  public static int runOnSystemStreams(String... arguments) {
    PrintWriter err = new PrintWriter(System.err, true, Terminal.encoding("stderr.encoding"));
    Thread.setDefaultUncaughtExceptionHandler((thread, fault) -> InternalFault.say(fault, err));
    try {
      return on(Terminal.ofSystem()).run(arguments);
    } catch (RuntimeException | Error fault) {
      InternalFault.say(fault, err);
      return ExitCode.NO_READ_OR_WRITE;
    }
  }

  static CommandLineProgram on(Terminal terminal) {
    return new CommandLineProgram(
        terminal,
        arguments -> Commands.plain(terminal, arguments),
        arguments -> Commands.of(terminal, arguments));
  }

  /** The same, whose every command line the library reads. */
  static CommandLineProgram withoutPlainWords(Terminal terminal) {
    return new CommandLineProgram(
        terminal, arguments -> Optional.empty(), arguments -> Commands.of(terminal, arguments));
  }

  /** The same with other commands. */
  static CommandLineProgram on(Terminal terminal, Object command) {
    return new CommandLineProgram(
        terminal,
        arguments -> Optional.empty(),
        arguments -> new CommandLine(command, new TerminalFactory(terminal)));
  }

  /** Runs one command line and returns its exit code. */
  int run(String... arguments) {
    int code;
    try {
      Optional<? extends Callable<Integer>> plain = plainly.apply(arguments);
      code = plain.isPresent() ? call(plain.get()) : commandLine(arguments).execute(arguments);
    } catch (RuntimeException | Error fault) {
      code = internalFault(fault);
    }
    terminal.out().flush();
    terminal.err().flush();
    return code;
  }

  private int call(Callable<Integer> command) {
    try {
      return command.call();
    } catch (ParameterException wrong) {
      return wrongCommandLine(wrong);
    } catch (Exception fault) {
      return failed(fault);
    }
  }

  private int wrongCommandLine(ParameterException wrong) {
    CommandLine command = wrong.getCommandLine();
    say(plain(String.valueOf(wrong.getMessage())));
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

  private int failed(Exception fault) {
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
    if (fault instanceof InterruptedException || fault instanceof CancellationException) {
      terminal.endProgress();
      say("interrupted");
      return ExitCode.NO_READ_OR_WRITE;
    }
    return internalFault(fault);
  }

  private int internalFault(Throwable fault) {
    terminal.endProgress();
    InternalFault.say(fault, terminal.err());
    return ExitCode.NO_READ_OR_WRITE;
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
    terminal.refuse(SafeText.text(message, SafeText.MAX_MESSAGE));
  }
}
