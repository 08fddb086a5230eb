package lampwright.app.command;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.concurrent.CancellationException;
import lampwright.engine.check.SafeText;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportRefusedException;

/** What is said of a command that fails, and its exit code. */
record Failures(Terminal terminal) {
  /** Says why in a line. */
  int failed(Exception fault) {
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

  /** Says that it is a fault of the program. */
  int internalFault(Throwable fault) {
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

  /** Says it in one line. */
  void say(String message) {
    terminal.refuse(SafeText.text(message, SafeText.MAX_MESSAGE));
  }
}
