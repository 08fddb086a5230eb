package lampwright.engine.rig;

import lampwright.engine.field.Field;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;

/**
 * Where a lamp is on the drawing of the model.
 *
 * @param view the side that shows it
 * @param x 0 at the left edge to 1 at the right
 * @param y 0 at the upper edge to 1 at the lower
 * @param size its diameter as a share of the drawing's width, above 0 to 1
 */
public record Place(View view, double x, double y, double size) {
  public static final double DEFAULT_SIZE = 0.05;

  public static final Field<Place, View> VIEW =
      Field.usual("view", View.TYPE, Place::view, View.SIDE);
  public static final Field<Place, Double> X = Field.usual("x", NumberType.SHARE, Place::x, 0.5);
  public static final Field<Place, Double> Y = Field.usual("y", NumberType.SHARE, Place::y, 0.5);
  public static final Field<Place, Double> SIZE =
      Field.usual("size", new NumberType(Unit.SHARE, 0.001, 1), Place::size, DEFAULT_SIZE);

  public static final Shape<Place> SHAPE = Shape.of("place", Place.class, VIEW, X, Y, SIZE);

  public Place {
    SHAPE.check(view, x, y, size).done();
  }
}
