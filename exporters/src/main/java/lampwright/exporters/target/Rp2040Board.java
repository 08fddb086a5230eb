package lampwright.exporters.target;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;

/**
 * What is fitted to the pins of an RP2040, as its driver takes it. Immutable.
 *
 * @param chains in rig order
 * @param outputPins GP numbers of the outputs, in rig order
 * @param inputs in rig order; none if they can't be read
 * @param pioDivider whole divider of the state machines' clock
 * @param pwmDivider divider of the PWM's clock, in sixteenths
 * @param pwmTop where the PWM's count begins anew
 */
public record Rp2040Board(
    List<Line> chains,
    List<Integer> outputPins,
    List<InputPin> inputs,
    int pioDivider,
    int pwmDivider,
    int pwmTop) {
  /** Two PIO blocks have four state machines each (RP2040 datasheet). */
  public static final int MAX_CHAINS = 8;

  /** Of which each chain and each receiver channel has one. */
  public static final int MACHINES = 8;

  /** As many as a rig can have. */
  public static final int MAX_INPUTS = 32;

  /** Eight PWM slices have two channels each (RP2040 datasheet). */
  public static final int MAX_OUTPUTS = 16;

  /** The frame is numbered in 16 bits by the player. */
  public static final int MAX_FRAME_BYTES = 65_535;

  /** From frame to frame beyond the time on the wire: the frame is copied, then sent. Ours. */
  private static final int SPARE_US = 4;

  private static final double NS_PER_US = 1000;

  /**
   * One chain.
   *
   * @param pin GP number
   * @param bits what is sent
   * @param bytes of a frame
   * @param busyUs from its first bit until its pixels can take the next frame, us
   */
  public record Line(int pin, Rp2040Bits bits, int bytes, int busyUs) {}

  /**
   * One input.
   *
   * @param pin GP number
   * @param kind 0 receiver channel, 1 switch, 2 switch to ground
   */
  public record InputPin(int pin, int kind) {
    static InputPin of(Input input) {
      int kind = input.isChannel() ? 0 : input.activeLow() ? 2 : 1;
      return new InputPin(input.pin().orElseThrow().number(), kind);
    }
  }

  public Rp2040Board {
    chains = List.copyOf(chains);
    outputPins = List.copyOf(outputPins);
    inputs = List.copyOf(inputs);
  }

  /** Bytes of a frame. */
  public int frameBytes() {
    return chains.stream().mapToInt(Line::bytes).sum() + outputPins.size();
  }

  static Rp2040Board of(Rp2040 target, Rig rig) {
    PinPlan plan = target.pins(rig);
    List<Line> lines = new ArrayList<>();
    for (int c = 0; c < rig.chains().size(); c++) {
      Chain chain = rig.chains().get(c);
      Rp2040Bits bits = target.bits(chain).orElseThrow();
      double bitNs = bits.at(target.stepNs()).bitNs();
      double busyUs = chain.bytes() * 8 * bitNs / NS_PER_US + chain.type().line().resetUs();
      lines.add(
          new Line(
              number(plan.chains().get(c)),
              bits,
              chain.bytes(),
              (int) Math.ceil(busyUs) + SPARE_US));
    }
    return new Rp2040Board(
        lines,
        plan.outputs().stream().map(Rp2040Board::number).toList(),
        target.inputRefusals(rig).isEmpty()
            ? rig.inputs().stream().map(InputPin::of).toList()
            : List.of(),
        target.table().number("pioDivider"),
        target.table().number("pwmDividerSixteenths"),
        target.table().number("pwmTop"));
  }

  private static int number(Optional<Pin> pin) {
    return pin.orElseThrow().number();
  }

  /** The board as C source. */
  String source() {
    StringBuilder text = new StringBuilder();
    text.append("#include \"lampwright_board.h\"\n\n");
    text.append("/* Pins and times of the data lines, as exported. */\n");
    text.append("/* clang-format off */\nstatic const lampwright_board fitted = {\n");
    text.append("    ").append(chains.size()).append(", ").append(outputPins.size());
    text.append(", ").append(pioDivider).append(", ").append(pwmDivider).append(", ");
    text.append(pwmTop).append(",\n    {\n");
    for (int i = 0; i < MAX_CHAINS; i++) {
      text.append("        {").append(i < chains.size() ? words(chains.get(i)) : NO_CHAIN);
      text.append("},\n");
    }
    text.append("    },\n    {");
    for (int i = 0; i < MAX_OUTPUTS; i++) {
      text.append(i == 0 ? "" : ", ").append(i < outputPins.size() ? outputPins.get(i) : 0);
    }
    text.append("},\n    ").append(inputs.size()).append(", {0, 0, 0},\n    {");
    for (int i = 0; i < MAX_INPUTS; i++) {
      InputPin input = i < inputs.size() ? inputs.get(i) : NO_INPUT;
      text.append(i == 0 ? "" : ", ");
      text.append('{').append(input.pin).append(", ").append(input.kind).append('}');
    }
    text.append("},\n};\n/* clang-format on */\n\n");
    return text.append("const lampwright_board *const lampwright_fitted = &fitted;\n").toString();
  }

  private static final InputPin NO_INPUT = new InputPin(0, 0);

  private static final String NO_CHAIN = "0, 0, 0, 0, 0, 0, 0, 0";

  private static String words(Line line) {
    Rp2040Bits bits = line.bits;
    return String.join(
        ", ",
        List.of(
                line.pin,
                bits.high(),
                bits.high1(),
                bits.low0(),
                bits.low(),
                0,
                line.bytes,
                line.busyUs)
            .stream()
            .map(String::valueOf)
            .toList());
  }
}
