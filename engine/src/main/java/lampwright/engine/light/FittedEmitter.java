package lampwright.engine.light;

import com.google.common.collect.Maps;
import java.util.Map;
import lampwright.engine.field.Field;
import lampwright.engine.field.Group;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;

/**
 * One emitter of a package.
 *
 * @param light its light at full drive
 * @param milliamps its current at full drive, 0 to 10,000 mA
 */
public record FittedEmitter(Emitter light, double milliamps) {
  public static final Group<FittedEmitter, Emitter> LIGHT =
      Group.of("light", FittedEmitter::light, Emitter.SHAPE, new Emitter(Chromaticity.D65, 1));
  public static final Field<FittedEmitter, Double> MILLIAMPS =
      Field.usual(
          "milliamps", new NumberType(Unit.MILLIAMPS, 0, 10_000), FittedEmitter::milliamps, 20.0);

  public static final Shape<FittedEmitter> SHAPE =
      Shape.of("fitted-emitter", FittedEmitter.class, LIGHT, MILLIAMPS);

  public FittedEmitter {
    SHAPE.check(light, milliamps).done();
  }

  /** The light of each emitter. */
  public static Map<EmitterKind, Emitter> light(Map<EmitterKind, FittedEmitter> emitters) {
    return Maps.immutableEnumMap(Maps.transformValues(emitters, FittedEmitter::light));
  }
}
