package lampwright.engine.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import lampwright.engine.check.Fault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What parts of a rig have to do with each other. */
class RigTest {
  private static final PixelType RGB = BuiltInPixelTypes.find("ws2812b").orElseThrow();

  private static Chain chain(String id, int pixels) {
    return new Chain(id, RGB, pixels);
  }

  private static Lamp lamp(String id, String chain, int from, int count) {
    return Lamp.ofPixels(id, new PixelRun(chain, from, count));
  }

  private static List<String> faults(List<Chain> chains, List<Lamp> lamps) {
    return RigFaults.find(chains, List.of(DriverOutput.of("o")), lamps, List.of()).stream()
        .map(Fault::field)
        .toList();
  }

  @Test
  void lampsShareNoPixel() {
    List<Chain> chains = List.of(chain("a", 8), chain("b", 8));
    assertThat(faults(chains, List.of(lamp("l", "a", 0, 4), lamp("m", "a", 4, 4)))).isEmpty();
    assertThat(faults(chains, List.of(lamp("l", "a", 0, 4), lamp("m", "b", 0, 4)))).isEmpty();
    assertThat(faults(chains, List.of(lamp("l", "a", 0, 4), lamp("m", "a", 3, 1))))
        .containsExactly("lamps[1].pixels[0].from");
    assertThat(faults(chains, List.of(lamp("l", "a", 3, 1), lamp("m", "a", 0, 8))))
        .containsExactly("lamps[1].pixels[0].from");
    Lamp twice = Lamp.ofPixels("l", new PixelRun("a", 0, 2), new PixelRun("a", 1, 2));
    assertThat(faults(chains, List.of(twice))).containsExactly("lamps[0].pixels[1].from");
  }

  @Test
  void lampsStayOnChainsAndOutputsThatThereAre() {
    List<Chain> chains = List.of(chain("a", 8));
    assertThat(faults(chains, List.of(lamp("l", "a", 7, 2))))
        .containsExactly("lamps[0].pixels[0].count");
    assertThat(faults(chains, List.of(lamp("l", "z", 0, 1))))
        .containsExactly("lamps[0].pixels[0].chain");
    assertThat(faults(chains, List.of(Lamp.ofOutput("l", "z")))).containsExactly("lamps[0].output");
    assertThat(faults(chains, List.of(Lamp.ofOutput("l", "o"), Lamp.ofOutput("m", "o"))))
        .containsExactly("lamps[1].output");
  }

  @Test
  void pinsAndIdsAreUsedOnce() {
    Chain onPin = Chain.PIN.with(chain("a", 1), Optional.of(new Pin("PD6")));
    Chain alsoThere = Chain.PIN.with(chain("b", 1), Optional.of(new Pin("PD6")));
    assertThat(faults(List.of(onPin, alsoThere), List.of())).containsExactly("chains[1].pin");
    assertThat(faults(List.of(chain("a", 1), chain("a", 2)), List.of()))
        .containsExactly("chains[1].id");
  }

  /**
   * Levels of the data line. A controller on the supply has the supply's level (ATmega328P
   * datasheet: up to 5.5 V), an RP2040 always 3.3 V, one on 12 V that of its board's regulator.
   */
  @ParameterizedTest
  @CsvSource({
    "atmega328p, 5, 5",
    "atmega328p, 4.5, 4.5",
    "atmega328p, 12, 5",
    "rp2040, 5, 3.3",
    "rp2040, 12, 3.3"
  })
  void dataLevelIsTheControllers(String controller, double supplyVolts, double level) {
    Rig rig =
        Rig.SHAPE
            .draft()
            .set(Rig.CHAINS, List.of(chain("a", 1)))
            .set(Rig.SUPPLY_VOLTS, supplyVolts)
            .set(Rig.CONTROLLER, Controller.find(controller))
            .make();
    assertThat(rig.dataLevelVolts()).isEqualTo(level);
    Rig stated = Rig.DATA_VOLTS.with(rig, java.util.OptionalDouble.of(4.2));
    assertThat(stated.dataLevelVolts()).isEqualTo(4.2);
    assertThat(stated.pinVolts()).isEqualTo(level);
  }

  @Test
  void chainHasItsOwnWiresOrThoseOfTheRig() {
    Feed thick = Feed.of(new Conductor.Gauge(18));
    Feed thin = Feed.of(new Conductor.Area(0.1));
    Chain own = Chain.FEED.with(chain("a", 1), Optional.of(thin));
    Rig rig = Rig.of(List.of(own, chain("b", 1)), List.of(), List.of());
    Rig wired = Rig.FEED.with(rig, Optional.of(thick));
    assertThat(rig.feedOf(rig.chains().get(1))).isEmpty();
    assertThat(wired.feedOf(wired.chains().get(0))).contains(thin);
    assertThat(wired.feedOf(wired.chains().get(1))).contains(thick);
  }

