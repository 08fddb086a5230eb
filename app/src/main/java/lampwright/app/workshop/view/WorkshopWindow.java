package lampwright.app.workshop.view;

import java.nio.file.Path;
import java.util.Optional;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.scene.layout.BorderPane;
import javafx.stage.Stage;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.GaugesModel;
import lampwright.app.workshop.model.LightRoom;
import lampwright.app.workshop.model.PackRoom;
import lampwright.app.workshop.model.Playhead;
import lampwright.app.workshop.model.Spot;

/** The window: gauges above, the sheet with drawing and ribbons in the middle, slips below. */
public final class WorkshopWindow {
  private final Stage stage;
  private final Bench bench = new Bench(Projects.fresh());
  private final Playhead playhead = new Playhead(bench);
  private final LightRoom lights = new LightRoom(bench, Platform::runLater);
  private final PackRoom packs = new PackRoom(bench, Platform::runLater);

  WorkshopWindow(Stage stage) {
    this.stage = stage;
  }

  void show(Optional<Path> file) {
    BorderPane root = new BorderPane();
    root.setTop(new GaugesView(new GaugesModel(bench, lights, packs, playhead), this::lead));
    Scene scene = new Scene(root, 1280, 800);
    Theme.dress(scene, true);
    stage.setScene(scene);
    stage.setTitle("Lampwright");
    stage.show();
  }

  private void lead(Spot spot) {}
}
