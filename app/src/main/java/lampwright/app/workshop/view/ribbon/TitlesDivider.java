package lampwright.app.workshop.view.ribbon;

import javafx.geometry.Point2D;
import javafx.scene.Cursor;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Region;
import lampwright.app.workshop.model.ribbon.RibbonsModel;

/** The edge between titles and rows, which is dragged. */
final class TitlesDivider extends Region {
  /** The narrowest titles, in lines of text. */
  private static final double LEAST_TITLES = 7;

  private static final double WIDTH = 6;

  private final RibbonsModel model;
  private double em = 13;

  TitlesDivider(RibbonsModel model) {
    this.model = model;
    setId("ribbons-divider");
    setManaged(false);
    setCursor(Cursor.H_RESIZE);
    setOnMouseDragged(this::to);
    // A fast hand lets go where no drag was told of before.
    setOnMouseReleased(
        event -> {
          if (!event.isStillSincePress()) {
            to(event);
          }
        });
  }

  /**
   * Puts it upon the edge.
   *
   * @param x of the edge
   * @param lineEm height of a line of text
   */
  void place(double x, double height, double lineEm) {
    em = lineEm;
    resizeRelocate(x - WIDTH / 2, 0, WIDTH, height);
  }

  private void to(MouseEvent event) {
    Point2D at = getParent().sceneToLocal(event.getSceneX(), event.getSceneY());
    model.rows().titleLinesProperty().set(Math.max(LEAST_TITLES, at.getX() / em));
  }
}
