package lampwright.app.workshop.model.ribbon;

import java.util.ArrayList;
import java.util.List;
import lampwright.app.workshop.model.DrawingSheet;
import lampwright.engine.rig.Lamp;

/** Where the leader lines from the drawing end: at the rows and folded headings in sight. */
final class LeaderEnds {
  private final List<DrawingSheet.Row> rows = new ArrayList<>();
  private final double top;
  private final double height;
  private final double rowsTop;

  private LeaderEnds(double top, double height, double rowsTop) {
    this.top = top;
    this.height = height;
    this.rowsTop = rowsTop;
  }

  /**
   * All ends.
   *
   * @param top how far the rows are scrolled, in pixels
   * @param height of the rows' pane
   * @param rowsTop how far that is from the top of the ribbons
   */
  static List<DrawingSheet.Row> of(RibbonLayout layout, double top, double height, double rowsTop) {
    LeaderEnds ends = new LeaderEnds(top, height, rowsTop);
    layout.between(top, top + height).forEach(row -> ends.add(row.lamp(), row.centreY()));
    for (RibbonLayout.Heading heading : layout.headings()) {
      if (heading.folded()) {
        heading.lamps().forEach(lamp -> ends.add(lamp, heading.centreY()));
      }
    }
    return List.copyOf(ends.rows);
  }

  private void add(Lamp lamp, double y) {
    double centre = y - top;
    if (centre >= 0 && centre <= height) {
      rows.add(new DrawingSheet.Row(lamp.id(), rowsTop + centre));
    }
  }
}
