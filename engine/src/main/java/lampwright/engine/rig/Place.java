package lampwright.engine.rig;

import java.util.Optional;
import java.util.OptionalDouble;
import lampwright.engine.field.Field;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;

/**
 * Where a lamp is on the drawing of the model, and how it is drawn there.
 *
 * @param view the side that shows it
 * @param x 0 at the left edge to 1 at the right
 * @param y 0 at the upper edge to 1 at the lower
 * @param size its diameter or length as a share of the drawing's width, 0.001 to 1
 * @param shape how it is drawn; if not stated a dot for one pixel, and a bar for more
 * @param turnDegrees by which a bar, ring or grid is turned clockwise, and the direction of a beam,
 *     0 to the right; -360 to 360 degrees
 * @param spreadDegrees angle of the beam, 1 to 180 degrees; if not stated that of a lamp of its
 *     function
 */
public record Place(
    View view,
    double x,
    double y,
    double size,
    Optional<LampShape> shape,
    double turnDegrees,
    OptionalDouble spreadDegrees) {
  public static final double DEFAULT_SIZE = 0.05;

  public static final Field<Place, View> VIEW =
      Field.usual("view", View.TYPE, Place::view, View.SIDE);
  public static final Field<Place, Double> X = Field.usual("x", NumberType.SHARE, Place::x, 0.5);
  public static final Field<Place, Double> Y = Field.usual("y", NumberType.SHARE, Place::y, 0.5);
  public static final Field<Place, Double> SIZE =
      Field.usual("size", new NumberType(Unit.SHARE, 0.001, 1), Place::size, DEFAULT_SIZE);
  public static final Field<Place, Optional<LampShape>> SHAPE_DRAWN =
      Field.optional("shape", OptionalType.of(LampShape.TYPE), Place::shape);
  public static final Field<Place, Double> TURN_DEGREES =
      Field.usual("turnDegrees", new NumberType(Unit.DEGREES, -360, 360), Place::turnDegrees, 0.0);
  public static final Field<Place, OptionalDouble> SPREAD_DEGREES =
      Field.optional(
          "spreadDegrees",
          OptionalType.ofNumber(new NumberType(Unit.DEGREES, 1, 180)),
          Place::spreadDegrees);

  public static final Shape<Place> SHAPE =
      Shape.of("place", Place.class, VIEW, X, Y, SIZE, SHAPE_DRAWN, TURN_DEGREES, SPREAD_DEGREES);

  public Place {
    SHAPE.check(view, x, y, size, shape, turnDegrees, spreadDegrees).done();
  }

  /** A place of which the shape is not stated. */
  public Place(View view, double x, double y, double size) {
    this(view, x, y, size, Optional.empty(), 0, OptionalDouble.empty());
  }
}
