package lampwright.exporters.target;

import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;

/** Writes the driver of a rig for an AVR: a block for each chain, output and timer it has. */
final class AvrSources {
  static final List<String> NAMES =
      List.of(
          "src/lampwright_target.h",
          "src/lampwright_clock.c",
          "src/lampwright_wire.c",
          "src/lampwright_wire_avr.S",
          "src/lampwright_outputs.c");

  private static final long MILLIHERTZ_OF_1_US = 1_000_000_000;

  /** The names of chains that are put into one line of a comment, in characters. */
  private static final int MAX_NAMES = 30;

  private final AvrTarget target;
  private final Rig rig;
  private final PinPlan plan;
  private final AvrSendings sendings;

  /**
   * The driver of a rig.
   *
   * @param rig one that the target does not refuse
   */
  AvrSources(AvrTarget target, Rig rig) {
    this.target = target;
    this.rig = rig;
    this.plan = target.pins(rig);
    this.sendings = AvrSendings.of(target, rig);
  }

  private AvrSendings.Sending sending(int chain) {
    return sendings.ofChains().get(chain).orElseThrow();
  }

  private Pin chainPin(int chain) {
    return plan.chains().get(chain).orElseThrow();
  }

  private static String port(Pin pin) {
    return pin.port().orElseThrow();
  }

  private static String mask(Pin pin) {
    return "1 << " + pin.number();
  }

  ImmutableMap<String, String> all() {
    return ImmutableMap.of(
        NAMES.get(0), targetHeader(),
        NAMES.get(1), clock(),
        NAMES.get(2), wire(),
        NAMES.get(3), assembly(),
        NAMES.get(4), outputs());
  }

  private String targetHeader() {
    String again = "or export for another";
    return text(
        "#ifndef LAMPWRIGHT_TARGET_H",
        "#define LAMPWRIGHT_TARGET_H",
        "",
        "/* What this folder was exported for. Pins, timers and cycle counts hold for nothing else. */",
        "#if !defined(" + target.macro() + ")",
        "#error \"made for the " + target.name() + ": choose it as the board, " + again + "\"",
        "#define LAMPWRIGHT_FITS_BOARD 0",
        "#elif !defined(F_CPU)",
        "#error \"F_CPU is not defined: compile with -DF_CPU=" + target.hertz().getAsInt() + "UL\"",
        "#define LAMPWRIGHT_FITS_BOARD 0",
        "#elif F_CPU != " + target.hertz().getAsInt(),
        "#error \"made for " + target.megahertz() + " MHz: choose that clock, " + again + "\"",
        "#define LAMPWRIGHT_FITS_BOARD 0",
        "#else",
        "#define LAMPWRIGHT_FITS_BOARD 1",
        "#endif",
        "",
        "/* How often the frame clock ticks; in a hobby IDE it is the IDE's own clock. */",
        "#if defined(ARDUINO)",
        "#define LAMPWRIGHT_TICK_MILLIHERTZ 15625000",
        "#else",
        "#define LAMPWRIGHT_TICK_MILLIHERTZ "
            + (target.servoTimer(rig).isPresent()
                ? MILLIHERTZ_OF_1_US / AvrTarget.SERVO_TICK_US
                : "(F_CPU * 1000ULL / 1024)"),
        "#endif",
        "",
        "/*",
        " * Marks for a simulator that counts cycles: the general-purpose register 0 takes 1 as a frame",
        " * begins to be decoded, 2 when it is decoded, 3 when it is on the pins. Two cycles each; none",
        " * without LAMPWRIGHT_PROBE.",
        " */",
        "#if defined(LAMPWRIGHT_PROBE)",
        "#include <avr/io.h>",
        "#define LAMPWRIGHT_MARK(number) (GPIOR0 = (number))",
        "#else",
        "#define LAMPWRIGHT_MARK(number) ((void)0)",
        "#endif",
        "",
        "#endif");
  }

