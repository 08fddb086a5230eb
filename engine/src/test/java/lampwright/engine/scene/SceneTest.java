package lampwright.engine.scene;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import lampwright.engine.check.Fault;
import lampwright.engine.check.InvalidModelException;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Steady;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Scenes, tracks and cues: frames by hand, what is refused, and that they can't change. */
class SceneTest {
  private static Scene scene(String lengthMs, String rate) {
    return Scene.SHAPE
        .draft()
        .set(Scene.ID, "s")
        .set(Scene.LENGTH_MS, new BigDecimal(lengthMs))
        .set(Scene.FRAMES_PER_SECOND, new BigDecimal(rate))
        .make();
  }

  /** Length times rate over 1,000, rounded half up, and one frame at least. */
  @ParameterizedTest
  @CsvSource({
    "1000, 50, 50, true",
    "20, 50, 1, true",
    "1, 50, 1, false",
    "29.9, 50, 1, false",
    "30, 50, 2, false",
    "1010, 50, 51, false",
    "1000, 29.97, 30, false",
    "100000, 29.97, 2997, true",
    "0001000.000, 50.0, 50, true",
    "86400000, 11.5, 993600, true",
    "1000000, 1000, 1000000, true"
  })
  void framesAreLengthTimesRate(String lengthMs, String rate, int frames, boolean whole) {
    assertThat(scene(lengthMs, rate).frameCount()).isEqualTo(frames);
    assertThat(scene(lengthMs, rate).wholeFrames()).isEqualTo(whole);
  }

  @ParameterizedTest
  @CsvSource({"1000001, 1000, lengthMs", "86400000, 11.6, lengthMs", "1000, 0.5, framesPerSecond"})
  void moreFramesThanThePlayerCountsAreRefused(String lengthMs, String rate, String field) {
    assertThatThrownBy(() -> scene(lengthMs, rate))
        .isInstanceOfSatisfying(
            InvalidModelException.class,
            refused -> {
              assertThat(refused.faults()).hasSize(1);
              assertThat(refused.faults().get(0).field()).isEqualTo(field);
            });
  }

  @Test
  void trackNamesEachLampOnce() {
    assertThatThrownBy(() -> Track.of(List.of("a", "b", "a")))
        .isInstanceOfSatisfying(
            InvalidModelException.class,
            refused -> assertThat(refused.faults().get(0).field()).isEqualTo("lamps[2]"));
    assertThatThrownBy(() -> Track.of(List.of())).isInstanceOf(InvalidModelException.class);
  }

  @Test
  void cueEndsAtItsStartAndItsLength() {
    Cue cue = Cue.of(250, 500, new Steady(Look.DEFAULT));
    assertThat(cue.endMs()).isEqualByComparingTo("750");
    assertThat(cue.blend()).isEqualTo(Blend.COVER);
    assertThatThrownBy(() -> Cue.of(0, 0, new Steady(Look.DEFAULT)))
        .isInstanceOf(InvalidModelException.class);
    assertThatThrownBy(() -> Cue.of(-1, 10, new Steady(Look.DEFAULT)))
        .isInstanceOf(InvalidModelException.class);
  }

  @Test
  void equalTimesInOtherFormsAreEqual() {
    assertThat(scene("1000", "50")).isEqualTo(scene("1000.0", "5E1"));
  }

  @Test
  void listsCanNotBeChanged() {
    Track track = Track.of(List.of("a"), Cue.of(0, 1, new Steady(Look.DEFAULT)));
    assertThatThrownBy(() -> track.cues().clear())
        .isInstanceOf(UnsupportedOperationException.class);
    assertThatThrownBy(() -> track.lamps().clear())
        .isInstanceOf(UnsupportedOperationException.class);
  }

  @Test
  void listsAreThoseOfTheTimeWhenItWasMade() {
    List<Track> tracks = new ArrayList<>(List.of(Track.of(List.of("a"))));
    List<Marker> markers = new ArrayList<>(List.of(new Marker(BigDecimal.TEN, "turn")));
    Scene scene =
        Scene.SHAPE
            .draft(scene("1000", "50"))
            .set(Scene.TRACKS, tracks)
            .set(Scene.MARKERS, markers)
            .make();
    tracks.clear();
    markers.clear();
    assertThat(scene.tracks()).hasSize(1);
    assertThat(scene.markers()).hasSize(1);
    assertThatThrownBy(() -> scene.markers().clear())
        .isInstanceOf(UnsupportedOperationException.class);
  }

  /** What is wrong between length and rate is only told where each of them is right. */
  @Test
  void everyFaultIsToldAtOnceAndNoneThatFollowsFromAnother() {
    assertThatThrownBy(
            () ->
                Scene.SHAPE
                    .draft()
                    .set(Scene.ID, "Not an id")
                    .set(Scene.LENGTH_MS, new BigDecimal("86400001"))
                    .set(Scene.FRAMES_PER_SECOND, new BigDecimal("1000"))
                    .make())
        .isInstanceOfSatisfying(
            InvalidModelException.class,
            refused ->
                assertThat(refused.faults())
                    .extracting(Fault::field)
                    .containsExactly("id", "lengthMs"));
  }

  @ParameterizedTest
  @CsvSource({"0, true", "86400000, true", "-0.001, false", "86400000.001, false"})
  void markerIsWithinADay(BigDecimal atMs, boolean taken) {
    if (taken) {
      assertThat(new Marker(atMs, "").atMs()).isEqualByComparingTo(atMs);
    } else {
      assertThatThrownBy(() -> new Marker(atMs, ""))
          .isInstanceOfSatisfying(
              InvalidModelException.class,
              refused ->
                  assertThat(refused.faults()).extracting(Fault::field).containsExactly("atMs"));
    }
  }

  @Test
  void equalMarkersAndCuesInOtherFormsAreEqual() {
    assertThat(new Marker(new BigDecimal("1E+3"), "m"))
        .isEqualTo(new Marker(new BigDecimal("1000.00"), "m"));
    Cue cue = Cue.of(1000, 500, new Steady(Look.DEFAULT));
    assertThat(Cue.START_MS.with(cue, new BigDecimal("1000.0"))).isEqualTo(cue);
    assertThat(Cue.FADE_IN_MS.with(cue, new BigDecimal("20")).fadeOutMs()).isZero();
    assertThat(Cue.FADE_OUT_MS.with(cue, new BigDecimal("20")).fadeInMs()).isZero();
  }

  @Test
  void patternSeesEachLampAloneUnlessATrackJoinsThem() {
    assertThat(Track.of(List.of("a", "b")).span()).isEqualTo(Span.EACH);
    assertThat(Track.of(List.of("b", "a")).lamps()).containsExactly("b", "a");
  }
}
