package lampwright.app.workshop.view;

import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.stage.Window;

/** How many pixels of the screen make one unit of the layout: 1 at 100 %, 2 at 200 %. */
public final class OutputScale {
  private OutputScale() {}

  /** The scale of the screen that a node is on; 1 while it is on none. */
  public static double of(Node node) {
    return node.getScene() == null || node.getScene().getWindow() == null
        ? 1
        : node.getScene().getWindow().getOutputScaleX();
  }

  /** Tells when a node comes to a screen, or to one of another scale. */
  public static void watch(Node node, Runnable changed) {
    node.sceneProperty()
        .flatMap(Scene::windowProperty)
        .flatMap(Window::outputScaleXProperty)
        .addListener((of, before, now) -> changed.run());
  }
}
