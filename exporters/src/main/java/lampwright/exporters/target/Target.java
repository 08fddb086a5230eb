package lampwright.exporters.target;

import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import lampwright.engine.facts.SourcedNumber;
import lampwright.engine.meter.LineTimes;
import lampwright.engine.review.Code;
import lampwright.engine.review.Figure;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Subject;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;
import lampwright.exporters.packed.play.DecodeCost;
import lampwright.exporters.packed.play.ShowRoom;

/**
 * A controller as the firmware sees it, at one clock. Everything that the program knows of a
 * controller it asks here. Immutable.
 */
public abstract sealed class Target permits AvrTarget, Rp2040, HookTarget {
  /** The controller that firmware is made for where the project names none. */
  public static final String DEFAULT = Atmega328p.ID;

  private final Controller controller;
  private final TargetTable table;
  private final Memory memory;

  Target(Controller controller, TargetTable table) {
    this.controller = controller;
    this.table = table;
    this.memory = Memory.of(table);
  }

  /** What the rig's firmware is made for: its controller, or else the {@link #DEFAULT} one. */
  public static Target of(Rig rig) {
    return of(rig.controller().orElseGet(() -> Controller.find(DEFAULT).orElseThrow()));
  }

  /** A controller at the clock that it states, or else at its usual one. */
  public static Target of(Controller controller) {
    return switch (controller.id()) {
      case Atmega328p.ID -> new Atmega328p(controller);
      case Atmega32u4.ID -> new Atmega32u4(controller);
      case Attiny85.ID -> new Attiny85(controller);
      case Rp2040.ID -> new Rp2040(controller);
      default -> new HookTarget(controller);
    };
  }

  /** Those of which something is known, in the order in which they are listed to people. */
  public static List<Target> known() {
    return Controller.all().stream()
        .map(Target::of)
        .filter(target -> !target.table().isEmpty())
        .toList();
  }

  public final Controller controller() {
    return controller;
  }

  /** Its name for people. */
  public final String name() {
    return controller.name();
  }

  public final Memory memory() {
    return memory;
  }

  /** Everything that is known of it, each with its source. */
  public final List<SourcedNumber> numbers() {
    return table.items();
  }

  final TargetTable table() {
    return table;
  }

  /** The ratings of its pins; none if nothing is known. */
  public final Optional<PinCurrents> pinCurrents() {
    return PinCurrents.of(table);
  }

  /** Bytes of the longest array that its compilers take; none if they know no such limit. */
  public final OptionalInt longestArrayBytes() {
    return table.find("longestArrayBytes").isPresent()
        ? OptionalInt.of(table.number("longestArrayBytes"))
        : OptionalInt.empty();
  }

  /** The word for those that have sources and words of the folder in common. */
  public abstract String family();

  /** Whether its sources name pins by port and bit, not by number. */
  public boolean namesPorts() {
    return false;
  }

  /** Whether we drive its pins; otherwise the builder's own functions do. */
  public abstract boolean drivesPins();

  /** Whether interrupts and the bits on the data lines are in each other's way. */
  public boolean interruptsBits() {
    return false;
  }

  /** Why it can't read the rig's inputs; empty if it can. */
  public abstract List<Finding> inputRefusals(Rig rig);

  /**
   * Those of the sources that read the inputs that are made for a rig; only where none is refused.
   */
  public ImmutableMap<String, String> inputSources(Rig rig) {
    return ImmutableMap.of();
  }

  /** The names of the sources that read the inputs, also where one is refused. */
  public List<String> inputSourceNames(Rig rig) {
    return List.of("src/lampwright_inputs.c");
  }

  /** Those of them that are the same for every rig, by their place in the resources. */
  public List<String> fixedInputSources() {
    return List.of();
  }

  /** What levels its inputs take from a receiver; none if nothing is known of them. */
  public abstract Optional<InputLevels> inputLevels(Rig rig);

  /** Sources of firmware that plays situations, beside those of all controllers. */
  public List<String> reactingSources() {
    return List.of();
  }

