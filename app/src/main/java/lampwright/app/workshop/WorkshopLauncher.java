package lampwright.app.workshop;

import java.nio.file.Path;
import java.util.Optional;
import javafx.application.Application;
import lampwright.app.workshop.view.WorkshopApplication;

/** Starts the workshop's window, which the command line need not know. */
public final class WorkshopLauncher {
  private WorkshopLauncher() {}

  /**
   * Opens the workshop and waits until it is closed. Once in a process.
   *
   * @param file the project to open; a new one without it
   * @return why there is no window; empty if there was one
   */
  public static Optional<String> open(Optional<Path> file) {
    String[] arguments =
        file.map(path -> new String[] {path.toString()}).orElseGet(() -> new String[0]);
    try {
      Application.launch(WorkshopApplication.class, arguments);
      return Optional.empty();
    } catch (UnsupportedOperationException noScreen) {
      return Optional.of(
          "the workshop needs a display, and none is available ("
              + noScreen.getMessage()
              + "); all other commands work without a display: lampwright --help");
    } catch (RuntimeException failed) {
      Throwable cause = failed.getCause() == null ? failed : failed.getCause();
      return Optional.of("the workshop could not start: " + cause);
    }
  }
}