  private String clock() {
    OptionalInt number = plan.clockTimer();
    AvrPins.Timer timer = target.avrPins().timers().get(number.orElseThrow());
    List<String> lines = new ArrayList<>();
    add(lines, "#include \"lampwright_clock.h\"", "", "#include \"lampwright_target.h\"", "");
    add(lines, "#if LAMPWRIGHT_FITS_BOARD", "", "#if defined(ARDUINO)", "");
    add(lines, "#include <Arduino.h>", "", "void lampwright_clock_begin(void) {}", "");
    add(
        lines,
        "uint16_t lampwright_clock_now(void) { return (uint16_t)(micros() >> 6); }",
        "",
        "#else",
        "");
    if (timer.wide()) {
      add(lines, "#include <avr/interrupt.h>");
    }
    add(lines, "#include <avr/io.h>", "");
    add(
        lines,
        "/* Timer "
            + number.getAsInt()
            + ". The mode is set too: a boot loader may have used it. */",
        "void lampwright_clock_begin(void) {");
    boolean servo = target.servoTimer(rig).isPresent();
    statements(
        lines,
        servo
            ? target.table().text("timer", Integer.toString(number.getAsInt()), "servo")
            : timer.clock());
    add(lines, "}", "");
    String count = "TCNT" + number.getAsInt();
    if (servo) {
      add(
          lines,
          "#define COUNTS_PER_TICK (uint16_t)(F_CPU / "
              + Target.MHZ / AvrTarget.SERVO_TICK_US * AvrTarget.SERVO_DIVIDER
              + ")",
          "",
          "/* The count comes round in " + comesRoundMs() + " ms: call it at least as often. */",
          "uint16_t lampwright_clock_now(void) {",
          "  static uint16_t now; /* its low bits are the count's high ones when it was last read */",
          "  uint8_t saved = SREG;",
          "  uint16_t count;",
          "  cli();",
          "  count = " + count + ";",
          "  SREG = saved;",
          "  now += (uint16_t)(count / COUNTS_PER_TICK - now) & (0xFFFF / COUNTS_PER_TICK);",
          "  return now;",
          "}");
    } else if (timer.wide()) {
      add(
          lines,
          "/* The halves of a 16-bit count are read through a register that interrupt routines may use too. */",
          "uint16_t lampwright_clock_now(void) {",
          "  uint8_t saved = SREG;",
          "  uint16_t now;",
          "  cli();",
          "  now = " + count + ";",
          "  SREG = saved;",
          "  return now;",
          "}");
    } else {
      add(
          lines,
          "uint16_t lampwright_clock_now(void) {",
          "  static uint16_t now; /* its low byte is the count when it was last read */",
          "  now += (uint8_t)(" + count + " - (uint8_t)now);",
          "  return now;",
          "}");
    }
    add(lines, "", "#endif", "", "#endif");
    return text(lines.toArray(String[]::new));
  }

  private int comesRoundMs() {
    int countUs = 65_536 / (target.megahertz() / AvrTarget.SERVO_DIVIDER);
    return countUs / 1000;
  }

  private String wire() {
    List<String> lines = new ArrayList<>();
    if (rig.chains().isEmpty()) {
      return text("#include \"lampwright_wire.h\"", "", "/* No chain is fitted. */");
    }
    add(lines, "#include \"lampwright_wire.h\"", "", "#include \"lampwright_target.h\"", "");
    add(lines, "#if LAMPWRIGHT_FITS_BOARD", "");
    add(lines, "#include <avr/interrupt.h>", "#include <avr/io.h>", "");
    add(lines, "#ifdef __cplusplus", "extern \"C\" {", "#endif", "");
    sendings.numbers().forEach((sending, number) -> prototype(lines, sending, number));
    add(lines, "#ifdef __cplusplus", "}", "#endif", "");
    add(lines, "void lampwright_wire_begin(void) {");
    for (int c = 0; c < rig.chains().size(); c++) {
      Pin pin = chainPin(c);
      add(lines, "  /* Chain " + c + ", " + rig.chains().get(c).id() + ": " + pin.name() + ". */");
      add(lines, "  PORT" + port(pin) + " &= (uint8_t) ~(" + mask(pin) + ");");
      add(lines, "  DDR" + port(pin) + " |= " + mask(pin) + ";");
    }
    add(lines, "}", "");
    add(lines, "#define REST (" + target.megahertz() + "UL * LAMPWRIGHT_RESET_US)", "");
    add(lines, "void lampwright_wire_rest(void) { __builtin_avr_delay_cycles(REST); }", "");
    add(lines, "uint16_t lampwright_wire_bytes(uint8_t chain) {", "  switch (chain) {");
    for (int c = 0; c < rig.chains().size(); c++) {
      add(lines, "  case " + c + ":", "    return LAMPWRIGHT_CHAIN_" + c + "_BYTES;");
    }
    add(lines, "  default:", "    return 0;", "  }", "}", "");
    add(lines, "void lampwright_wire_chain(uint8_t chain, const uint8_t *bytes) {");
    add(lines, "  uint8_t saved = SREG;");
    if (sendings.numbers().keySet().stream().anyMatch(sending -> !sending.port().isEmpty())) {
      add(lines, "  uint8_t high;", "  uint8_t low;");
    }
    add(lines, "  switch (chain) {");
    for (int c = 0; c < rig.chains().size(); c++) {
      send(lines, c);
    }
    add(lines, "  default:", "    break;", "  }", "  SREG = saved;", "}", "");
    add(lines, "#endif");
    return text(lines.toArray(String[]::new));
  }

