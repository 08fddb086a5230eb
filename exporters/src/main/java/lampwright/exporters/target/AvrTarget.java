package lampwright.exporters.target;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import lampwright.engine.meter.LineTimes;
import lampwright.engine.meter.WireTime;
import lampwright.engine.review.Code;
import lampwright.engine.review.Figure;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Subject;
import lampwright.engine.review.Unit;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;
import lampwright.exporters.packed.play.ShowRoom;

/** An 8-bit AVR: chains by timed loops, outputs by its timers. */
abstract sealed class AvrTarget extends Target permits Atmega328p, Atmega32u4, Attiny85 {
  /** The timer with which a hobby IDE's own functions tell the time. */
  private static final int IDE_TIMER = 0;

  /** An AVR reads a pin as high from this share of its supply (datasheets, from memory). */
  private static final double HIGH_SHARE = 0.6;

  /** From the last bit of a chain to the first of the next, us: measured, rounded up. */
  private static final double BETWEEN_CHAINS_US = 10;

  /** The slowest step of the timer (datasheets), so that it wraps as seldom as can be. */
  private static final int CLOCK_DIVIDER = 1024;

  /** That of the timer that tells the time of servo pulses. */
  static final int SERVO_DIVIDER = 8;

  /**
   * A tick of the frame clock, us, where that timer counts frames: as short as can be where half of
   * 65,536 are to be more than a second.
   */
  static final int SERVO_TICK_US = 32;

  /** Program memory of what calls a chain's routine and sets an output: measured with avr-size. */
  private static final int CHAIN_BYTES = 45;

  private static final int OUTPUT_BYTES = 30;

  /** Likewise of situations: times of 4 bytes, four channels on three ports, a switch. */
  private static final int SITUATIONS_BYTES = 1450;

  /** What lampwright_situations_frame takes of the stack, and the routine of a pulse. */
  private static final int SITUATIONS_STACK = 32;

  /** Of a bit of its serial line at double speed (datasheets). */
  private static final double CYCLES_PER_STEP = 8;

  private final AvrPins pins;
  private final int hertz;

  AvrTarget(Controller controller, TargetTable table) {
    super(controller, table);
    this.pins = AvrPins.of(table);
    List<Integer> clocks = clocksMegahertz();
    int stated = controller.clockMegahertz().orElse(clocks.get(0));
    this.hertz = MHZ * (clocks.contains(stated) ? stated : clocks.get(0));
  }

  /** The macro by which its compiler tells it from others. */
  abstract String macro();

  /** The clocks that its driver is made for, the usual one first. */
  final List<Integer> clocksMegahertz() {
    return table().numbers("clocksMegahertz");
  }

  final AvrPins avrPins() {
    return pins;
  }

  @Override
  public final String family() {
    return "avr";
  }

  @Override
  public final boolean interruptsBits() {
    return true;
  }

  @Override
  public final boolean namesPorts() {
    return true;
  }

  @Override
  public final boolean drivesPins() {
    return true;
  }

  @Override
  public final OptionalInt hertz() {
    return OptionalInt.of(hertz);
  }

  /** At double speed, where a bit takes eight times a whole number of cycles. */
  @Override
  public final double baudError(int baud) {
    double steps = hertz / (CYCLES_PER_STEP * baud);
    return steps / Math.max(1, Math.round(steps)) - 1;
  }

  @Override
  final PinPlan plan(Rig rig) {
    return new AvrPinPlanner(rig, pins, name(), servoTimer(rig)).plan();
  }

  /** The timer that tells the time of servo pulses; none if there are none, or it has none. */
  final OptionalInt servoTimer(Rig rig) {
    boolean needed = rig.inputs().stream().anyMatch(Input::isChannel);
    return needed && table().find("servoTimer").isPresent()
        ? OptionalInt.of(table().number("servoTimer"))
        : OptionalInt.empty();
  }

  @Override
  public final Optional<InputLevels> inputLevels(Rig rig) {
    double volts = rig.pinVolts();
    return Optional.of(
        new InputLevels(
            HIGH_SHARE * volts,
            volts,
            "AVR: high from 0.6 of the supply (datasheets); common practice"));
  }

  @Override
  public final List<Finding> inputRefusals(Rig rig) {
    return new AvrInputs(this, rig).refusals();
  }

  @Override
  public final ImmutableMap<String, String> inputSources(Rig rig) {
    AvrInputs inputs = new AvrInputs(this, rig);
    List<String> names = inputSourceNames(rig);
    return names.size() == 1
        ? ImmutableMap.of(names.get(0), inputs.source())
        : ImmutableMap.of(names.get(0), inputs.source(), names.get(1), inputs.assembly());
  }

  @Override
  public final List<String> inputSourceNames(Rig rig) {
    List<String> names = super.inputSourceNames(rig);
    return servoTimer(rig).isPresent()
        ? List.of(names.get(0), "src/lampwright_inputs_avr.S")
        : names;
  }

  @Override
  public final List<String> reactingSources() {
    return List.of("src/lampwright_situations_avr.S");
  }

  @Override
  public final Line line(Chain chain) {
    LineLimits limits = LineLimits.of(chain.type().line());
    return wave(chain)
        .map(wave -> sent(wave, limits))
        .orElseGet(() -> new Line.Impossible(impossible(chain, limits)));
  }

  private Line sent(AvrWave wave, LineLimits limits) {
    SentTimes times = wave.at(hertz);
    return new Line.Sent(times, limits.room(times), wave.way() == AvrWave.Way.WRITES_PORT);
  }

