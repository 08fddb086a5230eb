package lampwright.engine.rig;

import lampwright.engine.light.Checks;
import lampwright.engine.light.Emitter;

/**
 * One emitter of a pixel type.
 *
 * @param light its light at full drive
 * @param milliamps its current at full drive, 0 to 10,000 mA
 */
public record FittedEmitter(Emitter light, double milliamps) {
  public FittedEmitter {
    Checks.of("emitter").range("milliamps", milliamps, 0, 10_000).done();
  }
}
