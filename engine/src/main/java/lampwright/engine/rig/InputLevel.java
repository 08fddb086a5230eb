package lampwright.engine.rig;

/**
 * A level of a data input, which may follow the supply: {@code supplyShare x supply + volts}.
 *
 * @param supplyShare 0 to 1
 * @param volts 0 to 60 V
 */
public record InputLevel(double supplyShare, double volts) {
  /** The level where the pixel has this supply, V. */
  public double at(double supplyVolts) {
    return supplyShare * supplyVolts + volts;
  }
}
