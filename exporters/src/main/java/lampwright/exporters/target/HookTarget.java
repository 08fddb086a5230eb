package lampwright.exporters.target;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import lampwright.engine.meter.LineTimes;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Subject;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;

/**
 * A controller, or a family of them, whose pins the builder's own functions drive: its data file
 * and its notes are all that there is of it, and one that Lampwright knows nothing of has an empty
 * file.
 */
final class HookTarget extends Target {
  /** The unit of the clock that the builder's function gives: the tick of an AVR at 16 MHz. */
  private static final double HOOK_TICK_US = 64;

  private static final List<String> FIXED =
      List.of(
          "hook/src/lampwright_target.h",
          "hook/src/lampwright_clock.c",
          "hook/src/lampwright_outputs.c",
          "hook/src/lampwright_wire.c",
          "hook/src/lampwright_wire_hook.h");

  private static final List<String> READS_INPUTS =
      List.of("hook/src/lampwright_inputs.c", "hook/src/lampwright_inputs_hook.h");

  // One that nothing is known of may be an AVR.
  private static final List<String> OF_ANY =
      ImmutableList.<String>builder().addAll(FIXED).add("src/lampwright_player_avr.S").build();

  /** A lamp's state in the player, on a controller of 32 bits: sizeof, measured. */
  private static final int LAMP_RAM = 12;

  /** Bytes on the line of an SPI for a byte of a pixel, at most. */
  private static final int SPI_BYTES = 8;

  /** The names of its pins; none if any name may be one. */
  private final Optional<PinNames> names;

  HookTarget(Controller controller) {
    super(controller, TargetTable.of(controller.id()));
    names = table().find("pins").map(pins -> PinNames.of(table().words("pins")));
  }

  @Override
  public String family() {
    return "hook";
  }

  @Override
  public boolean drivesPins() {
    return false;
  }

  @Override
  public OptionalInt hertz() {
    return OptionalInt.empty();
  }

  @Override
  PinPlan plan(Rig rig) {
    List<Finding> refusals = new ArrayList<>();
    for (int i = 0; i < rig.chains().size(); i++) {
      Chain chain = rig.chains().get(i);
      judge(chain.pin(), new Subject.OneChain(chain.id()), "rig.chains[" + i + "]", refusals);
    }
    for (int i = 0; i < rig.outputs().size(); i++) {
      DriverOutput output = rig.outputs().get(i);
      judge(output.pin(), new Subject.OneOutput(output.id()), "rig.outputs[" + i + "]", refusals);
    }
    return new PinPlan(
        rig.chains().stream().map(Chain::pin).toList(),
        rig.outputs().stream().map(DriverOutput::pin).toList(),
        OptionalInt.empty(),
        Optional.empty(),
        refusals);
  }

  private void judge(Optional<Pin> pin, Subject subject, String path, List<Finding> refusals) {
    names.ifPresent(
        known ->
            pin.filter(stated -> known.find(stated).isEmpty())
                .ifPresent(
                    stated ->
                        refusals.add(
                            AvrPinPlanner.unknown(stated, subject, path, name(), known.words()))));
  }

  @Override
  Pin written(Pin pin) {
    return names.flatMap(known -> known.find(pin)).orElseGet(() -> super.written(pin));
  }

  @Override
  public SketchPins sketchPins(Rig rig) {
    List<Pin> usual = table().find("sketchPins").isPresent() ? sketchPins() : List.of();
    return SketchPins.of(rig, this::inSketch, usual);
  }

  private List<Pin> sketchPins() {
    return table().words("sketchPins").stream().map(Pin::new).toList();
  }

  @Override
  public Optional<String> inSketch(Pin pin) {
    if (pin.port().isEmpty()) {
      return Optional.of(Integer.toString(pin.number()));
    }
    return table().find("portNames").map(known -> written(pin).name());
  }

  @Override
  public List<Integer> spiHertz() {
    return table().find("spiHertz").isPresent() ? table().numbers("spiHertz") : List.of();
  }

  @Override
  public Line line(Chain chain) {
    return new Line.Builders();
  }

  @Override
  public LineTimes lineTimes(Rig rig) {
    return LineTimes.nominal(rig);
  }

  @Override
  public List<Finding> refusals(Rig rig) {
    List<Finding> refusals = new ArrayList<>(pins(rig).refusals());
    size(rig).ramRefusal().ifPresent(refusals::add);
    return refusals;
  }

  /** Pins that its members don't have; one that is not named is the builder's affair. */
  @Override
  public List<Finding> inputRefusals(Rig rig) {
    return names
        .map(k -> InputPins.unknown(rig, pin -> k.find(pin).isPresent(), name(), k.words()))
        .orElse(List.of());
  }

  @Override
  public List<String> inputSourceNames(Rig rig) {
    return List.of("src/lampwright_inputs.c", "src/lampwright_inputs_hook.h");
  }

  @Override
  public List<String> fixedInputSources() {
    return READS_INPUTS;
  }

  @Override
  public Optional<InputLevels> inputLevels(Rig rig) {
    double volts = rig.pinVolts();
    return table()
        .find("inputHighShare")
        .map(
            share ->
                new InputLevels(
                    Double.parseDouble(share.value()) * volts,
                    volts,
                    share.citation() + "; common practice"));
  }

  @Override
  public List<Finding> cautions(Rig rig) {
    return List.of();
  }

  @Override
  public List<String> fixedSources() {
    return table().isEmpty() ? OF_ANY : FIXED;
  }

  @Override
  public String boardNotes() {
    return TargetTable.notes(controller().id()).orElseGet(HookTarget::notesOfAll);
  }

  /** Of a board that nothing is known of: the notes on every family. */
  private static String notesOfAll() {
    return Controller.all().stream()
        .flatMap(controller -> TargetTable.notes(controller.id()).stream())
        .collect(Collectors.joining("\n\n"));
  }

  @Override
  int codeBytes(Rig rig) {
    return table().isEmpty() ? 0 : table().number("programBytes");
  }

  @Override
  int ramBytes(int frameBytes, int lamps) {
    return table().isEmpty()
        ? super.ramBytes(frameBytes, lamps)
        : table().number("programRamBytes") + frameBytes + LAMP_RAM * lamps;
  }

  @Override
  int driverRamBytes(int longestBytes) {
    return table().isEmpty() ? 0 : SPI_BYTES * longestBytes;
  }

  @Override
  public List<String> proofWords(Rig rig) {
    return List.of();
  }

  @Override
  public double servoErrorUs() {
    return 0;
  }

  @Override
  public FrameClock frameClock(Rig rig) {
    return new FrameClock(0, HOOK_TICK_US, true);
  }

  @Override
  public List<String> sourceNames() {
    return List.of();
  }

  @Override
  public ImmutableMap<String, String> words() {
    return ImmutableMap.of();
  }

  @Override
  public ImmutableMap<String, String> sources(Rig rig) {
    return ImmutableMap.of();
  }
}