  /** A second lead that nobody measured begins at the supply and runs along the chain. */
  @Test
  void secondLeadIsAsLongAsTheFirstAndTheChain() {
    Feed feed =
        Feed.SHAPE
            .draft()
            .set(Feed.LEAD, new Conductor.Gauge(24))
            .set(Feed.SUPPLY_MM, 200.0)
            .set(Feed.PITCH_MM, 16.0)
            .make();
    assertThat(feed.farMm(1)).isEqualTo(200);
    assertThat(feed.farMm(61)).isEqualTo(200 + 60 * 16);
    assertThat(Feed.FAR_SUPPLY_MM.with(feed, java.util.OptionalDouble.of(50)).farMm(61))
        .isEqualTo(50);
  }

  @Test
  void bytesOfAChainAreThoseOfItsPixels() {
    PixelType rgbw = BuiltInPixelTypes.find("sk6812-rgbw").orElseThrow();
    assertThat(chain("a", 10).bytes()).isEqualTo(30);
    assertThat(new Chain("a", rgbw, 10).bytes()).isEqualTo(40);
  }

  @ParameterizedTest
  @CsvSource({
    "GRB, true",
    "BGRW, true",
    "WRGB, true",
    "GR, false",
    "GRBB, false",
    "GRBX, false",
    "GRBWW, false",
    "grb, false"
  })
  void orderHasEachColourOnceAndWhiteAtMostOnce(String letters, boolean order) {
    assertThat(EmitterOrder.parse(letters).map(EmitterOrder::letters))
        .isEqualTo(order ? Optional.of(letters) : Optional.empty());
  }

  @ParameterizedTest
  @CsvSource({
    "PD6, true",
    "PA0, true",
    "PL7, true",
    "GP0, true",
    "GP28, true",
    "PC15, true",
    "PA02, true",
    "PB31, true",
    "GPIO18, true",
    "GPIO48, true",
    "0, true",
    "99, true",
    "PM0, false",
    "PD32, false",
    "PD006, false",
    "GP05, false",
    "GPIO05, false",
    "GPIO100, false",
    "IO18, false",
    "07, false",
    "100, false",
    "'', false",
    "GP100, false",
    "pd6, false",
    "D6, false",
    "PD6 , true"
  })
  void pinHasANameOfADatasheet(String name, boolean pin) {
    assertThat(Pin.find(name).isPresent()).isEqualTo(pin);
  }

  @ParameterizedTest
  @CsvSource({
    "PA2, PA02, true",
    "GP15, GPIO15, true",
    "GP15, 15, true",
    "PA15, PB15, false",
    "PA1, PA11, false",
    "PA5, GP5, false",
    "GP5, GP6, false"
  })
  void namesOfOnePinAreEqual(String name, String other, boolean equal) {
    assertThat(new Pin(name).equals(new Pin(other))).isEqualTo(equal);
    assertThat(new Pin(name).hashCode() == new Pin(other).hashCode()).isEqualTo(equal);
  }

  @Test
  void pinUsedUnderTwoNamesIsUsedTwice() {
    Chain one = Chain.PIN.with(chain("a", 1), Optional.of(new Pin("GPIO18")));
    Chain two = Chain.PIN.with(chain("b", 1), Optional.of(new Pin("18")));
    assertThat(faults(List.of(one, two), List.of())).containsExactly("chains[1].pin");
  }

  /** 3 white LEDs of 3.2 V in series; pins may hold LEDs unless a driver is stated. */
  @Test
  void outputKnowsItsString() {
    DriverOutput output =
        DriverOutput.SHAPE
            .draft()
            .set(DriverOutput.ID, "o")
            .set(DriverOutput.LEDS_IN_SERIES, 3)
            .set(DriverOutput.FORWARD_VOLTS, 3.2)
            .make();
    assertThat(output.stringVolts()).isEqualTo(9.6, within(1e-12));
    assertThat(output.mayHangOnPin()).isTrue();
    DriverOutput pin = output.withDrive(Optional.of(OutputDrive.PIN));
    assertThat(pin.supply()).isEqualTo(OutputSupply.VOLTAGE);
    assertThat(pin.withSupply(OutputSupply.CURRENT).drive()).isEmpty();
    DriverOutput driver = output.withDrive(Optional.of(OutputDrive.DRIVER));
    assertThat(driver.mayHangOnPin()).isFalse();
    assertThat(driver.withSupply(OutputSupply.CURRENT).drive()).contains(OutputDrive.DRIVER);
  }

  @Test
  void clockIsBesideTheController() {
    Controller controller = Controller.find("atmega328p").orElseThrow();
    assertThat(controller.clockMegahertz()).isEmpty();
    assertThat(controller.withClock(OptionalInt.of(8)).clockMegahertz()).hasValue(8);
    assertThat(Controller.find("no-such-part")).isEmpty();
  }
}
