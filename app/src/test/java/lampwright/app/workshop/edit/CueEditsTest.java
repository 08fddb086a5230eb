package lampwright.app.workshop.edit;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.Set;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Steady;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Span;
import lampwright.engine.scene.Track;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CueEditsTest {
  private static final Steady LIGHT = new Steady(Look.DEFAULT);
  private static final CueRef FIRST = new CueRef(0, 0);

  private final Scene scene =
      Scene.TRACKS.with(
          Projects.emptyScene("s", 2000),
          List.of(
              Track.of(List.of("a"), Cue.of(100, 400, LIGHT), Cue.of(800, 200, LIGHT)),
              Track.of(List.of("a", "b"), Cue.of(0, 1000, LIGHT))));

  private static final Rig RIG =
      Rig.of(
          List.of(),
          List.of(DriverOutput.of("a"), DriverOutput.of("b")),
          List.of(Lamp.ofOutput("a", "a"), Lamp.ofOutput("b", "b")));

  private static CueEdits.Split split(Scene scene, List<CueRef> refs, double atMs) {
    return CueEdits.split(RIG, scene, refs, ms(atMs));
  }

  private static BigDecimal ms(double value) {
    return BigDecimal.valueOf(value);
  }

  @Test
  void cueGoesOntoATrackOfTheSameLampsThatIsFree() {
    CueEdits.Changed changed =
        CueEdits.add(scene, List.of("a"), Span.EACH, Cue.of(500, 300, LIGHT));
    assertThat(changed.cues()).containsExactly(new CueRef(0, 2));
    assertThat(changed.scene().tracks()).hasSize(2);
  }

  @Test
  void cueThatOverlapsGetsATrackOfItsOwnOnTop() {
    CueEdits.Changed changed = CueEdits.add(scene, List.of("a"), Span.EACH, Cue.of(499, 10, LIGHT));
    assertThat(changed.cues()).containsExactly(new CueRef(2, 0));
    assertThat(changed.scene().tracks().get(2).lamps()).containsExactly("a");
  }

  @Test
  void removingTheLastCueRemovesItsTrack() {
    Scene changed = CueEdits.remove(scene, Set.of(new CueRef(1, 0))).scene();
    assertThat(changed.tracks()).hasSize(1);
    changed = CueEdits.remove(scene, Set.of(FIRST)).scene();
    assertThat(changed.tracks().get(0).cues()).containsExactly(Cue.of(800, 200, LIGHT));
  }

  @Test
  void cuesShiftTogetherAndNoneBeforeTheStart() {
    List<CueRef> both = List.of(FIRST, new CueRef(0, 1));
    Scene changed = CueEdits.shift(scene, both, ms(-250)).scene();
    assertThat(changed.tracks().get(0).cues().get(0).startMs()).isZero();
    assertThat(changed.tracks().get(0).cues().get(1).startMs()).isEqualByComparingTo("700");
  }

  @Test
  void startMovesAndEndStays() {
    Cue cue =
        CueEdits.stretchStart(scene, List.of(FIRST), ms(50)).scene().tracks().get(0).cues().get(0);
    assertThat(cue.startMs()).isEqualByComparingTo("150");
    assertThat(cue.endMs()).isEqualByComparingTo("500");
    cue =
        CueEdits.stretchStart(scene, List.of(FIRST), ms(4000))
            .scene()
            .tracks()
            .get(0)
            .cues()
            .get(0);
    assertThat(cue.startMs()).isEqualByComparingTo("499");
    cue =
        CueEdits.stretchStart(scene, List.of(FIRST), ms(-4000))
            .scene()
            .tracks()
            .get(0)
            .cues()
            .get(0);
    assertThat(cue.startMs()).isZero();
    assertThat(cue.endMs()).isEqualByComparingTo("500");
  }

  @Test
  void endMovesAndACueKeepsAMillisecond() {
    Cue cue =
        CueEdits.stretchEnd(scene, List.of(FIRST), ms(-4000)).scene().tracks().get(0).cues().get(0);
    assertThat(cue.lengthMs()).isEqualByComparingTo("1");
  }

  @Test
  void fadesStayWithinTheCue() {
    Cue cue =
        CueEdits.fadeIn(scene, List.of(FIRST), ms(4000)).scene().tracks().get(0).cues().get(0);
    assertThat(cue.fadeInMs()).isEqualByComparingTo("400");
    cue = CueEdits.fadeOut(scene, List.of(FIRST), ms(-1)).scene().tracks().get(0).cues().get(0);
    assertThat(cue.fadeOutMs()).isZero();
  }

  @Test
  void splitLeavesCuesThatTheInstantIsNotIn() {
    CueEdits.Changed changed = split(scene, List.of(FIRST, new CueRef(0, 1)), 900).changed();
    assertThat(changed.cues()).containsExactly(new CueRef(0, 2));
    assertThat(changed.scene().tracks().get(0).cues()).hasSize(3);
    assertThat(split(scene, List.of(FIRST), 100).changed().cues()).isEmpty();
    assertThat(split(scene, List.of(FIRST), 500).changed().cues()).isEmpty();
    assertThat(split(scene, List.of(FIRST), 500).whole()).isEmpty();
  }

  @Test
  void pastedCuesKeepTheirDistanceAndGoOntoOtherLamps() {
    List<CueEdits.Copied> copied = CueEdits.copy(scene, List.of(new CueRef(0, 1), FIRST));
    CueEdits.Changed changed = CueEdits.paste(scene, copied, ms(1000), List.of("b"));
    Track track = changed.scene().tracks().get(2);
    assertThat(track.lamps()).containsExactly("b");
    assertThat(track.cues()).containsExactly(Cue.of(1000, 400, LIGHT), Cue.of(1700, 200, LIGHT));
  }

  @Test
  void cuesOfSeveralLampsArePastedOntoTheirOwn() {
    List<CueEdits.Copied> copied = CueEdits.copy(scene, List.of(FIRST, new CueRef(1, 0)));
    CueEdits.Changed changed = CueEdits.paste(scene, copied, ms(5000), List.of("b"));
    assertThat(changed.scene().tracks()).hasSize(2);
    assertThat(changed.cues()).containsExactly(new CueRef(1, 1), new CueRef(0, 2));
  }

  @Test
  void cueMovesToAnotherLamp() {
    CueEdits.Changed changed = CueEdits.toLamps(scene, List.of(FIRST), List.of("b"));
    assertThat(changed.scene().tracks().get(0).cues()).hasSize(1);
    CueRef now = changed.cues().get(0);
    assertThat(changed.scene().tracks().get(now.track()).lamps()).containsExactly("b");
  }

  // A cue covers the frames with start <= t: the decimal must not be past the frame.
  @ParameterizedTest
  @ValueSource(strings = {"1", "23.976", "24", "29.97", "30", "50", "59.94", "60", "144", "999"})
  void cueThatStartsAtAFrameCoversIt(String rate) {
    Scene at = Scene.FRAMES_PER_SECOND.with(scene, new BigDecimal(rate));
    for (long frame : new long[] {0, 1, 2, 3, 7, 100, 12345}) {
      BigDecimal ms = CueEdits.frameMs(at, frame);
      BigDecimal exact = BigDecimal.valueOf(1000 * frame);
      assertThat(ms.multiply(at.framesPerSecond())).isLessThanOrEqualTo(exact);
      assertThat(ms.add(new BigDecimal("0.001")).multiply(at.framesPerSecond()))
          .isGreaterThan(exact);
      assertThat(CueEdits.nearestFrame(at, ms)).isEqualTo(frame);
    }
  }

  @ParameterizedTest
  @CsvSource({"0, 0", "9.99, 0", "10, 1", "20, 1", "29.9, 1", "30, 2", "-5, 0"})
  void nearestFrameRoundsHalfUp(BigDecimal ms, long frame) {
    assertThat(CueEdits.nearestFrame(scene, ms)).isEqualTo(frame);
  }
}