  /**
   * The serial line that the bench link of a rig's firmware uses; none if it has none, or if we
   * don't drive its pins.
   */
  public final Optional<LivePort> livePort(Rig rig) {
    return LivePort.of(table, rig, plan(rig));
  }

  /** What to know of its boards for the bench link, as a sentence; empty if there is nothing. */
  public String liveNotes() {
    return "";
  }

  /**
   * By how much a baud rate made from its clock is off: 0.021 is 2.1 % too fast. What the compiler
   * refuses is in lampwright_serial.h.
   */
  public double baudError(int baud) {
    return 0;
  }

  /**
   * Sources that are the same for every rig and belong to the bench link of a controller that has a
   * serial line for it, by their place in the resources.
   */
  final List<String> liveSources() {
    return table.find("livePorts").isPresent()
        ? List.of("src/lampwright_live.c", family() + "/src/lampwright_serial.h")
        : List.of();
  }

  /** Whether it is an RP2040. */
  public final boolean rp2040() {
    return this instanceof Rp2040;
  }

  /** Whether our driver sends all chains at the same time, not one after another. */
  public boolean sendsAtOnce() {
    return false;
  }

  /** What is fitted to the pins of an RP2040; none for others. Only for a rig not refused. */
  public final Optional<Rp2040Board> rp2040Board(Rig rig) {
    return this instanceof Rp2040 rp2040 ? Optional.of(rp2040.board(rig)) : Optional.empty();
  }

  /** Its clock in hertz; none where that is the builder's affair. */
  public abstract OptionalInt hertz();

  /** Its name, and its clock where that is ours to choose: {@code ATtiny85 at 8 MHz}. */
  public final String clockedName() {
    return hertz().isPresent() ? name() + " at " + megahertz() + " MHz" : name();
  }

  final int megahertz() {
    return hertz().orElse(0) / MHZ;
  }

  static final int MHZ = 1_000_000;

  private static final int PORTABLE_SITUATIONS_BYTES = 2800;
  private static final int CEILING_BYTES = 1100;

  /** Pointers, and stack. */
  private static final int PORTABLE_SITUATIONS_RAM = 128;

  /** Which pin each chain and output is on, named as its makers do. */
  public final PinPlan pins(Rig rig) {
    return plan(rig).named(this::written);
  }

  /** The same, with the names that the project has. */
  abstract PinPlan plan(Rig rig);

  /** A pin of the project, named as its makers do. */
  public final Pin named(Pin pin) {
    return written(pin);
  }

  /** A pin as the makers of this controller write it: {@code GP2}, {@code PB0}. */
  Pin written(Pin pin) {
    return new Pin(pin.port().map(port -> "P" + port).orElse("GP") + pin.number());
  }

  /** What sketches for a hobby IDE write for a pin; none if that depends on the board. */
  public Optional<String> inSketch(Pin pin) {
    return Optional.empty();
  }

  /**
   * The pins of a rig as sketches for a hobby IDE write them; only where the builder's own
   * functions drive the pins.
   */
  public SketchPins sketchPins(Rig rig) {
    throw new UnsupportedOperationException(name() + ": its sources name the pins");
  }

  /** Clocks that its SPI can have, Hz; none if that is not known. */
  public List<Integer> spiHertz() {
    return List.of();
  }

  /** What its line driver does for a chain. */
  public abstract Line line(Chain chain);

  /** Why it can't play this rig, whatever the scenes are; empty if it can. */
  public abstract List<Finding> refusals(Rig rig);

  /** What the rig's firmware takes of its memory. */
  public final FirmwareSize size(Rig rig) {
    return size(rig, Optional.empty());
  }

  /**
   * The same with what situations take.
   *
   * @param situations room for those that it plays
   */
  public final FirmwareSize size(Rig rig, Optional<ShowRoom> situations) {
    return new FirmwareSize(this, rig, situations);
  }

  /**
   * What playing packed data costs on the slowest controllers that it is made for. Data that is
   * alone is coded by it.
   */
  public static DecodeCost slowestDecodeCost() {
    return AvrDecodeCost.AT_16_MHZ;
  }

