package lampwright.app.command;

import java.io.Console;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/**
 * Where the commands speak: results on standard output, all else on standard error.
 *
 * @param out results
 * @param err errors, cautions and progress
 * @param interactive whether a person watches standard error
 */
record Terminal(PrintWriter out, PrintWriter err, boolean interactive) {
  /** The streams of this process, in the encoding of the terminal. */
  static Terminal ofSystem() {
    return new Terminal(
        new PrintWriter(System.out, true, encoding("stdout.encoding")),
        new PrintWriter(System.err, true, encoding("stderr.encoding")),
        watched());
  }

  /** Why a command does not do what it was asked. */
  void refuse(String why) {
    err.println("lampwright: " + why);
  }

  /** Shows how far long work has come, on one line that the next call replaces. */
  void progress(String what, long done, long total) {
    if (interactive) {
      err.printf(Locale.ROOT, "\r%s: %d %%", what, total == 0 ? 100 : done * 100 / total);
      err.flush();
    }
  }

  /** Shows how something is that has no end, on one line that the next call replaces. */
  void status(String text) {
    if (interactive) {
      err.print("\r\033[K" + text);
      err.flush();
    }
  }

  /** Removes the line that {@link #progress} or {@link #status} left. */
  void endProgress() {
    if (interactive) {
      err.print("\r\033[K");
      err.flush();
    }
  }

  /**
   * The encoding of a stream. Java 19 and later say the terminal's; before, it is the system's own.
   * Never the default one, which {@code file.encoding} sets for files.
   */
  static Charset encoding(String property) {
    String name = System.getProperty(property, System.getProperty("native.encoding", "UTF-8"));
    try {
      return Charset.forName(name);
    } catch (IllegalArgumentException unknown) {
      return StandardCharsets.UTF_8;
    }
  }

  // Before Java 22 there is a console only where both ends are terminals; since then there always
  // is one, and it says itself whether it is a terminal.
  @SuppressWarnings("SystemConsoleNull") // Handled by asking the console itself.
  private static boolean watched() {
    Console console = System.console();
    if (console == null) {
      return false;
    }
    try {
      return (boolean) Console.class.getMethod("isTerminal").invoke(console);
    } catch (ReflectiveOperationException olderJava) {
      return true;
    }
  }
}
