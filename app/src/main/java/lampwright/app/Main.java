package lampwright.app;

import lampwright.app.command.CommandLineProgram;
import lampwright.app.startup.StartArchives;

/** Starts Lampwright. */
public final class Main {
  private Main() {}

  /** Runs the command line and ends the process with its exit code. */
  public static void main(String[] arguments) {
    int code = run(arguments);
    // To log an exit, Java 21 and later start all of their logging.
    if (code != 0 || othersHoldTheProcess()) {
      System.exit(code);
    }
  }

  /** Runs the command line, sees to the next start's archive, and returns the exit code. */
  public static int run(String... arguments) {
    int code = CommandLineProgram.runOnSystemStreams(arguments);
    StartArchives.refresh();
    return code;
  }

  private static boolean othersHoldTheProcess() {
    Thread[] threads = new Thread[Thread.activeCount() + 1];
    int count = Thread.enumerate(threads);
    for (int i = 0; i < count; i++) {
      if (threads[i] != Thread.currentThread() && !threads[i].isDaemon()) {
        return true;
      }
    }
    // One that was begun meanwhile.
    return count == threads.length;
  }
}
