package lampwright.app.command;

import java.io.PrintWriter;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Function;
import java.util.function.ToIntFunction;

/**
 * The whole command line: reads the words, runs the command, gives the exit code.
 *
 * <p>Nothing of the library that reads all but plain ones is named here, so that these don't load
 * it (decision 42).
 */
public final class CommandLineProgram {
  private final Terminal terminal;
  private final Failures failures;
  private final Function<String[], Optional<? extends Callable<Integer>>> plainly;
  private final ToIntFunction<String[]> byLibrary;

  private CommandLineProgram(
      Terminal terminal,
      Function<String[], Optional<? extends Callable<Integer>>> plainly,
      ToIntFunction<String[]> byLibrary) {
    this.terminal = terminal;
    this.failures = new Failures(terminal);
    this.plainly = plainly;
    this.byLibrary = byLibrary;
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
        arguments -> PlainCommands.of(terminal, arguments),
        arguments -> LibraryLine.of(terminal).run(arguments));
  }

  /** The same, whose every command line the library reads. */
  static CommandLineProgram withoutPlainWords(Terminal terminal) {
    return new CommandLineProgram(
        terminal,
        arguments -> Optional.empty(),
        arguments -> LibraryLine.of(terminal).run(arguments));
  }

  /** The same with other commands. */
  static CommandLineProgram on(Terminal terminal, Object command) {
    return new CommandLineProgram(
        terminal,
        arguments -> Optional.empty(),
        arguments -> LibraryLine.of(terminal, command).run(arguments));
  }

  /** Runs one command line and returns its exit code. */
  int run(String... arguments) {
    int code;
    try {
      Optional<? extends Callable<Integer>> plain = plainly.apply(arguments);
      code = plain.isPresent() ? call(plain.get()) : byLibrary.applyAsInt(arguments);
    } catch (RuntimeException | Error fault) {
      code = failures.internalFault(fault);
    }
    terminal.out().flush();
    terminal.err().flush();
    return code;
  }

  // Plain commands refuse no words of the command line: the library reads those.
  private int call(Callable<Integer> command) {
    try {
      return command.call();
    } catch (Exception fault) {
      return failures.failed(fault);
    }
  }
}