  /**
   * What playing packed data costs on it. The same for all so far, so that a scene's data is the
   * same whatever plays it: the others are faster (RP2040), or nothing is known of them; only an
   * AVR at 8 MHz takes twice the time.
   */
  public final DecodeCost decodeCost() {
    return slowestDecodeCost();
  }

  /** How long frames take on the rig's data lines. */
  public abstract LineTimes lineTimes(Rig rig);

  /**
   * How long frames take on the rig's data lines: as the driver of its controller sends them, or by
   * the times of the pixel types where it names none.
   */
  public static LineTimes lineTimesOf(Rig rig) {
    return rig.controller().isPresent() ? of(rig).lineTimes(rig) : LineTimes.nominal(rig);
  }

  /**
   * How long adding up a frame of the rig for the ceiling takes before it is sent, us; 0 where that
   * is nothing beside a frame, or not known.
   */
  public double ceilingUs(Rig rig) {
    return 0;
  }

  /** What to know before the firmware is put on it. */
  public abstract List<Finding> cautions(Rig rig);

  /** The names of the sources of the folder that are made for this controller and rig. */
  public abstract List<String> sourceNames();

  /** These sources, by name; only for a rig that it does not refuse. */
  public abstract ImmutableMap<String, String> sources(Rig rig);

  /** What to know of its boards, as Markdown; empty if there is nothing. */
  public abstract String boardNotes();

  /**
   * By how much servo pulses that an interrupt routine measures are off at most while chains are
   * sent, us; found by simulation to the cycle.
   */
  public abstract double servoErrorUs();

  /** What counts the frames of a rig that it does not refuse. */
  public abstract FrameClock frameClock(Rig rig);

  /** Program memory of player, driver and loop; 0 where these are the builder's affair. */
  abstract int codeBytes(Rig rig);

  /**
   * Working memory that a driver of the builder's own takes, as in the worked examples; ours is in
   * {@link #ramBytes}.
   *
   * @param longestBytes bytes of the longest chain
   */
  int driverRamBytes(int longestBytes) {
    return 0;
  }

  /** Working memory of frame, player and stack, without what dimming takes. */
  int ramBytes(int frameBytes, int lamps) {
    return frameBytes
        + FirmwareSize.PLAYER_RAM
        + FirmwareSize.LAMP_RAM * lamps
        + FirmwareSize.SHOW_RAM
        + FirmwareSize.STACK_RAM;
  }

  /** Program memory of situations and the ceiling over them, if the rig has one. */
  final int situationsBytes(Rig rig) {
    return situationsBytes() + (rig.ceiling() ? ceilingBytes() : 0);
  }

  /** Program memory of the ceiling: docs/performance.md. */
  int ceilingBytes() {
    return CEILING_BYTES;
  }

  /** Program memory of situations, with all that any of them needs: docs/performance.md. */
  int situationsBytes() {
    return PORTABLE_SITUATIONS_BYTES;
  }

  /** Working memory of situations, with what reads the rig's inputs and more stack. */
  int situationsRam(Rig rig, ShowRoom room) {
    return room.portableBytes() + PORTABLE_SITUATIONS_RAM;
  }

  /** The refusal of a stated clock that its driver is not made for. */
  final Finding unsupported(int clock, List<Integer> clocks) {
    return Finding.of(Code.CLOCK_UNSUPPORTED, new Subject.Chip(name()))
        .with("clock", Figure.words(clock + " MHz"))
        .with(
            "clocks",
            Figure.words(
                clocks.stream().map(known -> known + " MHz").collect(Collectors.joining(" or "))))
        .at("rig.clockMegahertz")
        .make();
  }

  /** What the prover must be told of a rig's firmware; only where the pins are driven. */
  public abstract List<String> proofWords(Rig rig);

  /** The same where interrupt routines may lengthen the low time between bits. */
  public List<String> proofWordsWithGaps(Rig rig) {
    return proofWords(rig);
  }

  /** What fills the places in texts that come with the program, such as {@code MCU}. */
  public abstract ImmutableMap<String, String> words();

  /** The sources of the folder that are the same for every rig, by their place in the resources. */
  public abstract List<String> fixedSources();
}
