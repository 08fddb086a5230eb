package lampwright.app.workshop.view.ribbon;

import java.util.LinkedHashSet;
import java.util.Set;
import javafx.scene.Node;
import javafx.scene.shape.Rectangle;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.edit.Selection;
import lampwright.app.workshop.model.ribbon.RibbonsModel;

/** The rectangle that the mouse draws over the rows: the cues that it touches are selected. */
final class RubberBand {
  private final RibbonsModel model;
  private final Node rows;
  private final Rectangle shape = new Rectangle();
  private double fromX;
  private double fromY;
  private Selection base = Selection.NOTHING;

  /**
   * @param rows pane whose points are meant; the band's shape belongs beside it, in the same parent
   */
  RubberBand(RibbonsModel model, Node rows) {
    this.model = model;
    this.rows = rows;
    shape.getStyleClass().add("rubber-band");
    shape.setVisible(false);
  }

  Rectangle shape() {
    return shape;
  }

  /** Begins at a point of the rows; what it touches is selected on top of a selection. */
  void start(double x, double y, Selection before) {
    fromX = x;
    fromY = y;
    base = before;
    shape.setVisible(true);
    place(x, y);
  }

  /** Draws it to a point of the rows, if it has begun. */
  void to(double x, double y) {
    if (shape.isVisible()) {
      place(x, y);
      Set<CueRef> cues = new LinkedHashSet<>(base.cues());
      cues.addAll(
          model.touched(
              Math.min(fromX, x), Math.min(fromY, y), Math.max(fromX, x), Math.max(fromY, y)));
      model.bench().select(base.withCues(cues));
    }
  }

  void end() {
    shape.setVisible(false);
  }

  private void place(double x, double y) {
    shape.setX(rows.getLayoutX() + Math.min(fromX, x));
    shape.setY(rows.getLayoutY() + Math.min(fromY, y));
    shape.setWidth(Math.abs(x - fromX));
    shape.setHeight(Math.abs(y - fromY));
  }
}
