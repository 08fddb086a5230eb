package lampwright.engine.meter;

import java.util.OptionalInt;

/** The voltages along a run of pixels. */
public final class LadderVolts {
  private final double[] volts;
  private final double nearAmps;
  private final double farAmps;

  LadderVolts(double[] volts, double nearAmps, double farAmps) {
    this.volts = volts;
    this.nearAmps = nearAmps;
    this.farAmps = farAmps;
  }

  /** How many pixels there are. */
  public int pixels() {
    return volts.length;
  }

  /**
   * Voltage across a pixel; below 0 where the wires can't carry such a current at all.
   *
   * @param pixel from 0
   */
  public double at(int pixel) {
    return volts[pixel];
  }

  /** The pixel with the least voltage, from 0; the first of them if several have it. */
  public int weakest() {
    int weakest = 0;
    for (int i = 1; i < volts.length; i++) {
      if (volts[i] < volts[weakest]) {
        weakest = i;
      }
    }
    return weakest;
  }

  /** The first pixel, from 0, that gets less than it needs; none if all get it. */
  public OptionalInt firstBelow(double neededVolts) {
    for (int i = 0; i < volts.length; i++) {
      if (volts[i] < neededVolts) {
        return OptionalInt.of(i);
      }
    }
    return OptionalInt.empty();
  }

  /** Current in A from the supply at the first pixel's end. */
  public double nearAmps() {
    return nearAmps;
  }

  /** Current in A from the supply at the last pixel's end; 0 if it is not fed there. */
  public double farAmps() {
    return farAmps;
  }
}