  private Finding impossible(Chain chain, LineLimits limits) {
    String others =
        clocksMegahertz().stream()
            .filter(clock -> AvrWaves.find(limits, clock * MHZ).isPresent())
            .map(clock -> clock + " MHz")
            .collect(Collectors.joining(" or "));
    return Finding.of(Code.LINE_IMPOSSIBLE, new Subject.OneChain(chain.id()))
        .with("type", Figure.words(chain.type().id()))
        .with("name", Figure.words(clockedName()))
        .with("step", Figure.of(1e9 / hertz, 1, Unit.NANOSECONDS))
        .with("limits", Figure.words(limits.words()))
        .with(
            "remedy",
            Figure.words(
                others.isEmpty()
                    ? "use other pixels or another controller"
                    : "use a clock of " + others))
        .source("line times of the pixel type")
        .make();
  }

  @Override
  public final LineTimes lineTimes(Rig rig) {
    List<WireTime> chains = new ArrayList<>();
    double bitsUs = 0;
    double resetUs = 0;
    for (Chain chain : rig.chains()) {
      WireTime wire =
          line(chain) instanceof Line.Sent sent
              ? WireTime.of(chain, sent.times().bitNs())
              : WireTime.of(chain);
      chains.add(wire);
      bitsUs += wire.pixels() * wire.pixelUs() + BETWEEN_CHAINS_US;
      resetUs = Math.max(resetUs, wire.resetUs());
    }
    // The longest reset is waited for before the first chain, and the chains follow in turn.
    return new LineTimes(chains, resetUs + bitsUs, true);
  }

  @Override
  public final double ceilingUs(Rig rig) {
    List<Integer> cycles = table().numbers("ceilingCycles");
    int runs = rig.outputs().size();
    int weights = rig.outputs().size();
    int bytes = rig.outputs().size();
    for (Chain chain : rig.chains()) {
      runs++;
      weights += chain.order().size();
      bytes += chain.bytes();
    }
    return (double)
            (cycles.get(0) + runs * cycles.get(1) + weights * cycles.get(2) + bytes * cycles.get(3))
        / megahertz();
  }

  @Override
  public final List<Finding> refusals(Rig rig) {
    List<Finding> refusals = new ArrayList<>();
    controller()
        .clockMegahertz()
        .ifPresent(
            clock -> {
              if (!clocksMegahertz().contains(clock)) {
                refusals.add(unsupported(clock, clocksMegahertz()));
              }
            });
    refusals.addAll(pins(rig).refusals());
    for (Chain chain : rig.chains()) {
      if (line(chain) instanceof Line.Impossible impossible) {
        refusals.add(impossible.why());
      }
    }
    size(rig).ramRefusal().ifPresent(refusals::add);
    return refusals;
  }

  @Override
  public List<Finding> cautions(Rig rig) {
    List<String> late =
        pins(rig).outputs().stream()
            .flatMap(Optional::stream)
            .filter(pin -> pins.pwm().containsKey(pin))
            .filter(pin -> pins.pwm().get(pin).timer() == IDE_TIMER)
            .map(Pin::name)
            .toList();
    if (late.isEmpty()) {
      return List.of();
    }
    return List.of(
        Finding.of(Code.IDE_TIMER, new Subject.Chip(name()))
            .with("pins", Figure.words(String.join(", ", late)))
            .at("rig.outputs")
            .make());
  }

  @Override
  final int codeBytes(Rig rig) {
    return table().number("programBytes")
        + AvrSendings.of(this, rig).bytes()
        + CHAIN_BYTES * rig.chains().size()
        + OUTPUT_BYTES * rig.outputs().size();
  }

  @Override
  final int situationsBytes() {
    return SITUATIONS_BYTES;
  }

  @Override
  final int situationsRam(Rig rig, ShowRoom room) {
    AvrInputs inputs = new AvrInputs(this, rig);
    return room.assemblerBytes() + inputs.ramBytes() + SITUATIONS_STACK;
  }

  @Override
  public final List<String> proofWords(Rig rig) {
    return new AvrProof(this, rig, false).words();
  }

  @Override
  public final List<String> proofWordsWithGaps(Rig rig) {
    return new AvrProof(this, rig, true).words();
  }

  @Override
  public final double servoErrorUs() {
    return Double.parseDouble(table().text("servoErrorUs", Integer.toString(megahertz())));
  }

  @Override
  public final FrameClock frameClock(Rig rig) {
    int timer = pins(rig).clockTimer().orElseThrow();
    double tickUs = servoTimer(rig).isPresent() ? SERVO_TICK_US : CLOCK_DIVIDER * 1.0 / megahertz();
    return new FrameClock(timer, tickUs, pins.timers().get(timer).wide());
  }

  @Override
  public final List<String> sourceNames() {
    return AvrSources.NAMES;
  }

  @Override
  public final ImmutableMap<String, String> words() {
    return ImmutableMap.of(
        "MCU",
        controller().id(),
        "CLOCK",
        Integer.toString(hertz),
        "PROGRAMMER",
        table().text("programmer"));
  }

  @Override
  public final ImmutableMap<String, String> sources(Rig rig) {
    return new AvrSources(this, rig).all();
  }

  @Override
  public final List<String> fixedSources() {
    return ImmutableList.<String>builder()
        .add("avr/Makefile", "avr/main.c", "src/lampwright_player_avr.S")
        .add("src/lampwright_live.h")
        .addAll(liveSources())
        .build();
  }

  /** The bits of a chain; none if it can't send it. */
  final Optional<AvrWave> wave(Chain chain) {
    return AvrWaves.find(LineLimits.of(chain.type().line()), hertz);
  }
}
