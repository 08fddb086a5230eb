package lampwright.exporters.firmware;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.Pin;

/**
 * A controller as the firmware sees it: clock, pins and PWM.
 *
 * @param controller its memory
 * @param hertz the clock that the firmware is built for
 * @param pins every pin that may carry a chain; empty if the builder's own code drives the pins
 * @param chainPins pins for chains that name none, the best first
 * @param pwmTimers the timer of each pin with PWM
 * @param outputPins pins for outputs that name none: the first list that is long enough is taken
 */
record Board(
    Controller controller,
    int hertz,
    List<Pin> pins,
    List<Pin> chainPins,
    Map<Pin, Integer> pwmTimers,
    List<List<Pin>> outputPins) {
  static final String DEFAULT = "atmega328p";

  private static final int MHZ = 1_000_000;
  private static final int TIMERS_OF_328P = 3;

  // Pins of the packages without the reset pin, and the timers of OC0A, OC0B and so on: the
  // datasheets' pinouts. Defaults leave the serial pins and those of a crystal alone, and keep
  // timer 0 for the functions of a hobby IDE as long as another will do.
  private static final List<Board> DRIVEN =
      List.of(
          new Board(
              known("atmega328p"),
              16 * MHZ,
              pins("PB01234567 PC012345 PD01234567"),
              pins("PB0 PD7 PD4 PD2 PB4 PB5 PC012345 PD6 PD5"),
              timers("PD5=0 PD6=0 PB1=1 PB2=1 PB3=2 PD3=2"),
              List.of(pins("PB1 PB2 PB3 PD3"))),
          new Board(
              known("atmega32u4"),
              16 * MHZ,
              pins("PB01234567 PC67 PD01234567 PE26 PF014567"),
              pins("PB4 PD4 PD6 PD7 PE6 PF014567"),
              timers("PB7=0 PD0=0 PB5=1 PB6=1 PC6=3"),
              List.of(pins("PB5 PB6 PC6"), pins("PB5 PB6 PB7 PD0"))),
          new Board(
              known("attiny85"),
              8 * MHZ,
              pins("PB01234"),
              pins("PB2 PB3 PB0 PB1 PB4"),
              timers("PB0=0 PB1=0 PB4=1"),
              List.of(pins("PB4"), pins("PB0 PB1"))));

  Board {
    pins = List.copyOf(pins);
    chainPins = List.copyOf(chainPins);
    pwmTimers = Map.copyOf(pwmTimers);
    outputPins = List.copyOf(outputPins);
  }

  /** The board of a controller; the {@link #DEFAULT} one if the rig states none. */
  static Board of(Optional<Controller> controller) {
    Controller chosen = controller.orElseGet(() -> known(DEFAULT));
    return DRIVEN.stream()
        .filter(board -> board.controller.equals(chosen))
        .findFirst()
        .orElseGet(() -> new Board(chosen, 0, List.of(), List.of(), Map.of(), List.of()));
  }

  /** Whether we drive its pins; otherwise the builder's own functions do. */
  boolean driven() {
    return hertz > 0;
  }

  /** How many timers it has that count frames or make PWM. */
  int timers() {
    return controller.id().equals("attiny85") ? 2 : TIMERS_OF_328P;
  }

  /** The pins with PWM, in the order of {@link #pins}. */
  List<Pin> pwmPins() {
    return pins.stream().filter(pwmTimers::containsKey).toList();
  }

  private static Controller known(String id) {
    return Controller.find(id).orElseThrow();
  }

  // "PB01 PD2" is PB0, PB1, PD2.
  private static List<Pin> pins(String text) {
    List<Pin> pins = new ArrayList<>();
    for (String port : text.split(" ", -1)) {
      port.substring(2)
          .chars()
          .forEach(bit -> pins.add(new Pin(port.substring(0, 2) + (char) bit)));
    }
    return pins;
  }

  private static Map<Pin, Integer> timers(String text) {
    Map<Pin, Integer> timers = new LinkedHashMap<>();
    for (String entry : text.split(" ", -1)) {
      timers.put(new Pin(entry.substring(0, 3)), entry.charAt(4) - '0');
    }
    return timers;
  }
}
