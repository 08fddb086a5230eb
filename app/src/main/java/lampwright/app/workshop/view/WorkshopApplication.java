package lampwright.app.workshop.view;

import java.nio.file.Path;
import java.util.Optional;
import javafx.application.Application;
import javafx.stage.Stage;

/** The workshop as a program with a window. */
public final class WorkshopApplication extends Application {
  /** For JavaFX. */
  public WorkshopApplication() {}

  @Override
  public void start(Stage stage) {
    Optional<Path> file = getParameters().getRaw().stream().findFirst().map(Path::of);
    WorkshopWindow window = new WorkshopWindow(stage);
    if (file.isEmpty()) {
      window.showOnStart();
    } else {
      window.show(file);
      window.welcome();
    }
  }
}
