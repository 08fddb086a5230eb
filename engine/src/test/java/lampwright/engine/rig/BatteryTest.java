package lampwright.engine.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class BatteryTest {
  private static Battery pack(double volts, Regulator regulator) {
    return Battery.PACK_VOLTS
        .with(Battery.of(2000), OptionalDouble.of(volts))
        .withRegulator(regulator);
  }

  // By hand: 2,000 mAh, 80 % usable, at 400 mA last 4 h.
  @Test
  void batteryLastsItsUsableShare() {
    assertThat(Battery.of(2000).hours(400, 5)).hasValue(4);
  }

  /**
   * Practice: behind a switching regulator pack current = V_out I / (efficiency x V_pack); boost 85
   * %. By hand, one cell of 3.7 V for 5 V: 5 / (0.85 x 3.7) = 1.5898 times the current.
   */
  @Test
  void boostFromOneCellDrawsMoreThanTheRig() {
    Battery cell = pack(3.7, Regulator.BOOST);
    assertThat(cell.packCurrent(1000, 5)).isCloseTo(1589.8, within(0.1));
    assertThat(cell.hours(400, 5).orElseThrow()).isCloseTo(4 / 1.5898, within(1e-4));
    assertThat(cell.rigCurrent(cell.packCurrent(1000, 5), 5)).isCloseTo(1000, within(1e-9));
  }

  /** Practice: buck 90 %. By hand, two cells of 7.4 V for 5 V: 5 / (0.9 x 7.4) = 0.7508. */
  @Test
  void buckFromTwoCellsDrawsLess() {
    assertThat(pack(7.4, Regulator.BUCK).packCurrent(1000, 5)).isCloseTo(750.8, within(0.1));
    Battery better = Battery.EFFICIENCY.with(pack(7.4, Regulator.BUCK), OptionalDouble.of(0.95));
    assertThat(better.packCurrent(1000, 5)).isCloseTo(5000 / (0.95 * 7.4), within(1e-9));
  }

  /** Practice: behind a linear regulator the same current. */
  @Test
  void linearRegulatorAndNoneTakeTheSameCurrent() {
    assertThat(pack(7.4, Regulator.LINEAR).packCurrent(1000, 5)).isEqualTo(1000);
    assertThat(pack(7.4, Regulator.NONE).packCurrent(1000, 5)).isEqualTo(1000);
  }

  /** Practice: 7.4 V, 8.4 V full. */
  @Test
  void fullPackHasMoreThanItsLabel() {
    assertThat(pack(7.4, Regulator.NONE).fullVolts(5)).isCloseTo(8.4, within(1e-9));
    assertThat(Battery.of(2000).fullVolts(3.7)).isCloseTo(4.2, within(1e-9));
  }

  @Test
  void batteryWithoutLoadHasNoRunTime() {
    assertThat(Battery.of(2000).hours(0, 5)).isEmpty();
  }

  @Test
  void efficiencyIsThatOfASwitchingRegulator() {
    Battery buck = Battery.EFFICIENCY.with(pack(7.4, Regulator.BUCK), OptionalDouble.of(0.8));
    assertThat(buck.withRegulator(Regulator.LINEAR).efficiency()).isEmpty();
    Battery linear = buck.withRegulator(Regulator.LINEAR);
    assertThatThrownBy(() -> Battery.EFFICIENCY.with(linear, OptionalDouble.of(0.8)))
        .hasMessage(
            "battery: efficiency: 0.8: must be used with a switching regulator: buck or boost");
  }

  @Test
  void batteryOutOfRangeIsRefused() {
    assertThatThrownBy(() -> Battery.of(0))
        .hasMessage("battery: milliampHours: 0: must be between 1 and 1,000,000");
    assertThatThrownBy(() -> Battery.USABLE_SHARE.with(Battery.of(2000), 0.0))
        .hasMessage("battery: usableShare: 0: must be between 0.01 and 1");
    assertThatThrownBy(() -> Battery.PACK_VOLTS.with(Battery.of(2000), OptionalDouble.of(0)))
        .hasMessage("battery: packVolts: 0: must be between 0.5 and 100");
    assertThatThrownBy(() -> Battery.FUSE_AMPS.with(Battery.of(2000), OptionalDouble.of(0)))
        .hasMessage("battery: fuseAmps: 0: must be between 0.01 and 100");
    assertThatThrownBy(() -> Battery.of(2000).hours(-1, 5))
        .hasMessageStartingWith("mean milliamps: -1");
  }
}
