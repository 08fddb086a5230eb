package lampwright.exporters.target;

import com.google.common.collect.ImmutableMap;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import lampwright.engine.rig.Pin;

/**
 * The pins and timers of an AVR, from its data file. Immutable.
 *
 * @param all every pin that may carry a chain
 * @param forChains pins for chains that name none, the best first
 * @param pwm what is behind each pin with PWM
 * @param forOutputs choices of pins for outputs that name none
 * @param forSwitch pins for an example's switch, the best first
 * @param timers by number
 * @param clockTimers timers for the frame clock, the best first
 */
record AvrPins(
    List<Pin> all,
    List<Pin> forChains,
    ImmutableMap<Pin, Pwm> pwm,
    List<List<Pin>> forOutputs,
    List<Pin> forSwitch,
    ImmutableMap<Integer, Timer> timers,
    List<Integer> clockTimers) {
  /**
   * A pin's PWM.
   *
   * @param timer its number
   * @param duty register of the duty
   * @param control register and bit that connect the pin
   * @param proof in the prover's words, where the duty, direction and connection are
   */
  record Pwm(int timer, String duty, Control control, String proof) {
    /** A bit of a register. */
    record Control(String register, String bit) {}
  }

  /**
   * A timer.
   *
   * @param pwm C that starts it for PWM
   * @param clock C that starts it as frame clock
   * @param wide whether it counts in 16 bits
   * @param proof in the prover's words, what its registers hold under PWM
   */
  record Timer(String pwm, String clock, boolean wide, List<String> proof) {}

  static AvrPins of(TargetTable table) {
    ImmutableMap.Builder<Pin, Pwm> pwm = ImmutableMap.builder();
    List<Pin> all = table.pins("pins");
    List<String> names = table.below("pwm");
    // In the order of the pins.
    for (Pin pin : all) {
      if (names.contains(pin.name())) {
        pwm.put(pin, pwm(table.words("pwm", pin.name())));
      }
    }
    ImmutableMap.Builder<Integer, Timer> timers = ImmutableMap.builder();
    for (String number : table.below("timer")) {
      timers.put(Integer.valueOf(number), timer(table, number));
    }
    return new AvrPins(
        all,
        table.pins("chainPins"),
        pwm.buildOrThrow(),
        table.choices("outputPins"),
        table.pins("switchPins"),
        timers.buildOrThrow(),
        table.numbers("clockTimers"));
  }

  private static Pwm pwm(List<String> words) {
    return new Pwm(
        Integer.parseInt(words.get(0)),
        words.get(1),
        new Pwm.Control(words.get(2), words.get(3)),
        String.join(",", words.subList(4, words.size())));
  }

  private static Timer timer(TargetTable table, String number) {
    return new Timer(
        table.text("timer", number, "pwm"),
        table.text("timer", number, "clock"),
        table.number("timer", number, "bits") == 16,
        table.words("timer", number, "proof"));
  }

  /** How many outputs there can be if one timer is to be left: all but its pins. */
  int mostOutputs() {
    Map<Integer, Long> pins =
        pwm.values().stream().collect(Collectors.groupingBy(Pwm::timer, Collectors.counting()));
    long left = pins.size() < timers.size() ? 0 : Collections.min(pins.values());
    return (int) (pwm.size() - left);
  }

  /** Pins that share a timer, in words. */
  String sharing() {
    return timers.keySet().stream()
        .map(
            timer ->
                pwm.keySet().stream()
                    .filter(pin -> pwm.get(pin).timer() == timer)
                    .map(Pin::name)
                    .toList())
        .filter(pins -> pins.size() > 1)
        .map(pins -> String.join(" and ", pins))
        .collect(Collectors.joining("; "));
  }

  static String list(Collection<Pin> pins) {
    return pins.stream().map(Pin::name).collect(Collectors.joining(", "));
  }
}
