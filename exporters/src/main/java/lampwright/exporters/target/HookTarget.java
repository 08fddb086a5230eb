package lampwright.exporters.target;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import lampwright.engine.meter.LineTimes;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Subject;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;

/**
 * A controller whose pins the builder's own functions drive: its data file is all that there is of
 * it, and one that Lampwright knows nothing of has an empty one.
 */
final class HookTarget extends Target {
  /** The first pins are those of the usual serial port. */
  private static final int FIRST_FREE = 2;

  /** The unit of the clock that the builder's function gives: the tick of an AVR at 16 MHz. */
  private static final double HOOK_TICK_US = 64;

  private static final List<String> FIXED =
      List.of(
          "hook/src/lampwright_target.h",
          "hook/src/lampwright_clock.c",
          "hook/src/lampwright_outputs.c",
          "hook/src/lampwright_wire.c",
          "hook/src/lampwright_wire_hook.h");

  // One that nothing is known of may be an AVR.
  private static final List<String> OF_ANY =
      ImmutableList.<String>builder().addAll(FIXED).add("src/lampwright_player_avr.S").build();

  HookTarget(Controller controller) {
    super(controller, TargetTable.of(controller.id()));
  }

  /** The pins that it has; empty if any name may be one. */
  List<Pin> knownPins() {
    return table().find("pins").isPresent() ? table().pins("pins") : List.of();
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
  public PinPlan pins(Rig rig) {
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
        switchPin(rig),
        refusals);
  }

  private Optional<Pin> switchPin(Rig rig) {
    List<Pin> taken =
        Stream.concat(
                rig.chains().stream().flatMap(chain -> chain.pin().stream()),
                rig.outputs().stream().flatMap(output -> output.pin().stream()))
            .toList();
    return knownPins().stream().filter(pin -> !taken.contains(pin)).skip(FIRST_FREE).findFirst();
  }

  private void judge(Optional<Pin> pin, Subject subject, String path, List<Finding> refusals) {
    List<Pin> known = knownPins();
    pin.filter(stated -> !known.isEmpty() && !known.contains(stated))
        .ifPresent(
            stated -> refusals.add(AvrPinPlanner.unknown(stated, subject, path, name(), known)));
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
    return "";
  }

  @Override
  int codeBytes(Rig rig) {
    return 0;
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
