package lampwright.engine.light;

import com.google.common.collect.Maps;
import java.util.Map;
import lampwright.engine.check.Checks;

/**
 * One emitter of a package.
 *
 * @param light its light at full drive
 * @param milliamps its current at full drive, 0 to 10,000 mA
 */
public record FittedEmitter(Emitter light, double milliamps) {
  public FittedEmitter {
    Checks.of("emitter").range("milliamps", milliamps, 0, 10_000).done();
  }

  /** The light of each emitter. */
  public static Map<EmitterKind, Emitter> light(Map<EmitterKind, FittedEmitter> emitters) {
    return Maps.immutableEnumMap(Maps.transformValues(emitters, FittedEmitter::light));
  }
}
