package lampwright.exporters.target;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.engine.document.Project;
import lampwright.engine.review.Finding;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.InputKind;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import lampwright.engine.situation.Situation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is said of the inputs of a rig on controllers that read them, or whose builder does. */
class InputFindingsTest {
  private static Rig rig(String controller, int chains, List<Input> inputs) {
    List<Chain> all = new ArrayList<>();
    List<Lamp> lamps = new ArrayList<>();
    for (int i = 0; i < chains; i++) {
      all.add(new Chain("c" + i, BuiltInPixelTypes.find("ws2812b").orElseThrow(), 3));
      lamps.add(Lamp.ofPixels("l" + i, new PixelRun("c" + i, 0, 3)));
    }
    Rig rig = Rig.INPUTS.with(Rig.of(all, List.of(), lamps), inputs);
    return Rig.CONTROLLER.with(rig, Controller.find(controller));
  }

  private static Input input(String id, InputKind kind, String pin) {
    return Input.SHAPE
        .draft()
        .set(Input.ID, id)
        .set(Input.KIND, kind)
        .set(Input.PIN, pin.isEmpty() ? Optional.empty() : Optional.of(new Pin(pin)))
        .make();
  }

  private static List<Input> channels(int count) {
    List<Input> inputs = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      inputs.add(input("i" + i, InputKind.SERVO_PULSE, "GP" + (10 + i)));
    }
    return inputs;
  }

  private static List<String> refusals(Rig rig) {
    return Target.of(rig).inputRefusals(rig).stream().map(Finding::text).toList();
  }

  /** Two PIO blocks of four state machines (RP2040 datasheet), of which chains have one each. */
  @ParameterizedTest
  @CsvSource({"1, 7", "4, 4", "8, 0", "7, 1"})
  void eightChainsAndChannelsFitAnRp2040(int chains, int channels) {
    assertThat(refusals(rig("rp2040", chains, channels(channels)))).isEmpty();
    assertThat(refusals(rig("rp2040", chains, channels(channels + 1))))
        .containsExactly(
            "controller RP2040: "
                + chains
                + (chains == 1 ? " chain and " : " chains and ")
                + (channels + 1)
                + (channels == 0 ? " servo input" : " servo inputs")
                + "; each uses one of the 8 state machines of the RP2040: use fewer"
                + " chains or receiver channels [state-machines-used-up]");
  }

  @Test
  void switchesNeedNoStateMachine() {
    List<Input> inputs = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      inputs.add(input("s" + i, InputKind.SWITCH, "GP" + (8 + i)));
    }
    assertThat(refusals(rig("rp2040", 8, inputs))).isEmpty();
  }

  /** GP29 measures the supply on boards of the usual form (RP2040 datasheet: pinout). */
  @ParameterizedTest
  @CsvSource({"rp2040, GP29", "rp2040, PD2", "esp32, GPIO49", "stm32, PK3"})
  void pinThatThereIsNotIsRefused(String controller, String pin) {
    Rig rig = rig(controller, 1, List.of(input("i", InputKind.SWITCH, pin)));
    assertThat(refusals(rig)).singleElement().asString().contains("input i: ", "[pin-unknown]");
  }

  @Test
  void inputWithoutAPinIsRefusedWhereOursReadsItAndOtherwiseTheBuilders() {
    List<Input> inputs = List.of(input("i", InputKind.SERVO_PULSE, ""));
    assertThat(refusals(rig("rp2040", 1, inputs)))
        .singleElement()
        .asString()
        .contains("input i: has no pin", "[input-without-pin]");
    assertThat(refusals(rig("other", 1, inputs))).isEmpty();
    assertThat(refusals(rig("esp32", 1, inputs))).isEmpty();
  }

  /** Pins that inputs have are not given to chains and outputs that name none. */
  @Test
  void chainsKeepOffThePinsOfInputs() {
    Rig rig = rig("rp2040", 2, List.of(input("i", InputKind.SWITCH, "GP1")));
    assertThat(Target.of(rig).pins(rig).chains())
        .containsExactly(Optional.of(new Pin("GP0")), Optional.of(new Pin("GP2")));
  }

  /**
   * High from 2.0 V at 3.3 V (RP2040 datasheet, from memory), 0.75 of the supply (ESP32 datasheet,
   * from memory), 0.6 of it (AVR datasheets, from memory). A receiver of 5 V needs a divider before
   * 3.3 V.
   */
  @ParameterizedTest
  @CsvSource({
    "rp2040, 2.00 V, 3.30 V, true",
    "esp32, 2.47 V, 3.30 V, true",
    "atmega328p, 3.00 V, 5.00 V, false"
  })
  void receiverIsToldWhatTheInputsTake(
      String controller, String high, String most, boolean divider) {
    Rig rig = rig(controller, 1, List.of(input("i", InputKind.SERVO_PULSE, "5")));
    Situation always =
        Situation.SHAPE
            .draft()
            .set(Situation.ID, "a")
            .set(Situation.SCENE, Optional.of("s"))
            .make();
    Project project =
        Project.SHAPE
            .draft()
            .set(Project.NAME, "p")
            .set(Project.RIG, rig)
            .set(
                Project.SCENES,
                List.of(lampwright.exporters.TestJobs.scene("s", 500, 50, true, List.of())))
            .set(Project.SITUATIONS, List.of(always))
            .make();
    List<String> found = new ArrayList<>();
    new TargetFindings().project(project, finding -> found.add(finding.text()));
    assertThat(found)
        .filteredOn(text -> text.contains("[receiver-wiring]"))
        .singleElement()
        .asString()
        .contains("high from " + high, "exceed the controller's " + most);
    assertThat(String.join(" ", found).contains("2 kohm from the pin to ground"))
        .isEqualTo(divider);
  }
}
