package lampwright.app.workshop.model.shelf;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Executor;
import java.util.function.UnaryOperator;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import lampwright.app.workshop.disk.Background;
import lampwright.app.workshop.disk.UserPresets;
import lampwright.engine.check.InvalidModelException;
import lampwright.engine.document.Preset;

/** The presets that the user keeps for every project. For the screen's thread. */
public final class OwnPresets {
  private final UserPresets file;
  private final Background disk;
  private final Executor screen;
  private final ReadOnlyObjectWrapper<List<Preset>> presets =
      new ReadOnlyObjectWrapper<>(List.of());
  private final ReadOnlyObjectWrapper<String> trouble = new ReadOnlyObjectWrapper<>("");

  /**
   * @param state the user's state folder
   */
  public OwnPresets(Path state, Background disk, Executor screen) {
    this.file = new UserPresets(state);
    this.disk = disk;
    this.screen = screen;
    work(file::read);
  }

  /** All of them, as they were read or written last. */
  public ReadOnlyObjectProperty<List<Preset>> presetsProperty() {
    return presets.getReadOnlyProperty();
  }

  /** Why they could not be read or written last; empty if they were. */
  public ReadOnlyObjectProperty<String> troubleProperty() {
    return trouble.getReadOnlyProperty();
  }

  /** Changes what is in the file by then. */
  void change(UnaryOperator<List<Preset>> change) {
    work(() -> file.change(change));
  }

  private interface Step {
    List<Preset> get() throws IOException;
  }

  private void work(Step step) {
    disk.run(
        () -> {
          try {
            List<Preset> now = step.get();
            screen.execute(
                () -> {
                  presets.set(now);
                  trouble.set("");
                });
          } catch (IOException | InvalidModelException failed) {
            String words = String.valueOf(failed.getMessage());
            screen.execute(() -> trouble.set(words));
          }
        });
  }
}
