package lampwright.exporters.target;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import lampwright.engine.review.Code;
import lampwright.engine.review.Figure;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Subject;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;

/**
 * Inputs on an AVR: servo pulses by pin-change routines that a timer tells the time, switches by
 * looking once per frame. Says what can't be read, and writes the driver.
 */
final class AvrInputs {
  /** Measured with as many: one routine may have to wait for the others. */
  static final int MOST_CHANNELS = 4;

  /** A pulse that lasts longer is none: the timer's count would come round again, us. */
  private static final int LONGEST_US = 4000;

  /** What a routine does for a channel, as a macro. */
  private static final List<String> EDGE =
      List.of(
          "#define EDGE(channel, pin)",
          "  if (changed & (pin)) {",
          "    if (levels & (pin)) {",
          "      ticks[channel] = now;",
          "      is_high |= 1 << (channel);",
          "      has_ended &= (uint8_t) ~(1 << (channel));",
          "    } else if (is_high & 1 << (channel)) {",
          "      ticks[channel] = (uint16_t)(now - ticks[channel]);",
          "      is_high &= (uint8_t) ~(1 << (channel));",
          "      has_ended |= 1 << (channel);",
          "    }",
          "  }");

  private final AvrTarget target;
  private final Rig rig;
  private final Map<String, List<String>> groups = new TreeMap<>();

  AvrInputs(AvrTarget target, Rig rig) {
    this.target = target;
    this.rig = rig;
    for (String port : target.table().below("pinChange")) {
      groups.put(port, target.table().words("pinChange", port));
    }
  }

  private List<Input> channels() {
    return InputPins.channels(rig);
  }

  private static String port(Pin pin) {
    return pin.port().orElseThrow();
  }

  private static String bit(Pin pin) {
    return "1 << " + pin.number();
  }

  /** Pins whose changes call a routine. */
  private List<Pin> servedPins() {
    return target.avrPins().all().stream().filter(pin -> groups.containsKey(port(pin))).toList();
  }

  /** Why these inputs can't be read; empty if they can. */
  List<Finding> refusals() {
    List<Finding> found = new ArrayList<>();
    for (int i = 0; i < rig.inputs().size(); i++) {
      Input input = rig.inputs().get(i);
      if (input.pin().isEmpty()) {
        found.add(InputPins.missing(input, i, target.name()));
      } else if (InputPins.isChannel(input)
          && target.avrPins().all().contains(input.pin().get())
          && !servedPins().contains(input.pin().get())) {
        found.add(unserved(input, InputPins.path(i)));
      }
    }
    int count = channels().size();
    if (count > MOST_CHANNELS) {
      found.add(
          Finding.of(Code.TOO_MANY_CHANNELS, new Subject.Chip(target.name()))
              .with("count", Figure.count(count))
              .with("limit", Figure.count(MOST_CHANNELS))
              .at("rig.inputs")
              .make());
    }
    target.servoTimer(rig).ifPresent(timer -> timerFree(timer, found));
    return found;
  }

  private Finding unserved(Input input, String path) {
    List<Pin> served = servedPins();
    return Finding.of(Code.INPUT_PIN_UNSERVED, new Subject.OneInput(input.id()))
        .with("pin", Figure.words(input.pin().orElseThrow().name()))
        .with("name", Figure.words(target.name()))
        .with(
            "remedy",
            Figure.words(
                served.isEmpty() ? "use another controller" : "use one of " + AvrPins.list(served)))
        .at(path + ".pin")
        .make();
  }

  private void timerFree(int timer, List<Finding> found) {
    for (int i = 0; i < rig.outputs().size(); i++) {
      DriverOutput output = rig.outputs().get(i);
      Optional<AvrPins.Pwm> pwm = output.pin().map(target.avrPins().pwm()::get);
      if (pwm.isPresent() && pwm.get().timer() == timer) {
        found.add(
            Finding.of(Code.OUTPUT_ON_SERVO_TIMER, new Subject.OneOutput(output.id()))
                .with("pin", Figure.words(output.pin().orElseThrow().name()))
                .with("timer", Figure.count(timer))
                .at("rig.outputs[" + i + "].pin")
                .make());
      }
    }
  }

  /** The driver; only for a rig that is not refused. */
  String source() {
    List<String> lines = new ArrayList<>();
    lines.add("#include \"lampwright_inputs.h\"");
    lines.add("");
    lines.add("#include \"lampwright_situations.h\"");
    lines.add("#include \"lampwright_target.h\"");
    lines.add("");
    lines.add("#if LAMPWRIGHT_FITS_BOARD");
    lines.add("");
    lines.add("#include <avr/interrupt.h>");
    lines.add("#include <avr/io.h>");
    lines.add("");
    if (!channels().isEmpty()) {
      routines(lines);
    }
    begin(lines);
    read(lines);
    lines.add("");
    lines.add("#endif");
    return String.join("\n", lines) + "\n";
  }

