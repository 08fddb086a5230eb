package lampwright.app;

import lampwright.app.command.CommandLineProgram;

/** Starts Lampwright. */
public final class Main {
  private Main() {}

  /** Runs the command line and ends the process with its exit code. */
  public static void main(String[] arguments) {
    System.exit(CommandLineProgram.runOnSystemStreams(arguments));
  }
}
