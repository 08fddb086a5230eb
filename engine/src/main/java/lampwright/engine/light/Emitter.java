package lampwright.engine.light;

import lampwright.engine.field.Field;
import lampwright.engine.field.Group;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;

/**
 * The light of one emitter at full drive.
 *
 * @param chromaticity its colour
 * @param millicandela its luminous intensity on the axis, 0.000001 to 1,000,000
 */
public record Emitter(Chromaticity chromaticity, double millicandela) {
  public static final Group<Emitter, Chromaticity> CHROMATICITY =
      Group.of("chromaticity", Emitter::chromaticity, Chromaticity.SHAPE, Chromaticity.D65);
  public static final Field<Emitter, Double> MILLICANDELA =
      Field.<Emitter, Double>required(
              "mcd",
              new NumberType(Unit.MILLICANDELA, 0.000001, 1_000_000),
              Emitter::millicandela,
              1.0)
          .as("millicandela");

  public static final Shape<Emitter> SHAPE =
      Shape.of("emitter", Emitter.class, CHROMATICITY, MILLICANDELA);

  public Emitter {
    SHAPE.check(chromaticity, millicandela).done();
  }
}
