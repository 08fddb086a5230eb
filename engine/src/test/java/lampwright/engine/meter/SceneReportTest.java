package lampwright.engine.meter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwright.engine.document.Project;
import lampwright.engine.light.Colour;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.light.Curve;
import lampwright.engine.light.SignalColour;
import lampwright.engine.pattern.Flash;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.RotatingBeacon;
import lampwright.engine.pattern.Steady;
import lampwright.engine.render.FrameTable;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Review;
import lampwright.engine.review.Severity;
import lampwright.engine.rig.Battery;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Conductor;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.CurrentCap;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Feed;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.LampFunction;
import lampwright.engine.rig.OutputSupply;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Regulator;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

class SceneReportTest {
  private static final Colour FULL = new Colour.Drive(1, 1, 1, 0);
  private static final Steady WHITE = new Steady(new Look(FULL, 1));

  private double supplyVolts = 5;
  private double limit = 2000;
  private double dataVolts = 5;
  private String type = "ws2812b";
  private int pixels = 10;
  private LampFunction function = LampFunction.OTHER;
  private Optional<Feed> feed = Optional.empty();
  private Optional<Battery> battery = Optional.empty();
  private Optional<Controller> controller = Optional.empty();
  private List<DriverOutput> outputs = List.of();
  private double framesPerSecond = 50;

  private SceneReport report(Pattern pattern) {
    Chain chain = new Chain("roof", BuiltInPixelTypes.find(type).orElseThrow(), pixels);
    Lamp lamp =
        new Lamp(
            "beacon",
            "",
            "",
            function,
            new Fitting.Pixels(List.of(new PixelRun("roof", 0, pixels))),
            Optional.empty(),
            java.util.List.of(),
            Optional.empty());
    Rig rig =
        new Rig(
            supplyVolts,
            limit,
            OptionalDouble.of(dataVolts),
            new Curve.Linear(),
            ColourMatching.DIRECT,
            false,
            1,
            CurrentCap.OFF,
            false,
            feed,
            battery,
            controller,
            List.of(chain),
            outputs,
            List.of(lamp),
            List.of());
    Scene scene =
        new Scene(
            "s",
            BigDecimal.valueOf(4000),
            BigDecimal.valueOf(framesPerSecond),
            true,
            Dither.OFF,
            List.of(Track.of(List.of("beacon"), Cue.of(0, 4000, pattern))));
    return SceneReport.of(FrameTable.of(rig, scene));
  }

  private static Flash flash(long onMs, long offMs, Colour colour) {
    return new Flash(
        new Look(colour, 1),
        BigDecimal.ZERO,
        BigDecimal.valueOf(onMs),
        BigDecimal.valueOf(offMs),
        1,
        BigDecimal.ZERO);
  }

  private static RotatingBeacon beacon(long perMinute, double beamDegrees) {
    return new RotatingBeacon(
        new Look(new Colour.Signal(SignalColour.AMBER), 1),
        BigDecimal.ZERO,
        BigDecimal.valueOf(perMinute),
        beamDegrees,
        true,
        List.of());
  }

  private static List<Finding> findings(SceneReport report) {
    Project project = Project.of("", report.table().layout().rig(), report.table().scene());
    return new Review(List.of()).of(project, List.of(report));
  }

  private static List<String> texts(SceneReport report) {
    return findings(report).stream().map(Finding::text).toList();
  }

  /** By hand: 10 pixels of 1 mA idle and 60 mA white (practice), half of the time. */
  @Test
  void currentIsThatOfTheWorstAndTheMeanFrame() {
    SceneReport report = report(flash(500, 500, FULL));
    assertThat(report.measure().supply().peakMilliamps()).isCloseTo(610, within(1e-9));
    assertThat(report.measure().supply().peakFrame()).isZero();
    assertThat(report.measure().supply().meanMilliamps()).isCloseTo(310, within(1e-9));
    assertThat(report.joules()).isCloseTo(5 * 0.310 * 4, within(1e-9));
    assertThat(report.measure().lamps().get(0).peakMilliamps()).isCloseTo(610, within(1e-9));
    assertThat(findings(report)).isEmpty();
  }

