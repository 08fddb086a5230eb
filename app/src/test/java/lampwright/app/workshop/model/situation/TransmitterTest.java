package lampwright.app.workshop.model.situation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Optional;
import lampwright.app.workshop.Projects4Tests;
import lampwright.app.workshop.edit.Edit;
import lampwright.app.workshop.edit.SituationEdits;
import lampwright.app.workshop.model.Bench;
import lampwright.app.workshop.model.DrawingSheet;
import lampwright.app.workshop.model.LiveFrame;
import lampwright.app.workshop.model.files.ReadyAnswers;
import lampwright.engine.document.Project;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.Lamp;
import lampwright.engine.situation.Situation;
import org.junit.jupiter.api.Test;

class TransmitterTest {
  private static final long FRAME_NANOS = 20_000_000;

  private final Bench bench = new Bench(Projects4Tests.reacting());
  private final ReadyAnswers dialogs = new ReadyAnswers();
  private final DrawingSheet sheet = new DrawingSheet();
  private final Transmitter transmitter = new Transmitter(bench, sheet, dialogs);

  private InputControl control(String id) {
    return transmitter.control(id).orElseThrow();
  }

  private ShowState.RungState rung(String id) {
    return transmitter.stateProperty().get().orElseThrow().rungs().get(id);
  }

  private byte[] shown() {
    return sheet.liveProperty().get().map(LiveFrame::bytes).orElseThrow();
  }

  private byte[] frameOf(String scene, int frame) {
    FrameTable table =
        FrameTable.of(bench.project().rig(), bench.project().scene(scene).orElseThrow());
    var cursor = table.cursor();
    byte[] bytes = new byte[table.layout().bytes()];
    for (int i = 0; i <= frame; i++) {
      cursor.next(bytes);
    }
    return bytes;
  }

  @Test
  void offItLeavesTheSceneOnTheDrawing() {
    assertThat(sheet.liveProperty().get()).isEmpty();
    assertThat(transmitter.stateProperty().get()).isEmpty();
    assertThat(transmitter.lampNote("x")).isEmpty();
    transmitter.onProperty().set(true);
    assertThat(sheet.liveProperty().get()).isPresent();
    transmitter.onProperty().set(false);
    assertThat(sheet.liveProperty().get()).isEmpty();
    assertThat(transmitter.playingProperty().get()).isFalse();
  }

  @Test
  void atRestTheModelIsOnTheRoad() {
    transmitter.onProperty().set(true);
    transmitter.step(9);
    assertThat(rung("on-the-road").active()).isTrue();
    assertThat(rung("standing").active()).isTrue();
    assertThat(rung("towed").active()).isFalse();
    assertThat(rung("signal-lost").active()).isFalse();
    // The only active one with a scene: the frame is that of its scene.
    assertThat(transmitter.stateProperty().get().orElseThrow().frame()).isEqualTo(9);
    assertThat(shown()).isEqualTo(frameOf("road", 9));
  }

  @Test
  void aSwitchCallsUpItsSituationAndLampsSayWhose() {
    transmitter.onProperty().set(true);
    control("tow-bar").onProperty().set(true);
    // A switch changes where two samples in a row agree.
    transmitter.step(2);
    assertThat(rung("towed").active()).isTrue();
    assertThat(transmitter.why(rung("towed"))).isEqualTo("tow-bar on");
    assertThat(rung("towed").lamps()).isNotEmpty().hasSize(rung("towed").wanted());
    String lamp = rung("towed").lamps().get(0);
    assertThat(transmitter.lampNote(lamp).orElseThrow()).endsWith(": situation towed, tow-bar on");
    control("tow-bar").onProperty().set(false);
    transmitter.step(2);
    assertThat(rung("towed").active()).isFalse();
    assertThat(transmitter.why(rung("towed"))).isEqualTo("no longer tow-bar on");
  }

  @Test
  void aLostSignalIsSeenAfterItsTime() {
    transmitter.onProperty().set(true);
    control("throttle").lostProperty().set(true);
    // 100 ms at 50 frames/s are 5 frames after the last pulse (docs/situations.md).
    transmitter.step(4);
    assertThat(rung("signal-lost").active()).isFalse();
    transmitter.step(1);
    assertThat(rung("signal-lost").active()).isTrue();
    transmitter.centre();
    transmitter.step(1);
    // It lingers for a second.
    assertThat(rung("signal-lost").active()).isTrue();
    transmitter.step(50);
    assertThat(rung("signal-lost").active()).isFalse();
  }

