package lampwright.app.start;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import lampwright.app.outline.UsualLamp;
import lampwright.app.outline.UsualLamp.UsualFitting;
import lampwright.app.outline.UsualLamps;
import lampwright.engine.document.ModelKind;
import lampwright.engine.document.Project;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.meter.SeriesResistor;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.render.FrameTable;
import lampwright.engine.review.Finding;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.OutputDrive;
import lampwright.engine.rig.OutputSupply;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Place;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import lampwright.exporters.CancelledException;
import lampwright.exporters.Progress;
import lampwright.exporters.firmware.FirmwareMemory;
import lampwright.exporters.target.PinCurrents;
import lampwright.exporters.target.Target;

/**
 * Makes the project of a new model: one chain, outputs for plain LEDs as far as the controller has
 * pins for them, the lamps in the order in which they are wired, and a scene in which they do what
 * such lamps do. The same request always gives the same project.
 */
public final class NewModel {
  /** Every usual rhythm divides it, so that the scene loops without a jump. */
  private static final long SCENE_MS = 4000;

  private static final String CHAIN = "chain-1";

  /** With a white emitter, as most lamps of a model are white or amber. */
  private static final String PIXELS = "sk6812-rgbw";

  /** Bright enough for a plain LED of 3 or 5 mm, and within the ratings of most pins. */
  private static final double LED_MILLIAMPS = 10;

  private static final List<Double> USUAL_SUPPLIES =
      List.of(2000.0, 3000.0, 4000.0, 5000.0, 8000.0, 10_000.0);

  /** What a supply gives above the greatest current: common practice. */
  private static final double SUPPLY_ROOM = 1.25;

  private final ModelRequest request;
  private final Target target;
  private final List<DriverOutput> outputs = new ArrayList<>();
  private final List<Lamp> lamps = new ArrayList<>();
  private final List<Track> tracks = new ArrayList<>();
  private final List<String> asPixels = new ArrayList<>();
  private final Set<String> ids = new HashSet<>();
  private int pixels;
  private double pinMilliamps;

  private NewModel(ModelRequest request) {
    this.request = request;
    this.target = Target.of(request.controller());
  }

  /**
   * The project.
   *
   * @throws IllegalArgumentException if it is to have no lamp at all
   */
  public static Made make(ModelRequest request) {
    if (request.lamps() == 0) {
      throw new IllegalArgumentException("no lamps: must be at least one");
    }
    return new NewModel(request).project();
  }

  /**
   * Why a project made here does not fit its controller; empty if it does.
   *
   * @param progress hears of the packing, which is done where scenes may be too large
   */
  public static List<Finding> refusals(Project project, Progress progress)
      throws CancelledException {
    Rig rig = project.rig();
    List<Finding> found = new ArrayList<>(Target.of(rig).refusals(rig));
    if (found.isEmpty()) {
      found.addAll(FirmwareMemory.findings(project, project.scenes(), progress));
    }
    return found;
  }

  private Made project() {
    Set<UsualLamp> plain = onOutputs();
    UsualLamps.of(request.kind()).stream()
        .filter(group -> count(group) > 0)
        .sorted(WiringOrder.of(request.kind()))
        .forEach(group -> add(group, plain.contains(group)));
    Scene scene =
        Scene.SHAPE
            .draft()
            .set(Scene.ID, sceneId(request.kind()))
            .set(Scene.LENGTH_MS, BigDecimal.valueOf(SCENE_MS))
            .set(Scene.TRACKS, tracks)
            .make();
    Project project =
        Project.SHAPE
            .draft()
            .set(Project.NAME, request.name())
            .set(Project.MODEL, Optional.of(request.kind()))
            .set(Project.RIG, rig(outputs, pixels, lamps))
            .set(Project.SCENES, List.of(scene))
            .make();
    SceneReport report = SceneReport.of(FrameTable.of(project.rig(), scene));
    double peak = report.measure().supply().peakMilliamps();
    double supply =
        USUAL_SUPPLIES.stream()
            .filter(milliamps -> milliamps >= peak * SUPPLY_ROOM)
            .findFirst()
            .orElse(Math.ceil(peak * SUPPLY_ROOM / 1000) * 1000);
    Rig rig = Rig.SUPPLY_LIMIT_MILLIAMPS.with(project.rig(), supply);
    return new Made(Project.RIG.with(project, rig), peak, asPixels);
  }

  private Rig rig(List<DriverOutput> withOutputs, int withPixels, List<Lamp> withLamps) {
    List<Chain> chains =
        withPixels == 0
            ? List.of()
            : List.of(new Chain(CHAIN, BuiltInPixelTypes.find(PIXELS).orElseThrow(), withPixels));
    return Rig.SHAPE
        .draft()
        .set(Rig.CONTROLLER, Optional.of(request.controller()))
        .set(Rig.CHAINS, chains)
        .set(Rig.OUTPUTS, withOutputs)
        .set(Rig.LAMPS, withLamps)
        .make();
  }

  private int count(UsualLamp group) {
    return request.counts().getOrDefault(group.key(), 0);
  }

  /**
   * The groups of plain LEDs that get outputs: whole groups, in the order of the list, as long as
   * the controller has pins and timers for them beside a chain and has no caution about it.
   */
  private Set<UsualLamp> onOutputs() {
    Set<UsualLamp> plain = new HashSet<>();
    List<DriverOutput> taken = new ArrayList<>();
    for (UsualLamp group : UsualLamps.of(request.kind())) {
      if (group.fitting() instanceof UsualFitting.Led && count(group) > 0) {
        List<DriverOutput> more = new ArrayList<>(taken);
        for (int k = 0; k < count(group); k++) {
          more.add(DriverOutput.of("output-" + (more.size() + 1)));
        }
        if (takes(rig(more, 1, List.of()))) {
          taken = more;
          plain.add(group);
        } else {
          asPixels.add(group.title());
        }
      }
    }
    return plain;
  }

