package lampwright.engine.light;

import lampwright.engine.check.Checks;

/**
 * The light of one emitter at full drive.
 *
 * @param chromaticity its colour
 * @param millicandela its luminous intensity on the axis, 0.000001 to 1,000,000
 */
public record Emitter(Chromaticity chromaticity, double millicandela) {
  public Emitter {
    Checks.of("emitter").range("mcd", millicandela, 0.000001, 1_000_000).done();
  }
}
