package lampwright.app;

import lampwright.app.command.CommandLineProgram;
import lampwright.app.startup.StartArchives;

/** Starts Lampwright. */
public final class Main {
  private Main() {}

  /** Runs the command line and ends the process with its exit code. */
  public static void main(String[] arguments) {
    int code = CommandLineProgram.runOnSystemStreams(arguments);
    StartArchives.refresh();
    System.exit(code);
  }
}
