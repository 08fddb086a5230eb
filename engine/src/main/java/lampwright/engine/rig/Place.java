package lampwright.engine.rig;

import lampwright.engine.check.Checks;

/**
 * Where a lamp stands on the drawing of the model.
 *
 * @param view the side that shows it
 * @param x 0 at the left edge to 1 at the right
 * @param y 0 at the upper edge to 1 at the lower
 * @param size its diameter as a share of the drawing's width, above 0 to 1
 */
public record Place(View view, double x, double y, double size) {
  public static final View DEFAULT_VIEW = View.SIDE;
  public static final double DEFAULT_X = 0.5;
  public static final double DEFAULT_Y = 0.5;
  public static final double DEFAULT_SIZE = 0.05;

  public Place {
    Checks.of("place").range("x", x, 0, 1).range("y", y, 0, 1).range("size", size, 0.001, 1).done();
  }
}
