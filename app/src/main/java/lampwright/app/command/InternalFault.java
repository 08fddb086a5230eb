package lampwright.app.command;

import java.io.PrintWriter;
import lampwright.engine.check.SafeText;

/**
 * What is said where the program itself is at fault: one line in place of a stack trace, which is
 * shown only where {@link #TRACE} is set.
 */
final class InternalFault {
  /** The system property that asks for stack traces. */
  static final String TRACE = "lampwright.trace";

  private static final String OURS = "lampwright.";
  // A cause may be its own cause's cause.
  private static final int MOST_CAUSES = 20;

  private InternalFault() {}

  /** Says it; never throws, since there is nobody left to catch. */
  static void say(Throwable fault, PrintWriter to) {
    try {
      to.println("lampwright: " + SafeText.text(words(fault), SafeText.MAX_MESSAGE));
      if (Boolean.getBoolean(TRACE)) {
        fault.printStackTrace(to);
      }
      to.flush();
    } catch (RuntimeException | Error second) {
      // Mostly memory that is used up; the exit code says that something went wrong.
    }
  }

  private static String words(Throwable fault) {
    if (fault instanceof OutOfMemoryError) {
      return "out of memory: give it more, such as LAMPWRIGHT_JAVA_OPTIONS=-Xmx4g, or divide the"
          + " project";
    }
    Throwable cause = fault;
    for (int i = 0; i < MOST_CAUSES && cause.getCause() != null; i++) {
      cause = cause.getCause();
    }
    String message = cause.getMessage() == null ? "" : ", " + cause.getMessage();
    return "internal fault: "
        + cause.getClass().getSimpleName()
        + message
        + place(cause)
        + "; this is a fault of the program, please report it"
        + " (LAMPWRIGHT_JAVA_OPTIONS=-D"
        + TRACE
        + "=true shows more)";
  }

  /** Where in our own code; nothing if nowhere. */
  private static String place(Throwable cause) {
    for (StackTraceElement frame : cause.getStackTrace()) {
      if (frame.getClassName().startsWith(OURS)) {
        return ", in " + frame.getFileName() + " line " + frame.getLineNumber();
      }
    }
    return "";
  }
}
