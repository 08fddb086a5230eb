package lampwright.app.start;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import lampwright.app.outline.UsualLamp;
import lampwright.app.outline.UsualLamps;
import lampwright.app.review.Reviews;
import lampwright.engine.document.ModelKind;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.json.ProjectWriter;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.pattern.Flash;
import lampwright.engine.pattern.Indicator;
import lampwright.engine.pattern.RotatingBeacon;
import lampwright.engine.pattern.Steady;
import lampwright.engine.pattern.Tint;
import lampwright.engine.render.FrameTable;
import lampwright.engine.review.Code;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Severity;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Place;
import lampwright.engine.scene.Track;
import lampwright.exporters.CancelledException;
import lampwright.exporters.Progress;
import lampwright.exporters.target.Target;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class NewModelTest {
  static Stream<Arguments> everyKindOnEveryController() {
    return Stream.of(ModelKind.values())
        .flatMap(
            kind ->
                Controller.all().stream()
                    .filter(controller -> isAlone(controller) || SOME.contains(kind))
                    .map(controller -> Arguments.of(kind, controller.id())));
  }

  /** Families of one class differ by their numbers: one that has many lamps, one that has few. */
  private static final Set<ModelKind> SOME =
      EnumSet.of(ModelKind.RECOVERY_VEHICLE, ModelKind.HOUSE);

  private static boolean isAlone(Controller controller) {
    return Target.of(controller).drivesPins() || Target.of(controller).numbers().isEmpty();
  }

  private static ModelRequest usual(ModelKind kind, String controller) {
    return ModelRequest.usual(kind).withController(Controller.find(controller).orElseThrow());
  }

  private static ModelRequest all(ModelKind kind, String controller) {
    ModelRequest request = usual(kind, controller);
    for (UsualLamp group : UsualLamps.of(kind)) {
      request = request.withCount(group.key(), group.greatest());
    }
    return request;
  }

  private static List<Finding> findings(Project project) throws CancelledException {
    List<SceneReport> reports =
        project.scenes().stream()
            .map(scene -> SceneReport.of(FrameTable.of(project.rig(), scene)))
            .toList();
    return Reviews.of(project, reports, Progress.SILENT);
  }

  /**
   * Facts of the hardware that no project can change: pins of these have 3.3 V, below 0.7 x 5 V
   * (datasheets, from memory but for WS2812B).
   */
  private static final Set<Code> TRUE_AT_3_VOLTS = EnumSet.of(Code.DATA_LEVEL_LOW);

  private static final Set<String> OF_3_VOLTS = Set.of("rp2040", "esp32", "stm32", "samd21");

  @ParameterizedTest
  @MethodSource("everyKindOnEveryController")
  void usualLampsFitEveryController(ModelKind kind, String controller) throws CancelledException {
    NewModel.Made made = NewModel.make(usual(kind, controller));
    assertThat(NewModel.refusals(made.project(), Progress.SILENT)).isEmpty();
    List<Finding> problems =
        findings(made.project()).stream()
            .filter(finding -> finding.severity().problem())
            .filter(f -> !OF_3_VOLTS.contains(controller) || !TRUE_AT_3_VOLTS.contains(f.code()))
            .toList();
    assertThat(
            findings(made.project()).stream()
                .map(Finding::code)
                .anyMatch(TRUE_AT_3_VOLTS::contains))
        .isEqualTo(OF_3_VOLTS.contains(controller));
    assertThat(problems).extracting(Finding::text).isEmpty();
    assertThat(made.peakMilliamps() * 1.25)
        .isLessThanOrEqualTo(made.project().rig().supplyLimitMilliamps());
  }

  @ParameterizedTest
  @MethodSource("everyKindOnEveryController")
  void whatIsRefusedIsAnErrorOfTheCheckAndNothingElseIs(ModelKind kind, String controller)
      throws CancelledException {
    Project project = NewModel.make(all(kind, controller)).project();
    List<Finding> errors =
        findings(project).stream().filter(f -> f.severity() == Severity.ERROR).toList();
    assertThat(NewModel.refusals(project, Progress.SILENT))
        .extracting(Finding::text)
        .containsExactlyInAnyOrderElementsOf(errors.stream().map(Finding::text).toList());
  }

  @Test
  void whatDoesNotFitIsSaidWithTheLimit() throws CancelledException {
    Project project = NewModel.make(all(ModelKind.RECOVERY_VEHICLE, "attiny85")).project();
    List<Finding> refused = NewModel.refusals(project, Progress.SILENT);
    assertThat(refused).extracting(Finding::code).contains(Code.WORKING_MEMORY);
    // 512 bytes: ATtiny85 datasheet.
    assertThat(refused.get(0).text()).contains("ATtiny85").contains("limit 512 bytes");
  }

  @ParameterizedTest
  @EnumSource
  void fileIsReadBackAsTheSameProject(ModelKind kind) {
    Project project = NewModel.make(all(kind, "other")).project();
    byte[] bytes = ProjectWriter.write(project).getBytes(UTF_8);
    assertThat(ProjectReader.read("new", bytes).project()).contains(project);
    assertThat(project.model()).contains(kind);
  }

  @ParameterizedTest
  @EnumSource
  void everyLampHasNamePlacesAndACue(ModelKind kind) {
    Project project = NewModel.make(all(kind, "other")).project();
    List<String> names = UsualLamps.of(kind).stream().flatMap(g -> names(g).stream()).toList();
    assertThat(project.rig().lamps())
        .extracting(Lamp::name)
        .containsExactlyInAnyOrderElementsOf(names);
    assertThat(project.rig().lamps()).allSatisfy(l -> assertThat(l.places()).isNotEmpty());
    List<String> driven =
        project.scenes().get(0).tracks().stream().flatMap(t -> t.lamps().stream()).toList();
    assertThat(driven)
        .containsExactlyInAnyOrderElementsOf(project.rig().lamps().stream().map(Lamp::id).toList());
    for (Track track : project.scenes().get(0).tracks()) {
      assertThat(track.cues()).hasSize(1);
      assertThat(track.cues().get(0).lengthMs()).isEqualByComparingTo(new BigDecimal(4000));
    }
  }

  private static List<String> names(UsualLamp group) {
    return Stream.iterate(0, k -> k < group.greatest(), k -> k + 1).map(group::name).toList();
  }

  @ParameterizedTest
  @EnumSource
  void lampsAreListedAsTheyAreWired(ModelKind kind) {
    Project project = NewModel.make(all(kind, "atmega328p")).project();
    int next = 0;
    for (Lamp lamp : project.rig().lamps()) {
      if (lamp.fitting() instanceof Fitting.Pixels pixels) {
        for (PixelRun run : pixels.runs()) {
          assertThat(run.from()).as(lamp.id()).isEqualTo(next);
          next = run.end();
        }
      }
    }
    assertThat(project.rig().chains().get(0).pixels()).isEqualTo(next);
  }

  @Test
  void wireRunsFromTheFrontOfAVehicleToItsRear() {
    List<String> groups =
        NewModel.make(usual(ModelKind.RECOVERY_VEHICLE, "atmega328p"))
            .project()
            .rig()
            .lamps()
            .stream()
            .map(Lamp::name)
            .map(name -> name.replaceAll(",.*", ""))
            .distinct()
            .toList();
    assertThat(groups.get(0)).isEqualTo("Headlamp");
    assertThat(groups.indexOf("Tail lamp")).isGreaterThan(groups.indexOf("Beacon"));
    assertThat(groups.get(groups.size() - 1)).isIn("Tail lamp", "Reversing lamp");
  }

  /**
   * UN Regulations 6, 48 and 65; SAE J845: rates of real lamps; red tail lamps that do not blink.
   */
  @Test
  void lampsDoWhatSuchLampsDo() {
    Project project = NewModel.make(usual(ModelKind.RECOVERY_VEHICLE, "atmega328p")).project();
    assertThat(cue(project, "headlamp-left")).isInstanceOfAny(Steady.class, Tint.class);
    Steady tail = (Steady) cue(project, "tail-lamp-left");
    assertThat(tail.look().colour().toString()).containsIgnoringCase("red");
    Indicator indicator = (Indicator) cue(project, "indicator-front-left");
    assertThat(indicator.perMinute()).isBetween(new BigDecimal(60), new BigDecimal(120));
    RotatingBeacon beacon = (RotatingBeacon) cue(project, "beacon-front-left");
    assertThat(beacon.perMinute()).isBetween(new BigDecimal(60), new BigDecimal(240));
    assertThat(cue(project, "hazard-bar-left")).isInstanceOf(Flash.class);
  }

  private static Object cue(Project project, String lamp) {
    assertThat(project.rig().lamps()).extracting(Lamp::id).contains(lamp);
    return project.scenes().get(0).tracks().stream()
        .filter(track -> track.lamps().contains(lamp))
        .findFirst()
        .orElseThrow()
        .cues()
        .get(0)
        .pattern();
  }

  @Test
  void lampsOfAPairTakeTurns() {
    Project project = NewModel.make(usual(ModelKind.RECOVERY_VEHICLE, "atmega328p")).project();
    Set<BigDecimal> phases = new TreeSet<>();
    for (Lamp lamp : project.rig().lamps()) {
      if (lamp.group().equals("Beacons")) {
        phases.add(((RotatingBeacon) cue(project, lamp.id())).phase());
      }
    }
    assertThat(phases).containsExactly(BigDecimal.ZERO, new BigDecimal("0.5"));
  }

  @Test
  void ledsWithoutAPinBecomePixels() {
    NewModel.Made tiny = NewModel.make(usual(ModelKind.RECOVERY_VEHICLE, "attiny85"));
    assertThat(tiny.project().rig().outputs()).hasSizeLessThanOrEqualTo(2);
    assertThat(tiny.asPixels()).contains("Indicators");
    NewModel.Made any = NewModel.make(usual(ModelKind.RECOVERY_VEHICLE, "other"));
    assertThat(any.asPixels()).isEmpty();
    assertThat(any.project().rig().outputs()).hasSize(8);
    assertThat(tiny.pixels()).isGreaterThan(any.pixels());
  }

  @Test
  void lampIsOnSeveralSides() {
    Project project = NewModel.make(usual(ModelKind.CAR, "other")).project();
    Lamp lamp = project.rig().lamps().get(0);
    assertThat(lamp.places().stream().map(Place::view).distinct().count()).isGreaterThan(1);
  }

  @Test
  void needsALamp() {
    ModelRequest request = ModelRequest.usual(ModelKind.HOUSE);
    for (String key : request.counts().keySet()) {
      request = request.withCount(key, 0);
    }
    ModelRequest none = request;
    assertThatThrownBy(() -> NewModel.make(none)).hasMessage("no lamps: must be at least one");
  }

  @Test
  void refusesCountsThatTheModelHasNoPlacesFor() {
    ModelRequest request = ModelRequest.usual(ModelKind.CAR);
    assertThatThrownBy(() -> request.withCount("headlamps", 3))
        .hasMessage("headlamps: 3: must be between 0 and 2");
    assertThatThrownBy(() -> request.withCount("sails", 1)).hasMessageStartingWith("counts:");
  }
}
