package lampwright.app.workshop.edit;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import lampwright.engine.pattern.Flash;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.Patterns;
import lampwright.engine.pattern.RotatingBeacon;
import lampwright.engine.pattern.Steady;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Span;
import lampwright.engine.scene.Track;
import org.junit.jupiter.api.Test;

/** Exact values, computed by hand. */
class LampCueEditsTest {
  private static final Pattern FLASH = Patterns.fresh("flash", Look.DEFAULT);
  private static final Pattern BEACON = Patterns.fresh("rotating-beacon", Look.DEFAULT);
  private static final Pattern STEADY = new Steady(Look.DEFAULT);

  private static Scene scene(Track... tracks) {
    return Scene.TRACKS.with(Projects.emptyScene("work", 4000), List.of(tracks));
  }

  private static Track track(String lamp, Cue... cues) {
    return new Track(List.of(lamp), Span.EACH, List.of(cues));
  }

  private static BigDecimal ms(String text) {
    return new BigDecimal(text);
  }

  @Test
  void phasesOfThreeLampsAreThirds() {
    Scene spread =
        LampCueEdits.spreadPhases(
            scene(
                track("a", Cue.of(0, 1000, FLASH)),
                track("b", Cue.of(0, 1000, FLASH), Cue.of(1000, 500, STEADY)),
                track("c", Cue.of(200, 1000, FLASH)),
                track("d", Cue.of(0, 1000, FLASH))),
            List.of("c", "a", "b"));
    assertThat(phase(spread, 2, 0)).isEqualByComparingTo("0");
    assertThat(phase(spread, 0, 0)).isEqualByComparingTo("0.333333");
    assertThat(phase(spread, 1, 0)).isEqualByComparingTo("0.666667");
    assertThat(phase(spread, 3, 0)).isEqualByComparingTo("0");
    assertThat(spread.tracks().get(1).cues().get(1)).isEqualTo(Cue.of(1000, 500, STEADY));
    assertThat(spread.tracks().get(2).cues().get(0).startMs()).isEqualByComparingTo("200");
  }

  private static BigDecimal phase(Scene scene, int track, int cue) {
    return ((Flash) scene.tracks().get(track).cues().get(cue).pattern()).phase();
  }

  @Test
  void aSharedTrackIsPartedBeforeItsLampsDiffer() {
    Track shared = new Track(List.of("a", "x", "b"), Span.EACH, List.of(Cue.of(0, 1000, FLASH)));
    Scene spread = LampCueEdits.spreadPhases(scene(shared), List.of("a", "b"));
    assertThat(spread.tracks())
        .extracting(Track::lamps)
        .containsExactly(List.of("x"), List.of("a"), List.of("b"));
    assertThat(phase(spread, 0, 0)).isEqualByComparingTo("0");
    assertThat(phase(spread, 1, 0)).isEqualByComparingTo("0");
    assertThat(phase(spread, 2, 0)).isEqualByComparingTo("0.5");
  }

  @Test
  void aJoinedTrackStaysAsItIs() {
    Scene joined =
        scene(new Track(List.of("a", "b"), Span.JOINED, List.of(Cue.of(0, 1000, FLASH))));
    assertThat(LampCueEdits.spreadPhases(joined, List.of("a", "b"))).isEqualTo(joined);
    assertThat(LampCueEdits.mirror(joined, List.of("a", "b"))).isEqualTo(joined);
    assertThat(LampCueEdits.stagger(joined, List.of("a", "b"), ms("40"))).isEqualTo(joined);
  }

  @Test
  void eachLampStartsAStepLater() {
    Scene staggered =
        LampCueEdits.stagger(
            scene(
                track("a", Cue.of(100, 1000, FLASH)),
                track("b", Cue.of(100, 1000, FLASH)),
                track("c", Cue.of(0, 300, STEADY), Cue.of(500, 300, STEADY))),
            List.of("a", "b", "c"),
            ms("62.5"));
    assertThat(staggered.tracks().get(0).cues().get(0).startMs()).isEqualByComparingTo("100");
    assertThat(staggered.tracks().get(1).cues().get(0).startMs()).isEqualByComparingTo("162.5");
    assertThat(staggered.tracks().get(1).cues().get(0).lengthMs()).isEqualByComparingTo("1000");
    assertThat(staggered.tracks().get(2).cues())
        .extracting(Cue::startMs)
        .usingElementComparator(BigDecimal::compareTo)
        .containsExactly(ms("125"), ms("625"));
  }

  @Test
  void cuesAreMirroredAndTurnTheOtherWay() {
    Scene before =
        scene(
            track("left", Cue.of(0, 1000, BEACON)),
            track("middle", Cue.of(0, 1000, FLASH)),
            track("right", Cue.of(500, 1000, STEADY)));
    List<String> lamps = List.of("left", "middle", "right");
    Scene mirrored = LampCueEdits.mirror(before, lamps);
    assertThat(mirrored.tracks())
        .extracting(Track::lamps)
        .containsExactly(List.of("right"), List.of("middle"), List.of("left"));
    assertThat(((RotatingBeacon) mirrored.tracks().get(0).cues().get(0).pattern()).clockwise())
        .isFalse();
    assertThat(mirrored.tracks().get(1).cues()).containsExactly(Cue.of(0, 1000, FLASH));
    assertThat(mirrored.tracks().get(2).cues()).containsExactly(Cue.of(500, 1000, STEADY));
    assertThat(LampCueEdits.mirror(mirrored, lamps)).isEqualTo(before);
  }

  @Test
  void otherLampsGetTheCuesOfOneInPlaceOfTheirs() {
    Scene copied =
        LampCueEdits.copyToLamps(
            scene(
                track("a", Cue.of(0, 1000, FLASH)),
                track("b", Cue.of(100, 200, STEADY)),
                track("x", Cue.of(100, 200, STEADY)),
                track("a", Cue.of(2000, 500, BEACON))),
            "a",
            List.of("b", "c"));
    assertThat(copied.tracks())
        .containsExactly(
            track("a", Cue.of(0, 1000, FLASH)),
            track("b", Cue.of(0, 1000, FLASH)),
            track("c", Cue.of(0, 1000, FLASH)),
            track("x", Cue.of(100, 200, STEADY)),
            track("a", Cue.of(2000, 500, BEACON)),
            track("b", Cue.of(2000, 500, BEACON)),
            track("c", Cue.of(2000, 500, BEACON)));
  }

  @Test
  void cuesAreCopiedToAShorterSceneUpToItsEnd() {
    Scene from =
        scene(
            track("a", Cue.of(0, 1000, FLASH), Cue.of(499, 100, STEADY), Cue.of(500, 100, STEADY)),
            track("b", Cue.of(0, 1000, BEACON)));
    Scene to =
        Scene.TRACKS.with(
            Projects.emptyScene("rest", 500), List.of(track("a", Cue.of(0, 500, STEADY))));
    assertThat(LampCueEdits.copyToScene(from, to, List.of("a")).tracks())
        .containsExactly(
            track("a", Cue.of(0, 500, STEADY)),
            track("a", Cue.of(0, 1000, FLASH), Cue.of(499, 100, STEADY)));
  }
}
