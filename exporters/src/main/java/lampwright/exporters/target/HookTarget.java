package lampwright.exporters.target;

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

/** A controller whose pins the builder's own functions drive. */
abstract sealed class HookTarget extends Target permits Rp2040, OtherController {
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

  HookTarget(Controller controller, TargetTable table) {
    super(controller, table);
  }

  /** The pins that it has; empty if any name may be one. */
  final List<Pin> knownPins() {
    return table().find("pins").isPresent() ? table().pins("pins") : List.of();
  }

  @Override
  public final boolean drivesPins() {
    return false;
  }

  @Override
  public final OptionalInt hertz() {
    return OptionalInt.empty();
  }

  @Override
  public final PinPlan pins(Rig rig) {
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
  public final Line line(Chain chain) {
    return new Line.Builders();
  }

  @Override
  public final LineTimes lineTimes(Rig rig) {
    return LineTimes.nominal(rig);
  }

  @Override
  public final List<Finding> refusals(Rig rig) {
    List<Finding> refusals = new ArrayList<>(pins(rig).refusals());
    size(rig).ramRefusal().ifPresent(refusals::add);
    return refusals;
  }

  @Override
  public final List<Finding> cautions(Rig rig) {
    return List.of();
  }

  @Override
  public List<String> fixedSources() {
    return FIXED;
  }

  @Override
  public final String boardNotes() {
    return "";
  }

  @Override
  final int routineBytes(Rig rig) {
    return 0;
  }

  @Override
  public final List<String> proofWords(Rig rig) {
    return List.of();
  }

  @Override
  public final double servoErrorUs() {
    return 0;
  }

  @Override
  public final FrameClock frameClock(Rig rig) {
    return new FrameClock(0, HOOK_TICK_US, true);
  }

  @Override
  public final List<String> sourceNames() {
    return List.of();
  }

  @Override
  public final ImmutableMap<String, String> words() {
    return ImmutableMap.of();
  }

  @Override
  public final ImmutableMap<String, String> sources(Rig rig) {
    return ImmutableMap.of();
  }
}