  private void routines(List<String> lines) {
    int timer = target.servoTimer(rig).orElseThrow();
    lines.add("#define CHANNELS " + channels().size());
    lines.add("#define COUNT TCNT" + timer);
    lines.add("#define TICKS_PER_US (F_CPU / 8000000)");
    lines.add("");
    lines.add(
        "/* By channel: the count when its pin rose, then the width of the pulse, in ticks. */");
    lines.add("static volatile uint16_t ticks[CHANNELS];");
    lines.add("static volatile uint8_t high;  /* channels in a pulse, a bit each */");
    lines.add("static volatile uint8_t ended; /* channels whose width was not read yet */");
    lines.add("");
    for (String line : EDGE) {
      lines.add(line.equals("  }") ? line : String.format(Locale.ROOT, "%-99s\\", line));
    }
    groups.forEach(
        (port, words) -> {
          List<String> edges = new ArrayList<>();
          for (int c = 0; c < channels().size(); c++) {
            Pin pin = channels().get(c).pin().orElseThrow();
            if (port(pin).equals(port)) {
              edges.add("  EDGE(" + c + ", " + bit(pin) + ")");
            }
          }
          if (!edges.isEmpty()) {
            lines.add("");
            lines.add("static uint8_t before_" + port + "; /* levels of port " + port + " */");
            lines.add("");
            lines.add("ISR(" + words.get(0) + ") {");
            lines.add("  uint16_t now = COUNT;");
            lines.add("  uint8_t levels = PIN" + port + ";");
            lines.add("  uint8_t changed = levels ^ before_" + port + ";");
            lines.add("  uint8_t is_high = high;");
            lines.add("  uint8_t has_ended = ended;");
            lines.add("  before_" + port + " = levels;");
            lines.addAll(edges);
            lines.add("  high = is_high;");
            lines.add("  ended = has_ended;");
            lines.add("}");
          }
        });
    lines.add("");
  }

  private void begin(List<String> lines) {
    lines.add("void lampwright_inputs_begin(void) {");
    if (!channels().isEmpty()) {
      lines.add(
          "  "
              + target
                  .table()
                  .text("timer", Integer.toString(target.servoTimer(rig).orElseThrow()), "servo")
                  .replace("; ", ";\n  "));
    }
    for (Input input : rig.inputs()) {
      Pin pin = input.pin().orElseThrow();
      String port = port(pin);
      // The pull-up keeps a pin quiet on which nothing is plugged. A switch to the supply has a
      // resistor of its own to ground.
      boolean pullUp = InputPins.isChannel(input) || input.activeLow();
      lines.add("  /* " + input.id() + ": " + pin.name() + " */");
      lines.add("  DDR" + port + " &= (uint8_t) ~(" + bit(pin) + ");");
      lines.add(
          pullUp
              ? "  PORT" + port + " |= " + bit(pin) + ";"
              : "  PORT" + port + " &= (uint8_t) ~(" + bit(pin) + ");");
      if (InputPins.isChannel(input)) {
        List<String> words = groups.get(port);
        lines.add("  " + words.get(1) + " |= " + bit(pin) + ";");
      }
    }
    // A pulse that is under way is none: its beginning was not seen.
    groups.forEach(
        (port, words) -> {
          if (channels().stream().anyMatch(c -> port(c.pin().orElseThrow()).equals(port))) {
            lines.add("  before_" + port + " = PIN" + port + ";");
            lines.add("  PCICR |= 1 << " + words.get(2) + ";");
          }
        });
    lines.add("}");
    lines.add("");
  }

  private void read(List<String> lines) {
    lines.add("void lampwright_inputs_read(const lampwright_player *player) {");
    if (!channels().isEmpty()) {
      boolean inOrder =
          rig.inputs().indexOf(channels().get(channels().size() - 1)) == channels().size() - 1;
      if (!inOrder) {
        List<String> numbers =
            channels().stream().map(c -> Integer.toString(rig.inputs().indexOf(c))).toList();
        lines.add(
            "  static const uint8_t input[CHANNELS] LAMPWRIGHT_DATA = {"
                + String.join(", ", numbers)
                + "};");
      }
      lines.add("  uint8_t channel;");
      lines.add("  uint8_t bit = 1;");
      lines.add("  for (channel = 0; channel < CHANNELS; channel++) {");
      lines.add("    uint16_t width;");
      lines.add("    uint8_t is;");
      lines.add("    uint8_t saved = SREG;");
      lines.add("    cli();");
      lines.add("    width = ticks[channel];");
      lines.add("    is = ended & bit;");
      lines.add("    ended ^= is;");
      lines.add("    if ((uint16_t)(COUNT - width) > " + LONGEST_US + " * TICKS_PER_US) {");
      lines.add("      /* no pulse, or too long for one: the count would come round */");
      lines.add("      high &= (uint8_t)~bit;");
      lines.add("    }");
      lines.add("    SREG = saved;");
      lines.add("    if (is) {");
      lines.add(
          "      lampwright_situations_input(player, "
              + (inOrder ? "channel" : "LAMPWRIGHT_READ(input + channel)")
              + ",");
      lines.add(
          "                                  (uint16_t)((width + TICKS_PER_US / 2) / TICKS_PER_US));");
      lines.add("    }");
      lines.add("    bit = (uint8_t)(bit << 1);");
      lines.add("  }");
    }
    for (int i = 0; i < rig.inputs().size(); i++) {
      Input input = rig.inputs().get(i);
      if (!InputPins.isChannel(input)) {
        Pin pin = input.pin().orElseThrow();
        lines.add(
            "  lampwright_situations_input(player, "
                + i
                + ", (PIN"
                + port(pin)
                + " & "
                + bit(pin)
                + ") != 0);");
      }
    }
    lines.add("}");
  }
}