  /** By hand: 10 pixels of 1 mA idle in the dark half; 60 mA each (practice) where none is. */
  @Test
  void leastCurrentIsThatOfTheDarkestFrame() {
    assertThat(report(flash(500, 500, FULL)).figures())
        .extracting(SceneFigure::key, SceneFigure::value, SceneFigure::unit)
        .containsExactly(tuple("leastMilliamps", 10.0, "mA"));
    assertThat(report(WHITE).figures()).first().extracting(SceneFigure::value).isEqualTo(610.0);
  }

  @Test
  void overloadNamesFigureLimitAndCap() {
    limit = 310;
    assertThat(texts(report(WHITE)))
        .containsExactly(
            "supply, scene s, 0.00 s: draws 610 mA; limit 310 mA (supply current limit of the rig):"
                + " limit the current (whole scene, or frame by frame), set the master brightness to"
                + " 50.0 % or less, or use a larger supply; an overloaded supply sags or overheats [supply-current]");
  }

  @Test
  void idleCurrentOverTheLimitNeedsALargerSupply() {
    limit = 5;
    assertThat(texts(report(WHITE)).get(0)).contains("10 mA of it with all pixels dark");
  }

  /** By hand: (5 - 2 x 2.1) / 20 mA = 40 ohm, next in E24 (IEC 60063) 43 ohm. */
  @Test
  void outputOnAVoltageGetsItsResistor() {
    outputs =
        List.of(
            new DriverOutput("step", DriverOutput.DEFAULT_COLOUR, 20, 2, 2.1, OutputSupply.VOLTAGE),
            new DriverOutput("sign", DriverOutput.DEFAULT_COLOUR, 20, 3, 2.1, OutputSupply.VOLTAGE),
            new DriverOutput(
                "dim", DriverOutput.DEFAULT_COLOUR, 0.001, 1, 2, OutputSupply.VOLTAGE));
    SceneReport report = report(WHITE);
    assertThat(report.circuits().get(0).resistor().orElseThrow().ohms()).isEqualTo(43);
    assertThat(report.circuits().get(1).resistor()).isEmpty();
    assertThat(report.circuits().get(2).resistor()).isEmpty();
  }

  /**
   * By hand: 1,220 mAh, half of it usable, at 610 mA last an hour; behind a boost from 3.7 V less.
   */
  @Test
  void batteryGivesRunTime() {
    Battery cell = Battery.USABLE_SHARE.with(Battery.of(1220), 0.5);
    battery = Optional.of(cell);
    assertThat(report(WHITE).pack().orElseThrow().hours()).hasValue(1.0);
    battery =
        Optional.of(
            Battery.PACK_VOLTS.with(cell, OptionalDouble.of(3.7)).withRegulator(Regulator.BOOST));
    PackLoad load = report(WHITE).pack().orElseThrow();
    assertThat(load.hours().orElseThrow()).isCloseTo(0.85 * 3.7 / 5, within(1e-9));
    assertThat(load.peakMilliamps()).isCloseTo(610 * 5 / (0.85 * 3.7), within(1e-6));
    // 0.97 A asks for 1.21 A.
    assertThat(load.fuseAmps()).hasValue(2);
  }

  @Test
  void wiresAreMeasuredWhereTheyAreStated() {
    assertThat(report(WHITE).feeds()).isEmpty();
    feed = Optional.of(Feed.of(new Conductor.Gauge(30)));
    assertThat(report(WHITE).feedOf("roof").orElseThrow().lead().amps())
        .isCloseTo(0.61, within(1e-9));
    assertThat(report(WHITE).feedOf("cab")).isEmpty();
  }

