package lampwright.exporters.target;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import lampwright.engine.document.Project;
import lampwright.engine.meter.LineTimes;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.meter.WireTime;
import lampwright.engine.review.Code;
import lampwright.engine.review.Figure;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Reviewer;
import lampwright.engine.review.Subject;
import lampwright.engine.review.Unit;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;

/** Findings on the controller: pins, timers, data lines, memory. */
public final class TargetFindings implements Reviewer {
  private static final double US_PER_SECOND = 1e6;
  private static final double US_PER_MS = 1000;
  private static final int BITS_PER_BYTE = 8;

  /** Levels of a receiver that need a divider before a pin that takes less, V: common practice. */
  private static final double RECEIVER_VOLTS = 5;

  /** By how much a supply of 5 V may be lower without a divider being asked for, V. */
  private static final double RECEIVER_TOLERANCE_VOLTS = 0.5;

  private static final String RESISTORS = "1 kohm into each signal line";

  /** Two thirds of 5 V are 3.3 V. */
  private static final String RESISTORS_FOR_5_VOLTS =
      RESISTORS + ", and 2 kohm from the pin to ground if the receiver sends 5 V";

  /** Keeps nothing, so one serves all. */
  public TargetFindings() {}

  @Override
  public void project(Project project, Consumer<Finding> found) {
    Rig rig = project.rig();
    Target target = Target.of(rig);
    List<Finding> refusals = new ArrayList<>(target.refusals(rig));
    if (reacts(project)) {
      refusals.addAll(target.inputRefusals(rig));
      receiver(target, rig).ifPresent(found);
    }
    if (rig.controller().isPresent()) {
      refusals.forEach(found);
      target.cautions(rig).forEach(found);
      target.pinCurrents().ifPresent(limits -> new PinLoads(target, limits, found).judge(rig));
    } else if (!refusals.isEmpty()) {
      found.accept(unfit(target, refusals));
    }
  }

  private static boolean reacts(Project project) {
    return project.situations().stream().anyMatch(s -> s.scene().isPresent());
  }

  private static Optional<Finding> receiver(Target target, Rig rig) {
    List<String> pins =
        rig.inputs().stream()
            .filter(Input::isChannel)
            .flatMap(input -> input.pin().stream())
            .map(pin -> target.named(pin).name())
            .toList();
    Optional<InputLevels> levels = target.inputLevels(rig);
    if (pins.isEmpty() || levels.isEmpty()) {
      return Optional.empty();
    }
    boolean divided = levels.get().mostVolts() < RECEIVER_VOLTS - RECEIVER_TOLERANCE_VOLTS;
    return Optional.of(
        Finding.of(Code.RECEIVER_WIRING, new Subject.Chip(target.name()))
            .with("pins", Figure.words(String.join(", ", pins)))
            .with("level", Figure.of(levels.get().highVolts(), 2, Unit.VOLTS))
            .with("supply", Figure.of(levels.get().mostVolts(), 2, Unit.VOLTS))
            .with("resistors", Figure.words(divided ? RESISTORS_FOR_5_VOLTS : RESISTORS))
            .at("rig.inputs")
            .source(levels.get().source())
            .make());
  }

  /** Of a project that names no controller: that the usual one will not do. */
  private static Finding unfit(Target target, List<Finding> refusals) {
    return Finding.of(Code.CONTROLLER_UNFIT, new Subject.WholeProject())
        .with("name", Figure.words(target.clockedName()))
        .with(
            "why",
            Figure.words(
                refusals.stream()
                    .map(f -> f.about() + ": " + f.what())
                    .collect(Collectors.joining("; "))))
        .make();
  }

  @Override
  public void scene(Project project, SceneReport report, Consumer<Finding> found) {
    Rig rig = project.rig();
    Scene scene = report.table().scene();
    if (rig.chains().isEmpty()) {
      return;
    }
    if (rig.controller().isPresent() && Target.of(rig).drivesPins()) {
      frameTime(Target.of(rig), rig, scene, reacts(project)).forEach(found);
    } else {
      nominal(LineTimes.nominal(rig), scene, found);
    }
  }

  /**
   * The refusals of a scene whose frames take longer to send than they last; none if they don't.
   *
   * @param reacts whether the firmware plays situations, over which the rig may have a ceiling
   */
  public static List<Finding> frameTime(Target target, Rig rig, Scene scene, boolean reacts) {
    if (rig.chains().isEmpty() || !target.drivesPins()) {
      return List.of();
    }
    LineTimes times = target.lineTimes(rig);
    if (reacts && rig.ceiling()) {
      double us = times.frameUs() + target.ceilingUs(rig);
      times = new LineTimes(times.chains(), us, times.driven());
    }
    double rate = scene.framesPerSecond().doubleValue();
    if (times.share(rate) <= 1) {
      return List.of();
    }
    if (target.sendsAtOnce()) {
      double longestUs = times.chains().stream().mapToDouble(WireTime::frameUs).max().orElse(0);
      double overheadUs = times.frameUs() - longestUs;
      return times.chains().stream()
          .filter(wire -> wire.frameUs() + overheadUs > US_PER_SECOND / rate)
          .map(
              wire ->
                  tooLong(
                      target,
                      rig,
                      scene,
                      new LineTimes(List.of(wire), wire.frameUs() + overheadUs, true),
                      new Subject.OneChain(wire.chain())))
          .toList();
    }
    return List.of(tooLong(target, rig, scene, times, new Subject.AllChains()));
  }

