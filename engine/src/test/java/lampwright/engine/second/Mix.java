package lampwright.engine.second;

import java.util.Optional;

/** The drives of a colour on one package at any amount of light. */
final class Mix {
  private final double[] full;
  private final Optional<Gamut> matchedOn;

  private Mix(double[] full, Optional<Gamut> matchedOn) {
    this.full = full;
    this.matchedOn = matchedOn;
  }

  static Mix proportional(double... drives) {
    return new Mix(drives, Optional.empty());
  }

  static Mix matched(Gamut gamut, double[] u) {
    return new Mix(u, Optional.of(gamut));
  }

  boolean isProportional() {
    return matchedOn.isEmpty();
  }

  double[] at(double light) {
    return matchedOn.map(gamut -> gamut.drives(full, light)).orElseGet(() -> times(light));
  }

  Mix dimmed(double light) {
    return new Mix(times(light), matchedOn);
  }

  private double[] times(double light) {
    double[] drives = new double[4];
    for (int i = 0; i < 4; i++) {
      drives[i] = full[i] * light;
    }
    return drives;
  }
}
