package lampwright.engine.rig;

import lampwright.engine.field.Field;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;

/**
 * The warm-up of a lamp that represents a filament.
 *
 * @param riseMs time to 90 % when it comes on, 0 (at once) to 60,000 ms
 * @param fallMs time to 10 % when it goes off, 0 (at once) to 60,000 ms
 */
public record Feel(double riseMs, double fallMs) {
  private static final NumberType MS = new NumberType(Unit.MILLISECONDS, 0, 60_000);
  public static final Field<Feel, Double> RISE_MS = Field.usual("riseMs", MS, Feel::riseMs, 0.0);
  public static final Field<Feel, Double> FALL_MS = Field.usual("fallMs", MS, Feel::fallMs, 0.0);

  public static final Shape<Feel> SHAPE = Shape.of("feel", Feel.class, RISE_MS, FALL_MS);

  public Feel {
    SHAPE.check(riseMs, fallMs).done();
  }
}
