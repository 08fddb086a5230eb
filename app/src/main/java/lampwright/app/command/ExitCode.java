package lampwright.app.command;

/** The exit codes of the command line. */
final class ExitCode {
  static final int DONE = 0;
  static final int PROJECT_HAS_ERRORS = 1;
  static final int WRONG_COMMAND_LINE = 2;

  /** Also where the program itself is at fault: it did not do what was asked for. */
  static final int NO_READ_OR_WRITE = 3;

  private ExitCode() {}
}
