package lampwright.app.workshop.model.ribbon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.edit.CueEdits;
import lampwright.app.workshop.edit.CuePhases;
import lampwright.app.workshop.edit.CueRef;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.edit.Projects;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.DrawingSheet;
import lampwright.app.workshop.model.LampSigns;
import lampwright.app.workshop.model.LightService;
import lampwright.app.workshop.model.PixelExplainer;
import lampwright.app.workshop.model.Playhead;
import lampwright.app.workshop.model.SceneLight;
import lampwright.app.workshop.model.files.ReadyAnswers;
import lampwright.engine.document.Project;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.Flash;
import lampwright.engine.pattern.Keyframe;
import lampwright.engine.pattern.Keyframes;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.Patterns;
import lampwright.engine.pattern.Steady;
import lampwright.engine.pattern.Tint;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Marker;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import lampwright.engine.words.CueWords;
import lampwright.exporters.picture.DisplayList;
import lampwright.exporters.picture.Mark;
import lampwright.exporters.picture.Srgb8;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RibbonsTest {
  private static final Steady LIGHT = new Steady(Look.DEFAULT);
  private static final CueRef FIRST = new CueRef(0, 0);

  private final BlockingQueue<Runnable> screen = new LinkedBlockingQueue<>();
  private final Bench bench = new Bench(project());
  private final LightService lights = new LightService(bench, screen::add);
  private final Playhead playhead = new Playhead(bench);
  private final DrawingSheet sheet = new DrawingSheet();
  private final RibbonsModel model =
      new RibbonsModel(
          bench, lights, playhead, sheet, new PixelExplainer(bench, screen::add), screen::add);
  private final ReadyAnswers dialogs = new ReadyAnswers();
  private final CueCommands commands = new CueCommands(model, dialogs);

  // roof: 200 to 600 and 1000 to 1400; amber shares a track with it from 0 to 300.
  private static Project project() {
    return Project.SCENES.with(
        Projects4Tests.small(),
        List.of(
            Scene.TRACKS.with(
                Projects.emptyScene("work", 2000),
                List.of(
                    Track.of(List.of("roof"), Cue.of(200, 400, LIGHT), Cue.of(1000, 400, LIGHT)),
                    Track.of(List.of("roof", "amber"), Cue.of(0, 300, LIGHT))))));
  }

  @AfterEach
  void close() {
    model.close();
    lights.close();
  }

  private RibbonLayout layout() {
    model.resize(800, 300, 16, 20);
    model.time().axisProperty().set(new TimeAxis(0, 2.5));
    return model.layout().orElseThrow();
  }

  private RibbonLayout.Hit hit(double ms, String lamp, int lane, double share) {
    RibbonLayout layout = layout();
    RibbonLayout.Row row = layout.row(lamp).orElseThrow();
    return layout
        .hit(model.axis().x(ms), row.lanesY() + (lane + share) * row.laneHeight(), model.axis())
        .orElseThrow();
  }

  private Cue cue(CueRef ref) {
    return ref.in(bench.scene().orElseThrow()).orElseThrow();
  }

  /** 250 ms is frame 12 at 50 per second: the cue from 0 to 300 ms is above that from 200 ms. */
  @Test
  void stripIsExplainedWhereThePointerRests() throws InterruptedException {
    RibbonLayout.Row roof = layout().row("roof").orElseThrow();
    double x = model.axis().x(250);
    assertThat(model.spot(x, roof.stripY() - 1 - model.top())).isEmpty();
    PixelExplainer.Spot spot = model.spot(x, roof.stripY() + 1 - model.top()).orElseThrow();
    assertThat(spot).isEqualTo(new PixelExplainer.Spot("roof", 0, 12));
    double last = roof.stripY() + roof.stripHeight() - 1;
    assertThat(model.spot(x, last - model.top()).orElseThrow().pixel())
        .isEqualTo(roof.lamp().fitting().lights() - 1);
    model.explainer().request(spot);
    while (model.explainer().explainedProperty().get().isEmpty()) {
      Runnable next = screen.poll(5, TimeUnit.MINUTES);
      assertThat(next).isNotNull();
      next.run();
    }
    PixelExplainer.Explained found = model.explainer().explainedProperty().get().orElseThrow();
    assertThat(found.spot()).isEqualTo(spot);
    assertThat(found.words())
        .startsWith("Frame 12, pixel 0: ")
        .contains("hidden: a cue above replaces it", "Track 2, cue 1: Steady", "Byte R: ");
    bench.apply(Edit.of("other", p -> Project.NAME.with(p, "other")));
    bench.apply(Edit.of("empty", p -> Project.SCENES.with(p, List.of())));
    assertThat(model.explainer().explainedProperty().get()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0 s",
    "250, 0.25 s",
    "1000, 1 s",
    "59999, 59.999 s",
    "60000, 1:00",
    "61500, 1:01.5",
    "3600000, 1:00:00",
    "86399000, 23:59:59"
  })
  void timesAreWrittenAsPeopleReadThem(double ms, String text) {
    assertThat(TimeAxis.label(ms)).isEqualTo(text);
  }

  /** A rubber band drawn where the project has no scene used to end in an exception. */
  @Test
  void rectangleTouchesTheCuesUnderItAndNoneWithoutAScene() {
    RibbonLayout.Row roof = layout().row("roof").orElseThrow();
    double top = roof.lanesY();
    double right = model.axis().x(700);
    assertThat(model.touched(0, top, right, top + roof.laneHeight()))
        .containsExactly(new CueRef(0, 0));
    bench.apply(Edit.of("empty", p -> Project.SCENES.with(p, List.of())));
    assertThat(model.touched(0, top, right, top + roof.laneHeight())).isEmpty();
  }

  @Test
  void lookingCloserKeepsTheTimeUnderTheHand() {
    TimeAxis axis = new TimeAxis(1000, 5).zoomed(2, 100);
    assertThat(axis.msPerPixel()).isEqualTo(2.5);
    assertThat(axis.ms(100)).isCloseTo(1500, within(1e-9));
    assertThat(new TimeAxis(0, 5).zoomed(1e9, 0).msPerPixel())
        .isEqualTo(TimeAxis.LEAST_MS_PER_PIXEL);
    assertThat(new TimeAxis(10, 5).panned(-100).leftMs()).isZero();
  }

  @Test
  void ticksStandApartAtEveryLook() {
    for (double scale = 0.04; scale < 800_000; scale *= 3) {
      TimeAxis axis = new TimeAxis(1234, scale);
      List<Double> named =
          axis.ticks(1000).stream()
              .filter(t -> !t.label().isEmpty())
              .map(t -> axis.x(t.ms()))
              .toList();
      for (int i = 1; i < named.size(); i++) {
        assertThat(named.get(i) - named.get(i - 1)).isGreaterThan(40);
      }
      assertThat(axis.ticks(1000)).hasSizeLessThan(200);
    }
  }

  @Test
  void edgeIsDrawnToAMarkThatIsNearAndElseToAFrame() {
    Scene scene = bench.scene().orElseThrow();
    Snap snap = Snap.on(scene, Set.of(FIRST), BigDecimal.valueOf(333), Optional.empty());
    assertThat(snap.edge(996, 10)).isEqualByComparingTo("1000");
    assertThat(snap.edge(335, 10)).isEqualByComparingTo("333");
    assertThat(snap.edge(471, 5)).isEqualByComparingTo("480");
    // Its own edges hold nothing.
    assertThat(snap.edge(603, 8)).isEqualByComparingTo("600");
    assertThat(snap.edge(-50, 8)).isZero();
    assertThat(Snap.off(scene).edge(471.1234, 50)).isEqualByComparingTo("471.123");
  }

  @Test
  void edgeIsDrawnToTheBeat() {
    Scene scene = bench.scene().orElseThrow();
    Snap snap =
        Snap.on(scene, Set.of(), BigDecimal.ZERO, Optional.of(new BigDecimal("461.538461538")));
    assertThat(snap.edge(925, 10)).isEqualByComparingTo("923.076");
  }

  @Test
  void handsFindTheCueAndItsParts() {
    assertThat(hit(400, "roof", 0, 0.5))
        .extracting(h -> h.cue().orElseThrow(), RibbonLayout.Hit::grip)
        .containsExactly(FIRST, RibbonLayout.Grip.BODY);
    assertThat(hit(203, "roof", 0, 0.9).grip()).isEqualTo(RibbonLayout.Grip.START);
    assertThat(hit(598, "roof", 0, 0.9).grip()).isEqualTo(RibbonLayout.Grip.END);
    assertThat(hit(203, "roof", 0, 0.2).grip()).isEqualTo(RibbonLayout.Grip.FADE_IN);
    assertThat(hit(598, "roof", 0, 0.2).grip()).isEqualTo(RibbonLayout.Grip.FADE_OUT);
    assertThat(hit(800, "roof", 0, 0.5).cue()).isEmpty();
    assertThat(hit(100, "amber", 0, 0.5).cue()).contains(new CueRef(1, 0));
    assertThat(hit(100, "roof", 1, 0.5).cue()).contains(new CueRef(1, 0));
  }

  @Test
  void draggedCueGoesToTheNearestFrameAndBackAsOneStep() {
    bench.select(bench.selection().withCues(List.of(FIRST)));
    Project before = bench.project();
    CueDrag drag = new CueDrag(model, hit(400, "roof", 0, 0.5), 400);
    drag.to(410, Optional.of("roof"), false);
    drag.to(453, Optional.of("roof"), false);
    drag.end();
    assertThat(cue(FIRST).startMs()).isEqualByComparingTo("260");
    assertThat(cue(FIRST).lengthMs()).isEqualByComparingTo("400");
    bench.undo();
    assertThat(bench.project()).isEqualTo(before);
  }

  @Test
  void draggedCueEndsAtAnotherThatIsNear() {
    bench.select(bench.selection().withCues(List.of(FIRST)));
    CueDrag drag = new CueDrag(model, hit(400, "roof", 0, 0.5), 400);
    drag.to(795, Optional.of("roof"), false);
    assertThat(cue(FIRST).endMs()).isEqualByComparingTo("1000");
    drag.to(795.25, Optional.of("roof"), true);
    assertThat(cue(FIRST).startMs()).isEqualByComparingTo("595.25");
  }

  @Test
  void endsAndFadesAreDragged() {
    bench.select(bench.selection().withCues(List.of(FIRST)));
    CueDrag end = new CueDrag(model, hit(598, "roof", 0, 0.9), 598);
    end.to(698, Optional.of("roof"), false);
    end.end();
    assertThat(cue(FIRST).endMs()).isEqualByComparingTo("700");
    CueDrag fade = new CueDrag(model, hit(203, "roof", 0, 0.2), 203);
    fade.to(263, Optional.of("roof"), false);
    fade.end();
    assertThat(cue(FIRST).fadeInMs()).isEqualByComparingTo("60");
    CueDrag out = new CueDrag(model, hit(698, "roof", 0, 0.2), 698);
    out.to(598, Optional.of("roof"), false);
    out.end();
    assertThat(cue(FIRST).fadeOutMs()).isEqualByComparingTo("100");
    assertThat(bench.undoNameProperty().get()).contains("Change fade-out");
  }

  @Test
  void draggedOntoAnotherRowACueGoesToThatLamp() {
    bench.select(bench.selection().withCues(List.of(FIRST)));
    CueDrag drag = new CueDrag(model, hit(400, "roof", 0, 0.5), 400);
    drag.to(400, Optional.of("amber"), false);
    CueRef now = bench.selection().cue().orElseThrow();
    assertThat(bench.scene().orElseThrow().tracks().get(now.track()).lamps())
        .containsExactly("amber");
    drag.to(400, Optional.of("roof"), false);
    drag.end();
    assertThat(cue(FIRST)).isEqualTo(Cue.of(200, 400, LIGHT));
  }

  @Test
  void dragThatIsGivenUpLeavesNothing() {
    bench.select(bench.selection().withCues(List.of(FIRST)));
    Project before = bench.project();
    CueDrag drag = new CueDrag(model, hit(400, "roof", 0, 0.5), 400);
    drag.to(900, Optional.of("roof"), false);
    bench.cancelGesture();
    assertThat(bench.project()).isEqualTo(before);
    assertThat(bench.undoNameProperty().get()).isEmpty();
    assertThat(bench.redoNameProperty().get()).isEmpty();
  }

  @Test
  void endOfTheSceneIsDraggedByWholeFrames() {
    layout();
    EndDrag drag = new EndDrag(model);
    drag.to(1511, false);
    drag.end();
    assertThat(bench.scene().orElseThrow().lengthMs()).isEqualByComparingTo("1520");
  }

  @Test
  void addedCueFillsTheRoomUpToTheNext() {
    bench.select(bench.selection().withLamps(List.of("roof")));
    playhead.go(35);
    assertThat(commands.addAtPlayhead("flash")).isTrue();
    Cue added = cue(bench.selection().cue().orElseThrow());
    assertThat(added.startMs()).isEqualByComparingTo("700");
    assertThat(added.endMs()).isEqualByComparingTo("1000");
    assertThat(added.pattern().kind()).isEqualTo("flash");
  }

  @Test
  void cueOfSeveralLampsMakesATrackOfThem() {
    bench.select(bench.selection().withLamps(List.of("amber", "roof")));
    playhead.go(80);
    commands.addAtPlayhead("steady");
    CueRef now = bench.selection().cue().orElseThrow();
    assertThat(bench.scene().orElseThrow().tracks().get(now.track()).lamps())
        .containsExactly("amber", "roof");
  }

  @Test
  void nudgesGoFromFrameToFrame() {
    bench.apply(
        Edit.of(
            "rate",
            p ->
                Projects.inScene(
                    p, "work", s -> Scene.FRAMES_PER_SECOND.with(s, BigDecimal.valueOf(60)))));
    bench.select(bench.selection().withCues(List.of(FIRST)));
    commands.nudge(1);
    assertThat(cue(FIRST).startMs()).isEqualByComparingTo("216.666");
    commands.nudge(1);
    assertThat(cue(FIRST).startMs()).isEqualByComparingTo("233.333");
    commands.nudge(-14);
    assertThat(cue(FIRST).startMs()).isZero();
    commands.lengthen(-3);
    assertThat(cue(FIRST).endMs()).isEqualByComparingTo("350");
  }

  @Test
  void copiesArePastedAtThePlayhead() {
    bench.select(bench.selection().withCues(List.of(FIRST)));
    commands.copy();
    assertThat(commands.anyCopiedProperty().get()).isTrue();
    playhead.go(75);
    bench.select(bench.selection().withLamps(List.of("amber")).withCues(List.of()));
    commands.paste();
    CueRef now = bench.selection().cue().orElseThrow();
    assertThat(cue(now).startMs()).isEqualByComparingTo("1500");
    assertThat(bench.scene().orElseThrow().tracks().get(now.track()).lamps())
        .containsExactly("amber");
    commands.cut();
    commands.duplicate();
    bench.select(bench.selection().withCues(List.of(FIRST)));
    commands.duplicate();
    assertThat(cue(bench.selection().cue().orElseThrow()).startMs()).isEqualByComparingTo("600");
  }

  @Test
  void arrowsGoThroughCuesInTheOrderOfTime() {
    layout();
    bench.select(bench.selection().withLamps(List.of("roof")));
    commands.step(1);
    assertThat(bench.selection().cue()).contains(new CueRef(1, 0));
    commands.step(1);
    assertThat(bench.selection().cue()).contains(FIRST);
    commands.step(1);
    commands.step(1);
    assertThat(bench.selection().cue()).contains(new CueRef(0, 1));
    commands.stepRow(1);
    assertThat(bench.selection().lamp()).contains("amber");
    assertThat(bench.selection().cue()).contains(new CueRef(1, 0));
    assertThat(new RibbonWords(bench).cue(new CueRef(1, 0)))
        .isEqualTo("roof, amber: steady light, from 0 s to 0.3 s");
  }

  @Test
  void rowsAreToldToTheLeaderLines() {
    layout();
    assertThat(sheet.rowsProperty().get())
        .extracting(DrawingSheet.Row::lamp)
        .containsExactly("roof", "amber");
    assertThat(sheet.rowsProperty().get().get(0).centreY()).isBetween(60.0, 70.0);
  }

  @Test
  void stripIsTheMeanLightOfItsFrames() {
    Project project = Projects4Tests.sample("recovery-tractor");
    SceneLight light =
        SceneLight.of(FrameTable.of(project.rig(), project.scene("working").orElseThrow()));
    light.frames().render(() -> {});
    // Five frames a pixel: fewer than are looked at, so each counts.
    Strip strip =
        Strip.paint(light, new TimeAxis(0, 100), 50, List.of(List.of(0)), new boolean[] {true})[0];
    byte[] frame = new byte[light.frames().table().layout().bytes()];
    int pixels = light.screen().pixels(0);
    assertThat(strip.stripes()).hasSize(pixels);
    for (int x = 0; x < 40; x++) {
      float[] sum = new float[3 * pixels];
      for (int f = 5 * x; f < 5 * x + 5; f++) {
        light.frames().read(f, frame);
        for (int pixel = 0; pixel < pixels; pixel++) {
          light.screen().addPixel(frame, 0, pixel, sum, 3 * pixel);
        }
      }
      for (int pixel = 0; pixel < pixels; pixel++) {
        float fifth = 1f / 5;
        assertThat(strip.stripes().get(pixel).argb(x))
            .isEqualTo(
                Srgb8.argb(
                    fifth * sum[3 * pixel],
                    fifth * sum[3 * pixel + 1],
                    fifth * sum[3 * pixel + 2]));
      }
      assertThat(strip.duty(0, x)).isEqualTo(frame[light.screen().columns(0, 0)[0]] & 0xFF);
    }
    assertThat(strip.stripes().get(0).argb(40)).isZero();
    assertThat(strip.duty(0, 40)).isEqualTo(-1);
  }

  @Test
  void stripsOfTheRowsInSightComeByThemselves() throws InterruptedException {
    layout();
    while (model.stripsProperty().get().size() < 2) {
      Runnable next = screen.poll(5, TimeUnit.MINUTES);
      assertThat(next).isNotNull();
      next.run();
    }
    assertThat(model.stripsProperty().get()).containsOnlyKeys(List.of(0), List.of(1));
  }

  private void group(String... names) {
    bench.apply(
        Edit.of(
            "group",
            p ->
                Project.RIG.with(
                    p,
                    Rig.LAMPS.with(
                        p.rig(),
                        java.util.stream.IntStream.range(0, names.length)
                            .mapToObj(i -> Lamp.GROUP.with(p.rig().lamps().get(i), names[i]))
                            .toList()))));
  }

  @Test
  void lampsOfAGroupAreUnderOneHeadingAndFoldedTheyAreOneRibbon() {
    group("Roof", "Roof");
    RibbonLayout layout = layout();
    assertThat(layout.headings()).hasSize(1);
    RibbonLayout.Heading heading = layout.headings().get(0);
    assertThat(new RibbonWords(bench).count(heading)).isEqualTo("2 px, 1 LED");
    assertThat(layout.rows()).hasSize(2);
    assertThat(layout.rows().get(0).y()).isGreaterThanOrEqualTo(heading.y() + heading.height());
    Project before = bench.project();
    model.rows().toggleFolded("Roof");
    RibbonLayout folded = model.layout().orElseThrow();
    assertThat(folded.rows()).isEmpty();
    assertThat(folded.headings().get(0).lights()).containsExactly(0, 1);
    assertThat(folded.height()).isLessThan(layout.height());
    // A leader line of each lamp still ends at its heading.
    assertThat(sheet.rowsProperty().get()).hasSize(2);
    assertThat(bench.project()).isEqualTo(before);
    assertThat(model.rows().state().folded()).containsExactly("Roof");
  }

  private List<String> headingTexts(double width) {
    DisplayList.Builder list = new DisplayList.Builder(width, 200);
    new TitleDrawing(model, (text, size) -> 6 * text.length(), 13, list).draw(layout());
    return list.build().marks().stream()
        .filter(mark -> mark instanceof Mark.Text text && text.x() >= TitleDrawing.NAME_X)
        .map(mark -> ((Mark.Text) mark).text())
        .toList();
  }

  /** The name of a group was cut for the sake of the count beside it. */
  @Test
  void nameOfAGroupHasAllTheRoomBeforeItIsCut() {
    group("Harbour wall", "Harbour wall");
    // 12 letters of 6, "2 px, 1 LED" with 11, three signs of 18, and what is between them.
    assertThat(headingTexts(240)).contains("Harbour wall", "2 px, 1 LED");
    assertThat(headingTexts(170)).contains("Harbour wall").doesNotContain("2 px, 1 LED");
    assertThat(headingTexts(130)).doesNotContain("Harbour wall").anyMatch(t -> t.contains("…"));
  }

  @Test
  void lampsOfNoGroupStandBeforeTheFirstHeading() {
    group("Roof", "");
    RibbonLayout layout = layout();
    assertThat(layout.row("amber").orElseThrow().y()).isLessThan(layout.headings().get(0).y());
  }

  @Test
  void rowsHaveThreeHeights() {
    double before = layout().height();
    model.rows().lookProperty().set(RowsLook.FIRST.withHeight(RowHeight.LARGE));
    assertThat(layout().height()).isGreaterThan(before);
    model.rows().lookProperty().set(RowsLook.FIRST.withHeight(RowHeight.SMALL));
    assertThat(layout().height()).isLessThan(before);
    assertThat(RowHeight.LARGE.next()).isEqualTo(RowHeight.SMALL);
  }

  @Test
  void lockedLampsCuesCannotBeEditedAndTheRefusalNamesIt() {
    bench.select(bench.selection().withCues(List.of(FIRST)).withLamps(List.of("roof")));
    model.toggle(LampSigns.Sign.LOCK, List.of("roof"));
    Project before = bench.project();
    commands.remove();
    commands.nudge(5);
    CueDrag drag = new CueDrag(model, hit(400, "roof", 0, 0.5), 400);
    drag.to(900, Optional.of("amber"), false);
    assertThat(bench.project()).isEqualTo(before);
    assertThat(bench.refusalProperty().get())
        .contains("roof is locked. Unlock it to edit its cues.");
    model.toggle(LampSigns.Sign.LOCK, List.of("roof"));
    commands.nudge(5);
    assertThat(bench.project()).isNotEqualTo(before);
  }

  @Test
  void muteAndSoloHideLampsAndAreNoPartOfTheProject() {
    Project before = bench.project();
    model.toggle(LampSigns.Sign.MUTE, List.of("roof"));
    assertThat(sheet.signs().shows("roof")).isFalse();
    assertThat(sheet.signs().shows("amber")).isTrue();
    assertThat(sheet.signs().hidden(bench.project())).isEqualTo(1);
    model.toggle(LampSigns.Sign.SOLO, List.of("roof"));
    assertThat(sheet.signs().hidden(bench.project())).isEqualTo(2);
    assertThat(RibbonSigns.words(sheet.signs(), "roof")).isEqualTo("muted, solo");
    sheet.signsProperty().set(sheet.signs().allShown());
    assertThat(sheet.signs().hidden(bench.project())).isZero();
    assertThat(bench.project()).isEqualTo(before);
    assertThat(bench.undoNameProperty().get()).isEmpty();
  }

  @Test
  void markersAreAddedMovedRenamedAndRemovedAndUndone() {
    layout();
    MarkerCommands markers = new MarkerCommands(model);
    Project before = bench.project();
    playhead.go(20);
    markers.add();
    assertThat(bench.scene().orElseThrow().markers())
        .containsExactly(new Marker(BigDecimal.valueOf(400), "Marker 1"));
    markers.rename("Hook on");
    markers.move(BigDecimal.valueOf(500), "one");
    markers.move(BigDecimal.valueOf(600), "one");
    bench.endGesture();
    assertThat(bench.scene().orElseThrow().markers())
        .containsExactly(new Marker(BigDecimal.valueOf(600), "Hook on"));
    assertThat(model.markerAt(model.axis().x(605), 3, 40)).isPresent();
    assertThat(model.markerAt(model.axis().x(605), 30, 40)).isEmpty();
    playhead.go(0);
    markers.step(1);
    assertThat(playhead.frame()).isEqualTo(30);
    markers.remove();
    assertThat(bench.scene().orElseThrow().markers()).isEmpty();
    for (int steps = 0; steps < 4; steps++) {
      bench.undo();
    }
    assertThat(bench.project()).isEqualTo(before);
  }

  /** A quarter of a second later is, at two turns a second, half a turn back. */
  @Test
  void lightIsDraggedWithinItsCueByThePhase() {
    bench.applyToCues(
        "beacon",
        Optional.empty(),
        s ->
            CueEdits.each(
                s,
                List.of(FIRST),
                c ->
                    Cue.PATTERN.with(
                        c, Patterns.fresh("rotating-beacon", new Look(Colour.WHITE, 1)))));
    bench.select(bench.selection().withCues(List.of(FIRST)));
    PhaseDrag drag = new PhaseDrag(bench);
    drag.to(100);
    drag.to(250);
    drag.end();
    assertThat(cue(FIRST).pattern().startPhase().orElseThrow()).isEqualByComparingTo("0.5");
    assertThat(cue(FIRST).startMs()).isEqualByComparingTo("200");
    assertThat(bench.undoNameProperty().get()).contains("Change phase");
    commands.shiftPhase(1);
    assertThat(cue(FIRST).pattern().startPhase().orElseThrow()).isEqualByComparingTo("0.46");
    assertThat(CuePhases.moves(cue(new CueRef(0, 1)))).isFalse();
  }

  @Test
  void keyframesAreAddedDraggedBetweenTheirNeighboursAndRemoved() {
    bench.applyToCues(
        "keyframes",
        Optional.empty(),
        s ->
            CueEdits.each(
                s,
                List.of(FIRST),
                c -> Cue.PATTERN.with(c, Patterns.fresh("keyframes", Look.DEFAULT))));
    KeyframeDrag.add(model, FIRST, 400);
    Keyframes pattern = (Keyframes) cue(FIRST).pattern();
    assertThat(pattern.frames()).hasSize(3);
    assertThat(pattern.frames().get(1).atMs()).isEqualByComparingTo("200");
    assertThat(pattern.frames().get(1).level().orElseThrow()).isEqualTo(0.2, within(1e-9));
    KeyframeDrag drag = new KeyframeDrag(model, FIRST, 1);
    drag.to(5, false);
    drag.to(540, false);
    drag.end();
    assertThat(((Keyframes) cue(FIRST).pattern()).frames().get(1).atMs())
        .isEqualByComparingTo("340");
    assertThat(bench.undoNameProperty().get()).contains("Move keyframe");
    KeyframeDrag.remove(model, FIRST, 1);
    assertThat(((Keyframes) cue(FIRST).pattern()).frames()).hasSize(2);
  }

  private void pattern(Pattern pattern) {
    bench.applyToCues(
        "pattern",
        Optional.empty(),
        s -> CueEdits.each(s, List.of(FIRST), c -> Cue.PATTERN.with(c, pattern)));
    bench.select(bench.selection().withCues(List.of(FIRST)));
  }

  /** A chase of 80 ms per step over two pixels has a period of 160 ms; a fill one of 800. */
  @Test
  void lightOfChaseAndFillIsDraggedByThePeriodOnTheirPixels() {
    pattern(Patterns.fresh("chase", Look.DEFAULT));
    new PhaseDrag(bench).to(40);
    assertThat(cue(FIRST).pattern().startPhase().orElseThrow()).isEqualByComparingTo("0.75");
    pattern(Patterns.fresh("fill", Look.DEFAULT));
    new PhaseDrag(bench).to(200);
    assertThat(cue(FIRST).pattern().startPhase().orElseThrow()).isEqualByComparingTo("0.75");
    assertThat(CuePhases.moves(cue(FIRST))).isTrue();
  }

  @Test
  void keyframesAreSelectedAddedAndRemovedByCommands() {
    pattern(Patterns.fresh("keyframes", Look.DEFAULT));
    KeyframeCommands keyframes = model.keyframes();
    model.playhead().go(20);
    keyframes.add();
    List<Keyframe> frames = ((Keyframes) cue(FIRST).pattern()).frames();
    assertThat(frames).hasSize(3);
    assertThat(frames.get(1).atMs()).isEqualByComparingTo("200");
    assertThat(keyframes.selectedProperty().get()).contains(1);
    keyframes.step(1);
    assertThat(keyframes.selectedProperty().get()).contains(2);
    keyframes.step(-1);
    assertThat(model.playhead().frame()).isEqualTo(20);
    keyframes.remove();
    assertThat(((Keyframes) cue(FIRST).pattern()).frames()).hasSize(2);
    assertThat(keyframes.selectedProperty().get()).isEmpty();
    // Without a selected one it is that nearest to the playhead; the last one stays.
    model.playhead().go(11);
    keyframes.remove();
    frames = ((Keyframes) cue(FIRST).pattern()).frames();
    assertThat(frames).hasSize(1);
    assertThat(frames.get(0).atMs()).isGreaterThan(java.math.BigDecimal.ZERO);
    keyframes.remove();
    assertThat(((Keyframes) cue(FIRST).pattern()).frames()).hasSize(1);
    // Outside of the cue none is added.
    model.playhead().go(0);
    keyframes.add();
    assertThat(((Keyframes) cue(FIRST).pattern()).frames()).hasSize(1);
  }

  @Test
  void groupIsRenamedStaysFoldedAndCanJoinAnother() {
    group("Roof", "Rear");
    model.rows().toggleFolded("Roof");
    model.rows().renameGroup("Roof", "Top");
    assertThat(layout().headings().stream().map(RibbonLayout.Heading::group))
        .contains("Top", "Rear");
    assertThat(model.rows().state().folded()).containsExactly("Top");
    model.rows().renameGroup("Top", "Rear");
    assertThat(layout().headings()).hasSize(1);
    assertThat(layout().headings().get(0).lamps()).hasSize(2);
    model.rows().renameGroup("Rear", "");
    assertThat(layout().headings()).isEmpty();
    bench.undo();
    bench.undo();
    assertThat(layout().headings()).hasSize(2);
  }

  @Test
  void everyPatternIsSaidInWordsWithItsRate() {
    CueWords words = new CueWords();
    for (String kind : Patterns.kinds()) {
      assertThat(words.of(Patterns.fresh(kind, Look.DEFAULT))).as(kind).matches("[0-9A-Z(].*");
    }
    assertThat(words.of(Patterns.fresh("rotating-beacon", Look.DEFAULT)))
        .isEqualTo("Rotating beacon 120/min");
    assertThat(
            words.of(
                new Flash(
                    Look.DEFAULT,
                    BigDecimal.ZERO,
                    BigDecimal.valueOf(80),
                    BigDecimal.valueOf(120),
                    2,
                    BigDecimal.valueOf(350))))
        .isEqualTo("Double flash 80/min");
    assertThat(words.of(new Tint(Look.DEFAULT, 2700, OptionalDouble.of(5500))))
        .isEqualTo("White 2,700 to 5,500\u00a0K");
  }

  @Test
  void namesThatDifferAreCutSoThatTheyStillDiffer() {
    ShortNames names = new ShortNames((text, size) -> text.length(), 1, 10);
    java.util.Map<String, String> cut =
        names.of(
            List.of(
                "Hazard warning bar, left",
                "Hazard warning bar, right",
                "Work lamp 1 on the crane",
                "Work lamp 2 on the crane",
                "Short"));
    assertThat(cut.values()).doesNotHaveDuplicates();
    assertThat(cut.get("Short")).isEqualTo("Short");
    assertThat(cut.values()).allSatisfy(text -> assertThat(text.length()).isLessThanOrEqualTo(11));
    assertThat(cut.get("Hazard warning bar, left")).startsWith("Hazar").endsWith("left");
  }
}
