package lampwright.exporters.target;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
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

  /**
   * What the routine does once it has the levels of all channels in r19: what it saved in r18, r19
   * and r22 lies on the stack, and r22 is what {@code STATES} was.
   */
  private static final String EDGES =
      """
      	push	r24
      	push	r25
      	lds	r24, _SFR_MEM_ADDR(COUNT_LOW)
      	lds	r25, _SFR_MEM_ADDR(COUNT_HIGH)
      	eor	r22, r19		; edges
      	breq	4f
      	push	r20
      	push	r21
      	push	r30
      	push	r31
      	mov	r18, r19
      	and	r18, r22
      	swap	r18			; a rising one begins a pulse; with a falling one it has ended, if it counts
      	or	r19, r18
      	sts	lampwright_pulses + STATES, r19
      	ldi	r30, lo8(lampwright_pulses - 2)
      	ldi	r31, hi8(lampwright_pulses - 2)
      1:	adiw	r30, 2
      	lsr	r18
      	lsr	r22
      	brcc	1b
      	movw	r20, r24
      	sbrc	r18, 3			; rising: the count; falling: what has gone by since
      	rjmp	2f
      	ld	r19, Z
      	sub	r20, r19
      	ldd	r19, Z + 1
      	sbc	r21, r19
      2:	st	Z, r20
      	std	Z + 1, r21
      	tst	r22
      	brne	1b
      	pop	r31
      	pop	r30
      	pop	r21
      	pop	r20
      4:	pop	r25
      	pop	r24
      	pop	r22
      	pop	r19
      	pop	r18
      	out	_SFR_IO_ADDR(SREG), r18
      	pop	r18
      	reti
      """;

  /**
   * Hands on the width of a channel: the bit in r18 that tells whether it counts, where its ticks
   * are in Z, its input in r22.
   */
  private static final String HAND_ON =
      """
      /* A pulse that has ended is handed on. One that lasts too long is none: the count would come round. */
      width:	in	r0, _SFR_IO_ADDR(SREG)
      	cli
      	lds	r19, lampwright_pulses + STATES
      	mov	r23, r19
      	and	r23, r18
      	breq	2f			; neither under way nor ended
      	ld	r20, Z
      	ldd	r21, Z + 1
      	eor	r23, r19
      	swap	r18
      	and	r18, r19
      	brne	1f
      	sts	lampwright_pulses + STATES, r23
      	out	_SFR_IO_ADDR(SREG), r0
      #if TICKS_PER_US == 2
      	subi	r20, 255		; ticks of half a microsecond
      	sbci	r21, 255
      	lsr	r21
      	ror	r20
      #endif
      	movw	r24, r16
      	JUMP	lampwright_situations_input
      1:	lds	r24, _SFR_MEM_ADDR(COUNT_LOW)
      	lds	r25, _SFR_MEM_ADDR(COUNT_HIGH)
      	sub	r24, r20
      	sbc	r25, r21
      	cpi	r24, lo8(LONGEST + 1)
      	ldi	r24, hi8(LONGEST + 1)
      	cpc	r25, r24
      	brlo	2f
      	sts	lampwright_pulses + STATES, r23
      2:	out	_SFR_IO_ADDR(SREG), r0
      	ret
      """;

  /** Names of inputs in one line of a comment, in characters. */
  private static final int MOST_NAMES = 80;

  private static final int CLOCK_RAM = 2;

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
      } else if (input.isChannel()
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
                served.isEmpty()
                    ? "use another controller"
                    : "use one of "
                        + AvrPins.list(served)
                        + ": it has pin-change interrupts on these alone"))
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

  /** The driver in C; only for a rig that is not refused. */
  String source() {
    List<String> lines = new ArrayList<>();
    lines.add("#include \"lampwright_inputs.h\"");
    lines.add("");
    lines.add("#include \"lampwright_situations.h\"");
    lines.add("#include \"lampwright_target.h\"");
    lines.add("");
    lines.add("#if LAMPWRIGHT_FITS_BOARD");
    lines.add("");
    lines.add("#include <avr/io.h>");
    lines.add("");
    if (!channels().isEmpty()) {
      lines.add("/* In lampwright_inputs_avr.S: ticks of the channels, then their levels. */");
      lines.add("extern uint8_t lampwright_pulses[];");
      lines.add("");
    }
    begin(lines);
    if (channels().isEmpty()) {
      lines.add("");
      readSwitches(lines);
    }
    lines.add("");
    lines.add("#endif");
    return String.join("\n", lines) + "\n";
  }

  /** The driver in assembler: pulses and how inputs are read; only if there are channels. */
  String assembly() {
    List<String> lines = new ArrayList<>();
    lines.add("/*");
    lines.add(
        " * Inputs: a change of a channel's pin calls a routine, which keeps the count of the timer at which a");
    lines.add(
        " * pulse began, then its width. They are handed on when the inputs are read, and switches are looked at.");
    lines.add(" */");
    lines.add("#include \"lampwright_config.h\"");
    lines.add("");
    lines.add("#if defined(" + target.macro() + ")");
    lines.add("");
    lines.add("#include <avr/io.h>");
    lines.add("");
    String timer = "TCNT" + target.servoTimer(rig).orElseThrow();
    lines.add("#define COUNT_LOW " + timer + "L");
    lines.add("#define COUNT_HIGH " + timer + "H");
    lines.add("#define LONGEST " + LONGEST_US * ticksPerUs());
    lines.add("#define TICKS_PER_US " + ticksPerUs());
    lines.add("#define CHANNELS " + channels().size());
    lines.add("/*");
    lines.add(
        " * Behind the ticks of the channels in lampwright_pulses: a channel's level in bit 0 to 3; in bit 4 to 7");
    lines.add(
        " * whether its pulse counts: while it is high, its beginning was seen; while it is low, it was not handed on.");
    lines.add(" */");
    lines.add("#define STATES (2 * CHANNELS)");
    lines.add("");
    lines.add("#if defined(__AVR_HAVE_JMP_CALL__)");
    lines.add("#define CALL call");
    lines.add("#define JUMP jmp");
    lines.add("#else");
    lines.add("#define CALL rcall");
    lines.add("#define JUMP rjmp");
    lines.add("#endif");
    lines.add("");
    lines.add("\t.section .bss.lampwright_pulses,\"aw\",@nobits");
    lines.add("\t.global\tlampwright_pulses");
    lines.add("lampwright_pulses:");
    lines.add("\t.space\tSTATES + 1");
    lines.add("");
    lines.add("\t.section .text.lampwright_inputs_avr,\"ax\",@progbits");
    lines.add("");
    routine(lines);
    read(lines);
    lines.addAll(HAND_ON.lines().toList());
    lines.add("");
    lines.add("#endif");
    return String.join("\n", lines) + "\n";
  }

  /** Ports with channels. */
  private List<String> channelPorts() {
    return channels().stream()
        .flatMap(c -> c.pin().stream())
        .flatMap(pin -> pin.port().stream())
        .distinct()
        .sorted()
        .toList();
  }

  /** Working memory that it takes, with that of the clock. */
  int ramBytes() {
    return channels().isEmpty() ? 0 : 2 * channels().size() + 1 + CLOCK_RAM;
  }

  private int ticksPerUs() {
    return target.megahertz() / AvrTarget.SERVO_DIVIDER;
  }

  /**
   * The routine of all channels: one that looked at its own port alone would take as long again.
   */
  private void routine(List<String> lines) {
    for (String port : channelPorts()) {
      lines.add("\t.global\t" + groups.get(port).get(0));
    }
    for (String port : channelPorts()) {
      lines.add(groups.get(port).get(0) + ":");
    }
    lines.add("\tpush\tr18");
    lines.add("\tin\tr18, _SFR_IO_ADDR(SREG)");
    lines.add("\tpush\tr18");
    lines.add("\tpush\tr19");
    lines.add("\tpush\tr22");
    lines.add("\tlds\tr22, lampwright_pulses + STATES");
    lines.add("\tmov\tr19, r22");
    for (String port : channelPorts()) {
      lines.add("\tin\tr18, _SFR_IO_ADDR(PIN" + port + ")");
      for (int c = 0; c < channels().size(); c++) {
        Pin pin = channels().get(c).pin().orElseThrow();
        if (port(pin).equals(port)) {
          lines.add("\tbst\tr18, " + pin.number() + "\t\t\t; " + channels().get(c).id());
          lines.add("\tbld\tr19, " + c);
        }
      }
    }
    lines.addAll(EDGES.lines().toList());
    lines.add("");
  }

  private static void ticks(List<String> lines, int channel) {
    lines.add("\tldi\tr30, lo8(lampwright_pulses + " + 2 * channel + ")");
    lines.add("\tldi\tr31, hi8(lampwright_pulses + " + 2 * channel + ")");
  }

  private void begin(List<String> lines) {
    lines.add("void lampwright_inputs_begin(void) {");
    if (!channels().isEmpty()) {
      lines.add("  uint8_t levels = 0;");
      lines.add(
          "  "
              + target
                  .table()
                  .text("timer", Integer.toString(target.servoTimer(rig).orElseThrow()), "servo")
                  .replace("; ", ";\n  "));
    }
    rig.inputs().stream()
        .map(input -> port(input.pin().orElseThrow()))
        .distinct()
        .sorted()
        .forEach(port -> beginPort(lines, port));
    // A pulse that is under way is none: its beginning was not seen.
    for (int c = 0; c < channels().size(); c++) {
      Pin pin = channels().get(c).pin().orElseThrow();
      lines.add("  if (PIN" + port(pin) + " & " + bit(pin) + ") {");
      lines.add("    levels |= 1 << " + c + ";");
      lines.add("  }");
    }
    if (!channels().isEmpty()) {
      lines.add("  lampwright_pulses[" + 2 * channels().size() + "] = levels;");
    }
    for (String port : channelPorts()) {
      lines.add("  " + groups.get(port).get(1) + " |= " + bits(port, Input::isChannel) + ";");
    }
    if (!channels().isEmpty()) {
      lines.add(
          "  PCICR |= "
              + channelPorts().stream()
                  .map(port -> "1 << " + groups.get(port).get(2))
                  .collect(Collectors.joining(" | "))
              + ";");
    }
    lines.add("}");
  }

  private void beginPort(List<String> lines, String port) {
    String names =
        rig.inputs().stream()
            .filter(input -> port(input.pin().orElseThrow()).equals(port))
            .map(input -> input.id() + " " + input.pin().orElseThrow().name())
            .collect(Collectors.joining(", "));
    if (names.length() <= MOST_NAMES) {
      lines.add("  /* " + names + " */");
    }
    // The pull-up keeps a pin quiet on which nothing is plugged. A switch to the supply has a
    // resistor of its own to ground.
    String pulledUp = bits(port, input -> input.isChannel() || input.activeLow());
    String others = bits(port, input -> !input.isChannel() && !input.activeLow());
    lines.add("  DDR" + port + " &= (uint8_t) ~(" + bits(port, input -> true) + ");");
    if (!pulledUp.isEmpty()) {
      lines.add("  PORT" + port + " |= " + pulledUp + ";");
    }
    if (!others.isEmpty()) {
      lines.add("  PORT" + port + " &= (uint8_t) ~(" + others + ");");
    }
  }

  /** The bits of the pins of inputs on a port; empty if there are none. */
  private String bits(String port, Predicate<Input> which) {
    return rig.inputs().stream()
        .filter(which)
        .map(input -> input.pin().orElseThrow())
        .filter(pin -> port(pin).equals(port))
        .map(AvrInputs::bit)
        .collect(Collectors.joining(" | "));
  }

  private void read(List<String> lines) {
    lines.add("\t.global\tlampwright_inputs_read");
    lines.add("lampwright_inputs_read:");
    lines.add("\tpush\tr16");
    lines.add("\tpush\tr17");
    lines.add("\tmovw\tr16, r24");
    for (int i = 0; i < rig.inputs().size(); i++) {
      Input input = rig.inputs().get(i);
      lines.add("\tldi\tr22, " + i + "\t\t\t; " + input.id());
      if (input.isChannel()) {
        int channel = channels().indexOf(input);
        lines.add("\tldi\tr18, 1 << " + (MOST_CHANNELS + channel));
        ticks(lines, channel);
        lines.add("\trcall\twidth");
      } else {
        Pin pin = input.pin().orElseThrow();
        lines.add("\tldi\tr20, 0");
        lines.add("\tsbic\t_SFR_IO_ADDR(PIN" + port(pin) + "), " + pin.number());
        lines.add("\tldi\tr20, 1");
        lines.add("\tldi\tr21, 0");
        lines.add("\tmovw\tr24, r16");
        lines.add("\tCALL\tlampwright_situations_input");
      }
    }
    lines.add("\tpop\tr17");
    lines.add("\tpop\tr16");
    lines.add("\tret");
    lines.add("");
  }

  private void readSwitches(List<String> lines) {
    lines.add("void lampwright_inputs_read(const lampwright_player *player) {");
    for (int i = 0; i < rig.inputs().size(); i++) {
      Pin pin = rig.inputs().get(i).pin().orElseThrow();
      lines.add(
          "  lampwright_situations_input(player, "
              + i
              + ", (PIN"
              + port(pin)
              + " & "
              + bit(pin)
              + ") != 0);");
    }
    lines.add("}");
  }
}
