package lampwright.exporters.firmware;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import lampwright.engine.document.Project;
import lampwright.engine.light.Curve;
import lampwright.engine.pattern.Flicker;
import lampwright.engine.pattern.Look;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.CurrentCap;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.OutputDrive;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.TestJobs;

/**
 * Builds jobs for a controller: a lamp on each chain and output, with noise that sends every bit.
 */
public final class FirmwareJobs {
  private static final int MS_PER_SECOND = 1000;

  private final Optional<Controller> controller;
  private final List<Chain> chains = new ArrayList<>();
  private final List<DriverOutput> outputs = new ArrayList<>();
  private BigDecimal framesPerSecond = BigDecimal.valueOf(50);
  private int frames = 10;
  private String name = "Every bit";
  private double supplyVolts = Rig.DEFAULT_SUPPLY_VOLTS;

  private FirmwareJobs(Optional<Controller> controller) {
    this.controller = controller;
  }

  /** For a controller at a clock. */
  public static FirmwareJobs on(String controller, int megahertz) {
    return new FirmwareJobs(
        Controller.find(controller).map(c -> c.withClock(OptionalInt.of(megahertz))));
  }

  /** For a controller at its usual clock. */
  public static FirmwareJobs on(String controller) {
    return new FirmwareJobs(Controller.find(controller));
  }

  /** For a project that names no controller. */
  public static FirmwareJobs onNone() {
    return new FirmwareJobs(Optional.empty());
  }

  public FirmwareJobs chain(String type, int pixels) {
    return chain(BuiltInPixelTypes.find(type).orElseThrow(), pixels, Optional.empty());
  }

  public FirmwareJobs chain(String type, int pixels, String pin) {
    return chain(BuiltInPixelTypes.find(type).orElseThrow(), pixels, Optional.of(new Pin(pin)));
  }

  public FirmwareJobs chain(PixelType type, int pixels, Optional<Pin> pin) {
    String id = "c" + chains.size();
    chains.add(new Chain(id, type, pixels, type.order(), OptionalDouble.empty(), pin));
    return this;
  }

  /** An output without a pin of its own. */
  public FirmwareJobs output() {
    return output(Optional.empty());
  }

  public FirmwareJobs output(String pin) {
    return output(Optional.of(new Pin(pin)));
  }

  private FirmwareJobs output(Optional<Pin> pin) {
    outputs.add(
        new DriverOutput(
            "o" + outputs.size(),
            DriverOutput.DEFAULT_COLOUR,
            20,
            1,
            2,
            DriverOutput.DEFAULT_SUPPLY,
            pin));
    return this;
  }

  /** An output whose LED is on the controller's pin itself. */
  public FirmwareJobs ledsOnPin(double milliamps) {
    outputs.add(
        DriverOutput.MILLIAMPS.with(
            DriverOutput.of("o" + outputs.size()).withDrive(Optional.of(OutputDrive.PIN)),
            milliamps));
    return this;
  }

  /** Another supply, V. */
  public FirmwareJobs fed(double volts) {
    supplyVolts = volts;
    return this;
  }

  public FirmwareJobs rate(String perSecond) {
    framesPerSecond = new BigDecimal(perSecond);
    return this;
  }

  public FirmwareJobs frames(int count) {
    frames = count;
    return this;
  }

  public FirmwareJobs called(String newName) {
    name = newName;
    return this;
  }

  public Rig rig() {
    List<Lamp> lamps = new ArrayList<>();
    for (Chain chain : chains) {
      lamps.add(Lamp.ofPixels("on-" + chain.id(), new PixelRun(chain.id(), 0, chain.pixels())));
    }
    outputs.forEach(output -> lamps.add(Lamp.ofOutput("on-" + output.id(), output.id())));
    return new Rig(
        supplyVolts,
        Rig.DEFAULT_SUPPLY_LIMIT_MILLIAMPS,
        OptionalDouble.empty(),
        Curve.DEFAULT,
        Rig.DEFAULT_COLOUR_MATCHING,
        Rig.DEFAULT_WHITE_FROM_RGB,
        Rig.DEFAULT_BRIGHTNESS_CAP,
        CurrentCap.OFF,
        false,
        Optional.empty(),
        Optional.empty(),
        controller,
        chains,
        outputs,
        lamps,
        List.of());
  }

  /** A rig with another controller. */
  public static Rig with(Rig rig, String controller) {
    return new Rig(
        rig.supplyVolts(),
        rig.supplyLimitMilliamps(),
        rig.dataVolts(),
        rig.curve(),
        rig.colourMatching(),
        rig.whiteFromRgb(),
        rig.brightnessCap(),
        rig.currentCap(),
        rig.ceiling(),
        rig.feed(),
        rig.battery(),
        Controller.find(controller),
        rig.chains(),
        rig.outputs(),
        rig.lamps(),
        List.of());
  }

  public ProjectJob job() {
    Rig rig = rig();
    BigDecimal length =
        BigDecimal.valueOf((long) frames * MS_PER_SECOND)
            .divide(framesPerSecond, 6, java.math.RoundingMode.HALF_UP);
    Flicker noise = new Flicker(Look.DEFAULT, 3, 1, BigDecimal.valueOf(50));
    Track track =
        TestJobs.track(
            noise,
            length.longValue() + 1,
            rig.lamps().stream().map(Lamp::id).toArray(String[]::new));
    Scene scene = new Scene("noise", length, framesPerSecond, true, Dither.OFF, List.of(track));
    return ProjectJob.of(
        Project.SHAPE
            .draft()
            .set(Project.NAME, name)
            .set(Project.PIXEL_TYPES, ownTypes())
            .set(Project.RIG, rig)
            .set(Project.SCENES, List.of(scene))
            .make(),
        List.of(scene));
  }

  private List<PixelType> ownTypes() {
    return chains.stream()
        .map(Chain::type)
        .filter(type -> BuiltInPixelTypes.find(type.id()).isEmpty())
        .distinct()
        .toList();
  }
}