  private static Finding tooLong(
      Target target, Rig rig, Scene scene, LineTimes times, Subject subject) {
    double rate = scene.framesPerSecond().doubleValue();
    double frameUs = US_PER_SECOND / rate;
    double bitsUs = times.chains().stream().mapToDouble(w -> w.pixels() * w.pixelUs()).sum();
    int pixels = times.chains().stream().mapToInt(WireTime::pixels).sum();
    double room = frameUs - (times.frameUs() - bitsUs);
    Code code = subject instanceof Subject.AllChains ? Code.FRAME_TIME : Code.CHAIN_TIME;
    return Finding.of(code, subject)
        .with("time", milliseconds(times.frameUs()))
        .with("share", Figure.percent(times.share(rate)))
        .with("bit", Figure.of(longestBitUs(rig, times), 3, Unit.MICROSECONDS))
        .with("limit", milliseconds(frameUs))
        .with("rate", rate(times.highestFramesPerSecond()))
        .with(
            "pixels",
            Figure.count((long) Math.max(0, Math.floor(pixels * room / bitsUs)), Unit.PIXELS))
        .in(scene)
        .source("the driver for the " + target.clockedName())
        .make();
  }

  private static double longestBitUs(Rig rig, LineTimes times) {
    double longest = 0;
    for (WireTime wire : times.chains()) {
      Chain chain =
          rig.chains().stream().filter(c -> c.id().equals(wire.chain())).findFirst().orElseThrow();
      longest = Math.max(longest, wire.pixelUs() / (BITS_PER_BYTE * chain.order().size()));
    }
    return longest;
  }

  private static void nominal(LineTimes times, Scene scene, Consumer<Finding> found) {
    double rate = scene.framesPerSecond().doubleValue();
    double frameUs = US_PER_SECOND / rate;
    List<WireTime> over = times.chains().stream().filter(wire -> wire.share(rate) > 1).toList();
    for (WireTime wire : over) {
      found.accept(
          Finding.of(Code.LINE_TIME, new Subject.OneChain(wire.chain()))
              .with("time", milliseconds(wire.frameUs()))
              .with("limit", milliseconds(frameUs))
              .with("rate", rate(wire.highestFramesPerSecond()))
              .with("pixels", Figure.count(wire.longestChain(rate), Unit.PIXELS))
              .in(scene)
              .source("line times of the pixel type")
              .make());
    }
    if (over.isEmpty() && times.chains().size() > 1 && times.frameUs() > frameUs) {
      found.accept(
          Finding.of(Code.LINE_TIME_IN_TURN, new Subject.AllChains())
              .with("time", milliseconds(times.frameUs()))
              .with("share", Figure.percent(times.share(rate)))
              .with("limit", milliseconds(frameUs))
              .with("rate", rate(times.highestFramesPerSecond()))
              .in(scene)
              .source("line times of the pixel type")
              .make());
    }
  }

  /**
   * The refusal of packed scenes that don't fit the program memory.
   *
   * @param packedBytes of all scenes together
   * @param reacts whether the firmware plays situations
   */
  public static Optional<Finding> programMemory(
      Target target, Rig rig, int packedBytes, boolean reacts) {
    OptionalInt free = target.memory().freeFlashBytes();
    int code = programBytes(target, rig, reacts);
    if (free.isEmpty() || (long) packedBytes + code <= free.getAsInt()) {
      return Optional.empty();
    }
    long room = Math.max(0, free.getAsInt() - code);
    return Optional.of(
        Finding.of(Code.PROGRAM_MEMORY, new Subject.Chip(target.name()))
            .with("packed", Figure.count(packedBytes, Unit.BYTES))
            .with("code", Figure.count(code, Unit.BYTES))
            .with("limit", Figure.count(free.getAsInt(), Unit.BYTES))
            .with("over", Figure.count(packedBytes - room, Unit.BYTES))
            .with("share", Figure.percent(Math.floor(100.0 * room / packedBytes) / 100))
            .source(target.memory().flashSource())
            .make());
  }

  /**
   * Program memory of player and driver, without what they play.
   *
   * @param reacts whether it plays situations
   */
  public static int programBytes(Target target, Rig rig, boolean reacts) {
    return target.size(rig).programBytes() + (reacts ? target.situationsBytes(rig) : 0);
  }

  private static Figure milliseconds(double us) {
    return Figure.of(us / US_PER_MS, 2, Unit.MILLISECONDS);
  }

  // Rounded down, so that the rate that is named is kept.
  private static Figure rate(double framesPerSecond) {
    return Figure.of(Math.floor(framesPerSecond * 10) / 10, 1, Unit.FRAMES_PER_SECOND);
  }
}
