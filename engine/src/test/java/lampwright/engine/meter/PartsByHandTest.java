package lampwright.engine.meter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Conductor;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Feed;
import lampwright.engine.rig.OutputDrive;
import lampwright.engine.rig.OutputSupply;
import lampwright.engine.rig.Rig;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Capacitors, fuses, strings of LEDs and busy lines that come out by hand. */
class PartsByHandTest {
  /**
   * At least half more than the supply (common practice), of the ratings 6.3 10 16 25 35 50 63 100
   * V; above them the least itself.
   */
  @ParameterizedTest
  @CsvSource({"5, 10", "12, 25", "24, 50", "4.2, 6.3", "4.21, 10", "80, 120", "3.3, 6.3"})
  void capacitorIsRatedForHalfMoreThanTheSupply(double supplyVolts, double rating) {
    assertThat(PixelParts.capacitorVolts(supplyVolts)).isCloseTo(rating, within(1e-9));
  }

  @Test
  void fuseOfANegativeCurrentIsRefused() {
    assertThatThrownBy(() -> Fuses.atLeast(-0.1)).hasMessageContaining("peak amps");
  }

  private static Rig rig(double supplyVolts, DriverOutput output) {
    return Rig.SHAPE
        .draft(Rig.of(List.of(), List.of(output), List.of()))
        .set(Rig.SUPPLY_VOLTS, supplyVolts)
        .set(Rig.CONTROLLER, Controller.find("rp2040"))
        .make();
  }

  private static OutputCircuit circuit(double supplyVolts, int leds, double forwardVolts) {
    DriverOutput output =
        new DriverOutput(
            "o", DriverOutput.DEFAULT_COLOUR, 20, leds, forwardVolts, OutputSupply.VOLTAGE);
    return OutputCircuit.of(rig(supplyVolts, output), output);
  }

  // 5 V on two LEDs of 2.1 V leave 0.8 V; on two of 2.5 V nothing; on three of 2.1 V less.
  @Test
  void stringLightsWithWhatIsLeftOfTheSupply() {
    OutputCircuit two = circuit(5, 2, 2.1);
    assertThat(two.volts()).isEqualTo(5);
    assertThat(two.headroomVolts()).isCloseTo(0.8, within(1e-12));
    assertThat(two.lights()).isTrue();
    assertThat(two.hasHeadroom(0.79)).isTrue();
    assertThat(two.hasHeadroom(0.8)).isTrue();
    assertThat(two.hasHeadroom(0.81)).isFalse();
    assertThat(circuit(5, 2, 2.5).lights()).isFalse();
    assertThat(circuit(5, 3, 2.1).lights()).isFalse();
    assertThat(circuit(5, 3, 2.1).headroomVolts()).isCloseTo(-1.3, within(1e-12));
  }

  /** Pins of the RP2040 have 3.3 V (its data sheet); a driver has the rig's supply. */
  @Test
  void outputOfAPinHasThePinsVoltage() {
    DriverOutput output =
        new DriverOutput("o", DriverOutput.DEFAULT_COLOUR, 4, 1, 2, OutputSupply.VOLTAGE);
    DriverOutput pin = DriverOutput.DRIVE.with(output, Optional.of(OutputDrive.PIN));
    DriverOutput driver = DriverOutput.DRIVE.with(output, Optional.of(OutputDrive.DRIVER));
    assertThat(OutputCircuit.of(rig(12, pin), pin).volts()).isEqualTo(3.3);
    assertThat(OutputCircuit.of(rig(12, driver), driver).volts()).isEqualTo(12);
    assertThat(OutputCircuit.of(rig(12, output), output).volts()).isEqualTo(12);
  }

  // 10 ms of every 20 ms are half of the time, and leave room for 100 frames a second.
  @Test
  void lineIsBusyForItsShareOfAFrame() {
    LineTimes times = new LineTimes(List.of(), 10_000, true);
    assertThat(times.share(50)).isCloseTo(0.5, within(1e-12));
    assertThat(times.share(150)).isCloseTo(1.5, within(1e-12));
    assertThat(times.highestFramesPerSecond()).isCloseTo(100, within(1e-9));
  }

  /**
   * 5 A/mm2 (practice) on AWG 30, 0.0509 mm2, and AWG 28, 0.0810 mm2 (ASTM B258): the fuse at the
   * pack needn't protect what has one of its own.
   */
  @Test
  void weakestWireWithoutAFuseIsTheLimitOfThePack() {
    Feed thin = Feed.of(new Conductor.Gauge(30));
    Feed thick = Feed.of(new Conductor.Gauge(28));
    Feed fused = Feed.FUSE_AMPS.with(thin, OptionalDouble.of(0.2));
    assertThat(PackLoad.wireLimitAmps(fedBy(thick, thin))).isCloseTo(0.2545, within(0.001));
    assertThat(PackLoad.wireLimitAmps(fedBy(thick, fused))).isCloseTo(0.405, within(0.001));
    assertThat(PackLoad.wireLimitAmps(fedBy(fused, fused))).isEqualTo(Double.MAX_VALUE);
  }

  private static Rig fedBy(Feed one, Feed other) {
    Chain chain = new Chain("one", BuiltInPixelTypes.find("ws2812b").orElseThrow(), 1);
    Chain second = new Chain("other", BuiltInPixelTypes.find("ws2812b").orElseThrow(), 1);
    return Rig.of(
        List.of(
            Chain.FEED.with(chain, Optional.of(one)), Chain.FEED.with(second, Optional.of(other))),
        List.of(),
        List.of());
  }
}