  private boolean takes(Rig rig) {
    return target.pins(rig).refusals().isEmpty()
        && target.cautions(rig).stream().noneMatch(caution -> caution.severity().problem());
  }

  private void add(UsualLamp group, boolean plain) {
    // Lamps of one phase are one row of the scene; the first ones of the group come first.
    Map<BigDecimal, List<String>> rows = new LinkedHashMap<>();
    for (int k = 0; k < count(group); k++) {
      String id = id(group, k);
      lamps.add(lamp(group, k, id, fitting(group, plain, id)));
      BigDecimal phase = group.stagger().multiply(BigDecimal.valueOf(k));
      rows.computeIfAbsent(
              phase.remainder(BigDecimal.ONE).stripTrailingZeros(), at -> new ArrayList<>())
          .add(id);
    }
    rows.forEach(
        (phase, row) -> tracks.add(Track.of(row, Cue.of(0, SCENE_MS, shifted(group, phase)))));
  }

  private static Pattern shifted(UsualLamp group, BigDecimal phase) {
    return phase.signum() == 0 ? group.pattern() : group.pattern().withPhase(phase);
  }

  private Fitting fitting(UsualLamp group, boolean plain, String id) {
    if (plain && group.fitting() instanceof UsualFitting.Led led) {
      outputs.add(output(id, led));
      return new Fitting.Output(id);
    }
    int each = group.fitting() instanceof UsualFitting.Pixels many ? many.count() : 1;
    PixelRun run = new PixelRun(CHAIN, pixels, each);
    pixels += each;
    return new Fitting.Pixels(List.of(run));
  }

  /**
   * On the pin itself where the pin's level and ratings allow it, and its datasheet states its
   * level at that current; else on a transistor.
   */
  private DriverOutput output(String id, UsualFitting.Led led) {
    boolean onPin = pinCanDrive(led);
    pinMilliamps += onPin ? LED_MILLIAMPS : 0;
    return DriverOutput.SHAPE
        .draft()
        .set(DriverOutput.ID, id)
        .set(DriverOutput.COLOUR, led.colour())
        .set(DriverOutput.MILLIAMPS, LED_MILLIAMPS)
        .set(DriverOutput.FORWARD_VOLTS, led.forwardVolts())
        .set(DriverOutput.DRIVE, Optional.of(onPin ? OutputDrive.PIN : OutputDrive.DRIVER))
        .set(DriverOutput.SUPPLY, OutputSupply.VOLTAGE)
        .make();
  }

  private boolean pinCanDrive(UsualFitting.Led led) {
    Optional<PinCurrents> limits = target.pinCurrents();
    double pinVolts = request.controller().pinVolts(Rig.DEFAULT_SUPPLY_VOLTS);
    return limits.isPresent()
        && LED_MILLIAMPS <= limits.get().usualMilliamps()
        && pinMilliamps + LED_MILLIAMPS <= limits.get().allMilliamps()
        && SeriesResistor.of(pinVolts, 1, led.forwardVolts(), LED_MILLIAMPS)
            .filter(SeriesResistor::hasMargin)
            .isPresent();
  }

  private Lamp lamp(UsualLamp group, int k, String id, Fitting fitting) {
    List<Place> places = group.each().get(k).places();
    return Lamp.SHAPE
        .draft()
        .set(Lamp.ID, id)
        .set(Lamp.NAME, group.name(k))
        .set(Lamp.GROUP, count(group) > 1 ? group.title() : "")
        .set(Lamp.FUNCTION, group.function())
        .set(Lamp.FITTING, fitting)
        .set(Lamp.PLACE, places.stream().findFirst())
        .set(Lamp.ALSO_AT, places.stream().skip(1).toList())
        .make();
  }

  private String id(UsualLamp group, int k) {
    String slug = group.name(k).toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    String id = slug;
    for (int n = 2; !ids.add(id); n++) {
      id = slug + "-" + n;
    }
    return id;
  }

  /** What the first scene shows. */
  private static String sceneId(ModelKind kind) {
    return switch (kind) {
      case LAUNCH -> "under-way";
      case AIRCRAFT -> "in-flight";
      case LOCOMOTIVE -> "running";
      case HOUSE, HARBOUR_FRONT -> "evening";
      case ROAD_TRACTOR, RECOVERY_VEHICLE, FIRE_CARRIER, FARM_TRACTOR, CAR, MOBILE_CRANE ->
          "working";
    };
  }

  /**
   * A new model.
   *
   * @param project ready to be saved
   * @param peakMilliamps the greatest current of its scene, mA
   * @param asPixels titles of the groups of plain LEDs that have pixels instead, as the controller
   *     has no outputs left for them
   */
  public record Made(Project project, double peakMilliamps, List<String> asPixels) {
    public Made {
      asPixels = List.copyOf(asPixels);
    }

    /** How many pixels there are on chains. */
    public int pixels() {
      return project.rig().chains().stream().mapToInt(Chain::pixels).sum();
    }

    /** The level of the data line, V; none without a chain. */
    public OptionalDouble dataVolts() {
      return project.rig().chains().isEmpty()
          ? OptionalDouble.empty()
          : OptionalDouble.of(project.rig().dataLevelVolts());
    }
  }
}
