package lampwright.app.workshop.view;

import java.util.List;
import javafx.scene.Group;
import javafx.scene.Scene;
import javafx.scene.SnapshotParameters;
import javafx.scene.image.Image;
import javafx.scene.image.WritableImage;
import javafx.scene.layout.Pane;
import javafx.scene.paint.Color;
import javafx.scene.shape.SVGPath;
import javafx.scene.transform.Scale;

/** The icon of the window: the program's mark on a tile, drawn from one vector at every size. */
final class WindowIcon {
  /** What desktops ask for, px. */
  static final List<Integer> SIZES = List.of(16, 20, 24, 32, 40, 48, 64, 96, 128, 256);

  private static final double TILE = 32;
  private static final double MARK_WIDTH = 24;
  private static final double MARK_HEIGHT = 28;

  private WindowIcon() {}

  /** All sizes. For the screen's thread. */
  static List<Image> all() {
    SVGPath lamp = new SVGPath();
    lamp.setContent(Signs.LAMP);
    lamp.getStyleClass().add("icon-lamp");
    lamp.setLayoutX((TILE - MARK_WIDTH) / 2);
    lamp.setLayoutY((TILE - MARK_HEIGHT) / 2);
    Pane tile = new Pane(lamp);
    tile.setMinSize(TILE, TILE);
    tile.setMaxSize(TILE, TILE);
    tile.getStyleClass().add("icon-tile");
    Scene scene = new Scene(new Group(tile));
    scene.getStylesheets().setAll(Stylesheets.url("palette-day"), Stylesheets.url("workshop"));
    tile.applyCss();
    tile.resize(TILE, TILE);
    return SIZES.stream().map(size -> drawn(tile, size)).toList();
  }

  private static Image drawn(Pane tile, int size) {
    SnapshotParameters parameters = new SnapshotParameters();
    parameters.setFill(Color.TRANSPARENT);
    parameters.setTransform(new Scale(size / TILE, size / TILE));
    return tile.snapshot(parameters, new WritableImage(size, size));
  }
}