  /** A ring of pixels that stands for a turning beam: each pixel flashes once a turn. */
  @Test
  void beaconFlashesAsOftenAsItTurns() {
    function = LampFunction.SPECIAL_WARNING;
    pixels = 4;
    LightReport light = report(beacon(150, 120)).measure().lights().get(0);
    assertThat(light.train().orElseThrow().groupsPerMinute().getAsDouble())
        .isCloseTo(150, within(1.5));
    // Beams of 180 degrees add up to even light: cos2 of angles a quarter turn apart.
    assertThat(findings(report(beacon(150, 180)))).isEmpty();
    // SAE J845 and J974 know slower ones.
    assertThat(findings(report(beacon(60, 180)))).isEmpty();
    assertThat(texts(report(beacon(45, 180))))
        .containsExactly(
            "lamp beacon, scene s: 45 flashes/min; slower than a real special warning lamp, 120 to"
                + " 240 per minute (estimate after UN Regulation 65, annex 5: 2 to 4 Hz): change its"
                + " rate or period"
                + " [flash-rate]");
  }

  /** Four narrow beams in a ring: the light of the whole lamp flashes four times a turn. */
  @Test
  void narrowBeamsFlashTogether() {
    pixels = 4;
    assertThat(texts(report(beacon(150, 120))))
        .containsExactly(
            "lamp beacon, scene s, 0.02 s: 10 flashes per second (whole lamp; pixel 0 alone 3);"
                + " limit 3 per second (W3C WCAG 2.2, 2.3.1): flash more slowly or in smaller"
                + " groups; flashing light can trigger seizures in people with photosensitive"
                + " epilepsy: warn before you show it [flash-general]");
  }

  /** W3C WCAG 2.2, 2.3.1: the limit is three flashes in a second. */
  @Test
  void flashCautionIsGivenAboveThreeFlashesASecond() {
    assertThat(findings(report(flash(160, 180, FULL)))).isEmpty();
    assertThat(report(flash(160, 180, FULL)).measure().passesFlashCaution()).isTrue();
    assertThat(report(flash(120, 130, FULL)).measure().passesFlashCaution()).isFalse();
    List<Finding> found = findings(report(flash(120, 130, FULL)));
    assertThat(found).hasSize(1).allMatch(f -> f.severity() == Severity.DANGER);
    assertThat(found.get(0).text())
        .contains("lamp beacon", "4 flashes per second (whole lamp)", "photosensitive");
  }

  @Test
  void colourIsHeldAgainstItsFunction() {
    function = LampFunction.STOP;
    Steady green = new Steady(new Look(new Colour.Drive(0, 1, 0, 0), 1));
    assertThat(texts(report(green)).get(0))
        .contains("lamp beacon, scene s, 0.00 s: x", "outside red", "[colour-outside]");
    Steady white = new Steady(new Look(new Colour.Signal(SignalColour.WHITE), 1));
    assertThat(texts(report(white)).get(0))
        .contains("is white (x 0.345", "); expected red", "[colour-other]");
    Steady red = new Steady(new Look(new Colour.Signal(SignalColour.RED), 1));
    assertThat(findings(report(red))).isEmpty();
  }

  @Test
  void blueWarningLampIsForModelsOnly() {
    function = LampFunction.SPECIAL_WARNING;
    Steady blue = new Steady(new Look(new Colour.Signal(SignalColour.BLUE), 1));
    assertThat(texts(report(blue)).get(0)).contains("for models only; local law");
  }

  @Provide
  Arbitrary<Project> projects() {
    return lampwright.engine.json.ProjectArbitraries.projects();
  }

  @Property(tries = 100)
  void anyValidProjectIsMeasuredWithoutNaN(@ForAll("projects") Project project) {
    for (Scene scene : project.scenes()) {
      SceneReport report = SceneReport.of(FrameTable.of(project.rig(), scene));
      assertThat(report.toString()).doesNotContain("NaN", "Infinity");
      assertThat(new Review(List.of()).of(project, List.of(report)))
          .allSatisfy(f -> assertThat(f.text()).doesNotContain("NaN", "Infinity"));
      double cap = project.rig().supplyLimitMilliamps();
      double idle =
          new lampwright.engine.render.FrameCurrent(report.table().layout()).idleMilliamps();
      if (project.rig().currentCap() != CurrentCap.OFF && idle <= cap) {
        assertThat(report.measure().supply().peakMilliamps()).isLessThanOrEqualTo(cap + 1e-9);
      }
    }
  }
}
