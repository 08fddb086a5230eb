package lampwright.exporters.target;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import lampwright.engine.meter.LineTimes;
import lampwright.engine.meter.WireTime;
import lampwright.engine.review.Code;
import lampwright.engine.review.Figure;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Subject;
import lampwright.engine.review.Unit;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;
import lampwright.exporters.packed.play.ShowRoom;

/** The RP2040: chains by state machines and DMA, all at once; outputs by PWM. */
final class Rp2040 extends Target {
  static final String ID = "rp2040";

  private static final String BOARD = "src/lampwright_board.c";

  private static final List<String> FIXED =
      List.of(
          "rp2040/Makefile",
          "rp2040/main.c",
          "rp2040/lampwright_start.c",
          "rp2040/lampwright_boot.S",
          "rp2040/show.ld",
          "rp2040/uf2.c",
          "rp2040/src/lampwright_target.h",
          "rp2040/src/lampwright_board.h",
          "rp2040/src/lampwright_rp2040_registers.h",
          "rp2040/src/lampwright_clock.c",
          "rp2040/src/lampwright_wire.c",
          "rp2040/src/lampwright_outputs.c",
          "src/lampwright_live.h");

  private static final List<String> READS_INPUTS = List.of("rp2040/src/lampwright_inputs.c");

  /** The frame as the player has it, and as it is on its way. */
  private static final int FRAMES_KEPT = 2;

  /** A lamp's state in the player, on a controller of 32 bits: sizeof, measured. */
  private static final int LAMP_RAM = 12;

  private final int megahertz;
  private final List<Pin> pins;

  Rp2040(Controller controller) {
    super(controller, TargetTable.of(ID));
    this.megahertz = table().number("clockMegahertz");
    this.pins = table().pins("pins");
  }

  /** Length of a step of the state machines, ns. */
  double stepNs() {
    return 1000.0 * table().number("pioDivider") / megahertz;
  }

  /** The bits of a chain; none if it can't send it. */
  Optional<Rp2040Bits> bits(Chain chain) {
    return Rp2040Bits.find(LineLimits.of(chain.type().line()), stepNs());
  }

  @Override
  public String family() {
    return ID;
  }

  @Override
  public boolean drivesPins() {
    return true;
  }

  @Override
  public boolean sendsAtOnce() {
    return true;
  }

  @Override
  public OptionalInt hertz() {
    return OptionalInt.of(megahertz * MHZ);
  }

  @Override
  PinPlan plan(Rig rig) {
    return new Rp2040PinPlanner(rig, pins, name()).plan();
  }

  @Override
  public Line line(Chain chain) {
    LineLimits limits = LineLimits.of(chain.type().line());
    return bits(chain)
        .<Line>map(
            bits -> {
              SentTimes times = bits.at(stepNs());
              return new Line.Sent(times, limits.room(times), false);
            })
        .orElseGet(() -> new Line.Impossible(impossible(chain, limits)));
  }

  private Finding impossible(Chain chain, LineLimits limits) {
    return Finding.of(Code.LINE_IMPOSSIBLE, new Subject.OneChain(chain.id()))
        .with("type", Figure.words(chain.type().id()))
        .with("name", Figure.words(clockedName()))
        .with("step", Figure.of(stepNs(), 1, Unit.NANOSECONDS))
        .with("limits", Figure.words(limits.words()))
        .with("remedy", Figure.words("use other pixels or another controller"))
        .source("line times of the pixel type")
        .make();
  }

  @Override
  public LineTimes lineTimes(Rig rig) {
    List<WireTime> chains = new ArrayList<>();
    double longestUs = 0;
    for (Chain chain : rig.chains()) {
      WireTime wire =
          line(chain) instanceof Line.Sent sent
              ? WireTime.of(chain, sent.times().bitNs())
              : WireTime.of(chain);
      chains.add(wire);
      longestUs = Math.max(longestUs, wire.frameUs());
    }
    return new LineTimes(chains, longestUs + table().number("frameOverheadUs"), true);
  }

  @Override
  public List<Finding> refusals(Rig rig) {
    List<Finding> refusals = new ArrayList<>();
    controller()
        .clockMegahertz()
        .ifPresent(
            clock -> {
              if (clock != megahertz) {
                refusals.add(unsupported(clock, List.of(megahertz)));
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
  public List<Finding> inputRefusals(Rig rig) {
    List<Finding> found = new ArrayList<>(InputPins.missing(rig, name()));
    found.addAll(InputPins.unknown(rig, pin -> pins.contains(pin), name(), AvrPins.list(pins)));
    int chains = rig.chains().size();
    int channels = InputPins.channels(rig).size();
    // Chains that are too many by themselves are refused in any case.
    if (channels > 0
        && chains <= Rp2040Board.MAX_CHAINS
        && chains + channels > Rp2040Board.MACHINES) {
      found.add(
          Finding.of(Code.STATE_MACHINES_USED_UP, new Subject.Chip(name()))
              .with("chains", Figure.words(chains == 1 ? "1 chain" : chains + " chains"))
              .with(
                  "channels",
                  Figure.words(channels == 1 ? "1 servo input" : channels + " servo inputs"))
              .with("limit", Figure.count(Rp2040Board.MACHINES))
              .with("name", Figure.words(name()))
              .at("rig.inputs")
              .make());
    }
    return found;
  }

  @Override
  public List<String> fixedInputSources() {
    return READS_INPUTS;
  }

  @Override
  public Optional<InputLevels> inputLevels(Rig rig) {
    return Optional.of(
        new InputLevels(
            Double.parseDouble(table().text("inputHighVolts")),
            rig.pinVolts(),
            table().item("inputHighVolts").citation() + "; common practice"));
  }

  /** What is fitted to its pins; only for a rig that it does not refuse. */
  Rp2040Board board(Rig rig) {
    return Rp2040Board.of(this, rig);
  }

  @Override
  public List<Finding> cautions(Rig rig) {
    return List.of();
  }

  @Override
  int codeBytes(Rig rig) {
    return table().number("programBytes");
  }

  @Override
  int ramBytes(int frameBytes, int lamps) {
    return table().number("programRamBytes") + FRAMES_KEPT * frameBytes + LAMP_RAM * lamps;
  }

  // The program that is kept has its room for situations whether they are played or not.
  @Override
  int situationsBytes() {
    return 0;
  }

  @Override
  int ceilingBytes() {
    return 0;
  }

  @Override
  int situationsRam(Rig rig, ShowRoom room) {
    return 0;
  }

  @Override
  public List<String> proofWords(Rig rig) {
    return List.of();
  }

  @Override
  public double servoErrorUs() {
    return Double.parseDouble(table().text("servoErrorUs"));
  }

  @Override
  public FrameClock frameClock(Rig rig) {
    return new FrameClock(0, 1, true);
  }

  @Override
  public List<String> sourceNames() {
    return List.of(BOARD);
  }

  @Override
  public ImmutableMap<String, String> sources(Rig rig) {
    return ImmutableMap.of(BOARD, board(rig).source());
  }

  @Override
  public ImmutableMap<String, String> words() {
    return ImmutableMap.of();
  }

  @Override
  public List<String> fixedSources() {
    return ImmutableList.<String>builder().addAll(FIXED).addAll(liveSources()).build();
  }

  @Override
  public String liveNotes() {
    return "These pins are not made for 5 V.";
  }

  @Override
  public String boardNotes() {
    return "On boards of the usual form GP25 is the board's own LED, and GP23, GP24 belong to its power"
        + "\nsupply: use them only if yours has them free.";
  }
}
