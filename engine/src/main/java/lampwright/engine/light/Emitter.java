package lampwright.engine.light;

/**
 * The light of one emitter at full drive.
 *
 * @param chromaticity its colour
 * @param millicandela its luminous intensity on the axis, above 0, at most 1,000,000
 */
public record Emitter(Chromaticity chromaticity, double millicandela) {
  public Emitter {
    Checks.of("emitter")
        .that(
            millicandela > 0 && millicandela <= 1_000_000,
            "mcd",
            Checks.plain(millicandela),
            "needs more than 0, to 1000000")
        .done();
  }
}