  @Test
  void aChannelThatLearnsItsCentreHasLearntItAtRest() {
    control("throttle").widthUsProperty().set(1560);
    transmitter.onProperty().set(true);
    // 1,560 us are 60 from the centre, and not the centre.
    assertThat(rung("standing").active()).isFalse();
    assertThat(rung("signal-lost").active()).isFalse();
  }

  @Test
  void timeGoesOnByTheClockAndIsNotCaughtUpAfterAHalt() {
    transmitter.onProperty().set(true);
    transmitter.tick(0);
    transmitter.tick(10 * FRAME_NANOS);
    assertThat(transmitter.stateProperty().get().orElseThrow().frame()).isEqualTo(10);
    transmitter.tick(5000 * FRAME_NANOS);
    assertThat(transmitter.stateProperty().get().orElseThrow().frame()).isEqualTo(10);
    transmitter.tick(5001 * FRAME_NANOS);
    assertThat(transmitter.stateProperty().get().orElseThrow().frame()).isEqualTo(11);
    transmitter.playingProperty().set(false);
    transmitter.tick(5050 * FRAME_NANOS);
    assertThat(transmitter.stateProperty().get().orElseThrow().frame()).isEqualTo(11);
    assertThat(sheet.liveProperty().get().orElseThrow().dimmed()).isFalse();
  }

  @Test
  void anEditBeginsAnewWithTheSticksAsTheyAre() {
    transmitter.onProperty().set(true);
    control("tow-bar").onProperty().set(true);
    transmitter.step(20);
    bench.apply(
        Edit.of(
            "edit", p -> SituationEdits.change(p, "towed", s -> Situation.PRIORITY.with(s, 41))));
    assertThat(transmitter.stateProperty().get().orElseThrow().frame()).isZero();
    assertThat(control("tow-bar").onProperty().get()).isTrue();
  }

  @Test
  void whatCannotBePlayedIsExplained() {
    bench.open(Projects4Tests.small());
    transmitter.onProperty().set(true);
    assertThat(transmitter.troubleProperty().get())
        .hasValueSatisfying(t -> assertThat(t).contains("situation has a scene"));
    assertThat(sheet.liveProperty().get()).isEmpty();
    bench.open(Projects4Tests.reacting());
    assertThat(transmitter.troubleProperty().get()).isEmpty();
    bench.apply(
        Edit.of(
            "edit", p -> SituationEdits.change(p, "towed", s -> Situation.PRIORITY.with(s, 20))));
    assertThat(transmitter.troubleProperty().get())
        .hasValueSatisfying(t -> assertThat(t).contains("situation towed"));
    assertThat(sheet.liveProperty().get()).isEmpty();
  }

  @Test
  void lightIsDimmedUntilTheBuilderAgrees() {
    transmitter.onProperty().set(true);
    assertThat(sheet.liveProperty().get().orElseThrow().dimmed()).isTrue();
    dialogs.answers.add("Keep dimmed");
    transmitter.setFull(true);
    assertThat(sheet.liveProperty().get().orElseThrow().dimmed()).isTrue();
    dialogs.answers.add("Show at full light");
    transmitter.setFull(true);
    assertThat(sheet.liveProperty().get().orElseThrow().dimmed()).isFalse();
    transmitter.setFull(false);
    assertThat(sheet.liveProperty().get().orElseThrow().dimmed()).isTrue();
    transmitter.onProperty().set(false);
    assertThat(transmitter.fullProperty().get()).isFalse();
  }

  /** Each lamp has the bytes of the scene of the one that has it. */
  @Test
  void everyLampHasAnOwnerOrIsDark() {
    transmitter.onProperty().set(true);
    control("tow-bar").onProperty().set(true);
    transmitter.step(30);
    ShowState now = transmitter.stateProperty().get().orElseThrow();
    Project project = bench.project();
    for (Lamp lamp : project.rig().lamps()) {
      Optional<String> owner = Optional.ofNullable(now.owners().get(lamp.id()));
      assertThat(transmitter.lampNote(lamp.id()).orElseThrow())
          .contains(owner.map(o -> "situation " + o).orElse("dark"));
    }
    int held = now.rungs().values().stream().mapToInt(r -> r.lamps().size()).sum();
    assertThat(held).isEqualTo(now.owners().size());
    assertThat(Arrays.equals(shown(), frameOf("road", 30))).isFalse();
  }
}