  private void prototype(List<String> lines, AvrSendings.Sending sending, int number) {
    String chains =
        rig.chains().stream()
            .filter(chain -> sending(rig.chains().indexOf(chain)).equals(sending))
            .map(Chain::id)
            .collect(Collectors.joining(", "));
    SentTimes times = sending.wave().at(target.hertz().getAsInt());
    add(
        lines,
        String.format(
            Locale.ROOT,
            "/* A 0 is high for %.0f ns and low for %.0f, a 1 for %.0f and %.0f: %s. */",
            times.t0hNs(),
            times.t0lNs(),
            times.t1hNs(),
            times.t1lNs(),
            chains.length() > MAX_NAMES ? "several chains" : chains));
    String start = "void lampwright_send_" + number + "(const uint8_t *bytes, uint16_t count, ";
    String indent = " ".repeat(start.indexOf('(') + 1);
    if (sending.port().isEmpty()) {
      add(lines, start + "volatile uint8_t *pin, uint8_t mask,");
      add(lines, indent + "uint8_t saved);", "");
    } else {
      add(lines, start + "uint8_t high, uint8_t low,", indent + "uint8_t saved);", "");
    }
  }

  // The line is set low first, in case the builder's code has left it high: the routine flips it.
  private void send(List<String> lines, int c) {
    Pin pin = chainPin(c);
    AvrSendings.Sending sending = sending(c);
    String port = "PORT" + port(pin);
    String low = "(uint8_t)(" + port + " & ~(" + mask(pin) + "))";
    add(lines, "  case " + c + ": /* " + rig.chains().get(c).id() + " */");
    String count = "LAMPWRIGHT_CHAIN_" + c + "_BYTES, ";
    String call = "    lampwright_send_" + sendings.numbers().get(sending) + "(bytes, " + count;
    if (sending.port().isEmpty()) {
      add(lines, "    " + port + " &= (uint8_t) ~(" + mask(pin) + ");");
      add(lines, "    cli();");
      add(lines, call + "&PIN" + port(pin) + ", " + mask(pin) + ", saved);");
    } else {
      add(lines, "    cli();");
      add(lines, "    high = (uint8_t)(" + port + " | " + mask(pin) + ");");
      add(lines, "    low = " + low + ";");
      add(lines, call + "high, low, saved);");
    }
    add(lines, "    break;");
  }

  private String assembly() {
    List<String> lines = new ArrayList<>();
    add(
        lines,
        "/*",
        " * The routines that send, in cycles of "
            + target.megahertz()
            + " MHz; t counts from the rising edge.",
        " *",
        " * Interrupts (LAMPWRIGHT_INTERRUPTS 1) are let in while the line is low, once in each of the",
        " * bits 7 to 1 of every byte, and held off for the rest: for two bits at most, however long the",
        " * chain is. After an interrupt routine returns, the controller always does one more instruction,",
        " * and that one holds interrupts off again; so one gap between bits holds one routine.",
        " */",
        "#include \"lampwright_config.h\"",
        "",
        "#if defined(" + target.macro() + ") && LAMPWRIGHT_CHAINS > 0",
        "",
        "#include <avr/io.h>",
        "",
        "#if LAMPWRIGHT_INTERRUPTS",
        "#define LET_IN out _SFR_IO_ADDR(SREG), r16",
        "#define HOLD_OFF cli",
        "#else",
        "#define LET_IN nop",
        "#define HOLD_OFF nop",
        "#endif",
        "",
        "\t.text");
    sendings
        .numbers()
        .forEach(
            (sending, number) -> {
              String name = "lampwright_send_" + number;
              add(lines, "", "\t.section .text." + name + ", \"ax\", @progbits");
              add(
                  lines,
                  AvrRoutine.of(sending.wave())
                      .text(name, "PORT" + sending.port())
                      .stripTrailing());
            });
    add(lines, "", "#endif");
    return text(lines.toArray(String[]::new));
  }

