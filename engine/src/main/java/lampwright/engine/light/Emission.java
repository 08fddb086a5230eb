package lampwright.engine.light;

import java.util.Map;
import java.util.Optional;

/** What a package emits at given drives. */
public final class Emission {
  private final double[] x = new double[Mixer.SLOTS];
  private final double[] y = new double[Mixer.SLOTS];
  private final double[] z = new double[Mixer.SLOTS];

  /**
   * The emission of a package.
   *
   * @param emitters any number of them; the light of the others is 0
   */
  public Emission(Map<EmitterKind, Emitter> emitters) {
    emitters.forEach(
        (kind, emitter) -> {
          int slot = kind.slot();
          double[] full = emitter.chromaticity().xyz(emitter.millicandela());
          x[slot] = full[0];
          y[slot] = full[1];
          z[slot] = full[2];
        });
  }

  /**
   * Writes X, Y and Z of the light to {@code into[to .. to + 2]}, in mcd.
   *
   * @param drives four of them from {@code at}, each 0 to 1, in the order of {@link EmitterKind}
   */
  public void xyz(double[] drives, int at, double[] into, int to) {
    into[to] = sum(x, drives, at);
    into[to + 1] = sum(y, drives, at);
    into[to + 2] = sum(z, drives, at);
  }

  /** Luminous intensity in mcd of four drives from {@code at}. */
  public double luminance(double[] drives, int at) {
    return sum(y, drives, at);
  }

  /** The chromaticity of four drives from {@code at}; none if they are dark. */
  public Optional<Chromaticity> chromaticity(double[] drives, int at) {
    double xSum = sum(x, drives, at);
    double ySum = sum(y, drives, at);
    double sum = xSum + ySum + sum(z, drives, at);
    return ySum > 0 ? Optional.of(new Chromaticity(xSum / sum, ySum / sum)) : Optional.empty();
  }

  private static double sum(double[] of, double[] drives, int at) {
    return of[0] * drives[at]
        + of[1] * drives[at + 1]
        + of[2] * drives[at + 2]
        + of[3] * drives[at + 3];
  }
}