  private String outputs() {
    List<String> lines = new ArrayList<>();
    if (rig.outputs().isEmpty()) {
      return text("#include \"lampwright_outputs.h\"", "", "/* No driver output is fitted. */");
    }
    add(lines, "#include \"lampwright_outputs.h\"", "", "#include \"lampwright_target.h\"", "");
    add(lines, "#if LAMPWRIGHT_FITS_BOARD", "");
    Map<Integer, List<Integer>> ofTimer = new LinkedHashMap<>();
    for (int o = 0; o < rig.outputs().size(); o++) {
      ofTimer.computeIfAbsent(pwm(o).timer(), timer -> new ArrayList<>()).add(o);
    }
    if (ofTimer.containsKey(0)) {
      add(lines, "#if defined(ARDUINO)");
      add(
          lines,
          "#error \"timer 0 keeps the time of the IDE's own functions: put the outputs on other pins\"",
          "#endif",
          "");
    }
    add(lines, "#include <avr/io.h>", "");
    add(
        lines,
        "/*",
        " * The timers count up and down (phase-correct PWM, 8 bits): the pin is high for duty/255 of the",
        " * time, low throughout at 0 and high throughout at 255. Counting up only would leave a spike of",
        " * 1/256 at 0. One period takes 510 x 64 cycles: 490 Hz at 16 MHz, 245 Hz at 8 MHz. Timer 1 of the",
        " * ATtiny85 can only count up, but holds its pin low at 0 and high at 255 (datasheet, 12.2.2).",
        " */",
        "void lampwright_outputs_begin(void) {");
    ofTimer.forEach(
        (timer, outputs) -> {
          add(lines, "  /* Timer " + timer + ". */");
          statements(lines, target.avrPins().timers().get(timer).pwm());
          outputs.forEach(o -> begin(lines, o));
        });
    add(lines, "}", "");
    add(lines, "void lampwright_outputs_set(const uint8_t *duties) {");
    for (int o = 0; o < rig.outputs().size(); o++) {
      add(lines, "  /* " + output(o).id() + " */");
      add(lines, "  " + pwm(o).duty() + " = duties[" + o + "];");
    }
    add(lines, "}", "", "#endif");
    return text(lines.toArray(String[]::new));
  }

  private void begin(List<String> lines, int o) {
    Pin pin = outputPin(o);
    AvrPins.Pwm pwm = pwm(o);
    add(lines, "  /* Output " + o + ", " + output(o).id() + ": " + pin.name() + ". */");
    add(lines, "  " + pwm.duty() + " = 0;");
    add(lines, "  DDR" + port(pin) + " |= " + mask(pin) + ";");
    add(lines, "  " + pwm.control().register() + " |= 1 << " + pwm.control().bit() + ";");
  }

  private DriverOutput output(int o) {
    return rig.outputs().get(o);
  }

  private Pin outputPin(int o) {
    return plan.outputs().get(o).orElseThrow();
  }

  private AvrPins.Pwm pwm(int o) {
    return Optional.ofNullable(target.avrPins().pwm().get(outputPin(o))).orElseThrow();
  }

  private static void statements(List<String> lines, String code) {
    for (String statement : code.split("; ?", -1)) {
      if (!statement.isEmpty()) {
        add(lines, "  " + statement + ";");
      }
    }
  }

  private static void add(List<String> lines, String... more) {
    lines.addAll(List.of(more));
  }

  private static String text(String... lines) {
    return String.join("\n", lines) + "\n";
  }
}
