package lampwright.app.workshop.edit;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import lampwright.app.workshop.edit.CueEdits.Whole;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.Chase;
import lampwright.engine.pattern.ColourCycle;
import lampwright.engine.pattern.Easing;
import lampwright.engine.pattern.Fade;
import lampwright.engine.pattern.Fill;
import lampwright.engine.pattern.Flash;
import lampwright.engine.pattern.Flicker;
import lampwright.engine.pattern.Indicator;
import lampwright.engine.pattern.Keyframe;
import lampwright.engine.pattern.Keyframes;
import lampwright.engine.pattern.LightCharacter;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.RotatingBeacon;
import lampwright.engine.pattern.Steady;
import lampwright.engine.pattern.TestWalk;
import lampwright.engine.pattern.Tint;
import lampwright.engine.render.FrameCursor;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Blend;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Span;
import lampwright.engine.scene.Track;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Splitting cues; the renderer is the judge. */
class CueSplitTest {
  private static final CueRef FIRST = new CueRef(0, 0);
  private static final Look AMBER = new Look(new Colour.Srgb(255, 160, 0), 0.8);

  private static final Rig RIG =
      Rig.of(
          List.of(
              new Chain("c", BuiltInPixelTypes.find("sk6812-rgbw").orElseThrow(), 5),
              new Chain("d", BuiltInPixelTypes.find("ws2812b").orElseThrow(), 3)),
          List.of(DriverOutput.of("o")),
          List.of(
              Lamp.ofPixels("five", new PixelRun("c", 0, 5)),
              Lamp.ofPixels("three", new PixelRun("d", 0, 3)),
              Lamp.ofOutput("one", "o")));

  /** Patterns that can begin anywhere in their period. */
  private enum Repeating {
    FLASH,
    INDICATOR,
    ROTATING_BEACON,
    FILL,
    COLOUR_CYCLE,
    KEYFRAMES,
    LIGHT_CHARACTER,
    CHASE,
    TEST_WALK
  }

  /** The two patterns of which many were shifted when a phase had 15 digits. */
  @Test
  void flashWhosePhaseIsAThirdKeepsItsEdges() {
    Flash flash = new Flash(AMBER, BigDecimal.ZERO, ms(100), ms(100), 1, ms(100));
    Scene whole = scene("50", Cue.of(0, 3000, flash), "five");
    CueEdits.Split split = CueEdits.split(RIG, whole, List.of(FIRST), ms(1400));
    assertThat(split.changed().cues()).hasSize(1);
    assertSameBytes(whole, split.changed().scene());
    // Two thirds, rounded up: below it the edge at 1,500 ms would come a frame late.
    BigDecimal phase = cues(split).get(1).pattern().startPhase().orElseThrow();
    assertThat(phase).isEqualByComparingTo("0.666666666666667");
  }

  @Test
  void phaseThatEndsIsWrittenExactly() {
    Indicator pattern = new Indicator(AMBER, new BigDecimal("0.1"), ms(97), new BigDecimal("0.3"));
    Scene whole = scene("50", Cue.of(200, 3000, pattern), "five");
    CueEdits.Split split = CueEdits.split(RIG, whole, List.of(FIRST), ms(1740.5));
    // 1,540.5 ms at 97 a minute are 2.490475 periods.
    assertThat(cues(split).get(1).pattern().startPhase().orElseThrow())
        .isEqualByComparingTo("0.590475");
    assertSameBytes(whole, split.changed().scene());
  }

  @ParameterizedTest
  @EnumSource(Repeating.class)
  void anyRepeatingPatternSplitsAnywhereWithoutAChange(Repeating kind) {
    Random random = new Random(20261205 + kind.name().hashCode());
    for (int i = 0; i < 400; i++) {
      BigDecimal start = decimal(random, 0, 900);
      BigDecimal length = decimal(random, 400, 3000);
      Cue cue =
          new Cue(
              start,
              length,
              BigDecimal.ZERO,
              BigDecimal.ZERO,
              List.of(Blend.values()).get(random.nextInt(4)),
              pattern(kind, random));
      String rate = List.of("50", "25", "29.97", "60", "24", "12.5", "33.3").get(random.nextInt(7));
      Scene scene = scene(rate, cue, pick(random, "five", "three", "one"));
      Scene whole = random.nextInt(8) == 0 ? Scene.DITHER.with(scene, Dither.TEMPORAL) : scene;
      BigDecimal at =
          random.nextBoolean()
              ? CueEdits.frameMs(whole, CueEdits.nearestFrame(whole, within(random, cue)))
              : within(random, cue);
      CueEdits.Split split = CueEdits.split(RIG, whole, List.of(FIRST), at);
      assertThat(split.whole()).as("%s at %s, %s a second", cue, at, rate).isEmpty();
      assertSameBytes(whole, split.changed().scene());
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void whateverIsSplitChangesNoByte(long seed) {
    Random random = new Random(seed);
    int split = 0;
    for (int i = 0; i < 150; i++) {
      List<Track> tracks = new ArrayList<>();
      List<CueRef> refs = new ArrayList<>();
      for (int t = 0; t < 2; t++) {
        List<Cue> cues = new ArrayList<>();
        for (int c = 1 + random.nextInt(3); c > 0; c--) {
          boolean fades = random.nextInt(3) == 0;
          cues.add(
              new Cue(
                  ms(100 * random.nextInt(8)),
                  decimal(random, 200, 1500),
                  fades ? ms(random.nextInt(600)) : BigDecimal.ZERO,
                  fades ? ms(random.nextInt(600)) : BigDecimal.ZERO,
                  List.of(Blend.values()).get(random.nextInt(4)),
                  anyPattern(random)));
          if (random.nextInt(4) > 0) {
            refs.add(new CueRef(t, cues.size() - 1));
          }
        }
        List<String> lamps =
            random.nextBoolean() ? List.of("five", "three") : List.of("one", "three");
        tracks.add(new Track(lamps, random.nextBoolean() ? Span.EACH : Span.JOINED, cues));
      }
      Scene whole = scene("50", tracks);
      BigDecimal at = ms(100 * (1 + random.nextInt(12)));
      CueEdits.Split done = CueEdits.split(RIG, whole, refs, at);
      split += done.changed().cues().size();
      assertSameBytes(whole, done.changed().scene());
      for (CueRef half : done.changed().cues()) {
        assertThat(half.in(done.changed().scene()).orElseThrow().startMs())
            .isEqualByComparingTo(at);
      }
    }
    assertThat(split).isGreaterThan(50);
  }

  @Test
  void cueIsNotSplitInItsFades() {
    Cue cue = new Cue(ms(0), ms(2000), ms(400), ms(300), Blend.COVER, new Steady(AMBER));
    Scene whole = scene("50", cue, "five");
    assertThat(whyWhole(whole, 200)).containsExactly(Whole.FADE);
    assertThat(whyWhole(whole, 399)).isEmpty(); // No frame lies between here and the fade's end.
    assertThat(whyWhole(whole, 380)).containsExactly(Whole.FADE);
    assertThat(whyWhole(whole, 1720)).isEmpty();
    assertThat(whyWhole(whole, 1740)).containsExactly(Whole.FADE);
    CueEdits.Split split = CueEdits.split(RIG, whole, List.of(FIRST), ms(1000));
    assertThat(cues(split).get(0).fadeInMs()).isEqualByComparingTo("400");
    assertThat(cues(split).get(0).fadeOutMs()).isZero();
    assertThat(cues(split).get(1).fadeInMs()).isZero();
    assertThat(cues(split).get(1).fadeOutMs()).isEqualByComparingTo("300");
    assertSameBytes(whole, split.changed().scene());
  }

  @Test
  void patternThatCannotBeginInItsMiddleStaysWhole() {
    Fade fade = new Fade(AMBER, Optional.empty(), Optional.empty(), 0, 1, Easing.LINEAR);
    assertThat(whyWhole(scene("50", Cue.of(0, 2000, fade), "five"), 1000))
        .containsExactly(Whole.PATTERN);
    Flicker flicker = new Flicker(AMBER, 3, 0.7, ms(8));
    assertThat(whyWhole(scene("50", Cue.of(0, 2000, flicker), "five"), 1000))
        .containsExactly(Whole.PATTERN);
    Fade still = new Fade(AMBER, Optional.empty(), Optional.empty(), 0.5, 0.5, Easing.LINEAR);
    assertThat(whyWhole(scene("50", Cue.of(0, 2000, still), "five"), 1000)).isEmpty();
  }

  @Test
  void keyframesThatPlayOnceSplitWhereTheyRest() {
    Keyframes once =
        new Keyframes(
            AMBER,
            BigDecimal.ZERO,
            List.of(
                frame(100, 0.2, Easing.LINEAR),
                frame(500, 0.9, new Easing.Hold()),
                frame(900, 0.1, Easing.LINEAR)),
            false);
    Scene whole = scene("50", Cue.of(0, 2000, once), "five");
    assertThat(whyWhole(whole, 60)).isEmpty();
    assertThat(whyWhole(whole, 300)).containsExactly(Whole.PATTERN);
    assertThat(whyWhole(whole, 500)).isEmpty();
    assertThat(whyWhole(whole, 700)).isEmpty();
    assertThat(whyWhole(whole, 1500)).isEmpty();
    assertSameBytes(whole, CueEdits.split(RIG, whole, List.of(FIRST), ms(700)).changed().scene());
  }

  /** Lamps of three and five pixels: no one phase says where both of them are. */
  @Test
  void chaseOverLampsOfUnlikeLengthSplitsOnlyWhereBothBeginAnew() {
    Chase chase = new Chase(AMBER, BigDecimal.ZERO, ms(40), 1, 0, false);
    Scene whole = scene("50", Cue.of(0, 3000, chase), "five", "three");
    assertThat(whyWhole(whole, 1000)).containsExactly(Whole.PATTERN);
    assertThat(whyWhole(whole, 1200)).isEmpty();
  }

  @Test
  void cueUnderAnotherOfItsTrackIsNotPutOverIt() {
    Steady red = new Steady(new Look(new Colour.Srgb(255, 0, 0), 1));
    Cue under = Cue.of(0, 2000, new Steady(AMBER));
    Scene whole = scene("50", List.of(Track.of(List.of("five"), under, Cue.of(500, 1000, red))));
    assertThat(whyWhole(whole, 1000)).containsExactly(Whole.ORDER);
    assertThat(whyWhole(whole, 500)).isEmpty();
    // Both are split, and lie as before.
    CueEdits.Split both = CueEdits.split(RIG, whole, List.of(FIRST, new CueRef(0, 1)), ms(1000));
    assertThat(both.changed().cues()).hasSize(2);
    assertThat(both.whole()).isEmpty();
    assertSameBytes(whole, both.changed().scene());
  }

  @Test
  void halfBeyondTheSceneStillHasItsPhase() {
    Flash flash = new Flash(AMBER, BigDecimal.ZERO, ms(100), ms(100), 1, ms(0));
    Scene whole = scene("50", Cue.of(0, 9000, flash), "five");
    CueEdits.Split split = CueEdits.split(RIG, whole, List.of(FIRST), ms(8050));
    assertThat(cues(split).get(1).pattern().startPhase().orElseThrow())
        .isEqualByComparingTo("0.25");
  }

  private static Set<Whole> whyWhole(Scene scene, long atMs) {
    CueEdits.Split split = CueEdits.split(RIG, scene, List.of(FIRST), ms((double) atMs));
    assertThat(split.changed().cues()).hasSize(split.whole().isEmpty() ? 1 : 0);
    assertSameBytes(scene, split.changed().scene());
    return split.whole();
  }

  private static List<Cue> cues(CueEdits.Split split) {
    return split.changed().scene().tracks().get(0).cues();
  }

  private static void assertSameBytes(Scene before, Scene after) {
    FrameCursor left = FrameTable.of(RIG, before).cursor();
    FrameCursor right = FrameTable.of(RIG, after).cursor();
    byte[] want = new byte[FrameTable.of(RIG, before).layout().bytes()];
    byte[] got = new byte[want.length];
    while (left.hasNext()) {
      left.next(want);
      right.next(got);
      if (!java.util.Arrays.equals(want, got)) {
        assertThat(got).as("frame %d of %s", left.position() - 1, after).isEqualTo(want);
      }
    }
  }

  private static Scene scene(String rate, Cue cue, String... lamps) {
    return scene(rate, List.of(Track.of(List.of(lamps), cue)));
  }

  private static Scene scene(String rate, List<Track> tracks) {
    return Scene.TRACKS.with(
        Scene.FRAMES_PER_SECOND.with(Projects.emptyScene("s", 4000), new BigDecimal(rate)), tracks);
  }

  private static Pattern anyPattern(Random random) {
    return switch (random.nextInt(5)) {
      case 0 -> new Steady(AMBER);
      case 1 -> new Keyframes(AMBER, BigDecimal.ZERO, frames(random), false);
      case 2 -> new Tint(AMBER, 2500, OptionalDouble.of(random.nextBoolean() ? 2500 : 6000));
      case 3 ->
          new Fade(
              AMBER,
              Optional.empty(),
              Optional.of(new Colour.Kelvin(4000)),
              0.2,
              0.9,
              random.nextBoolean() ? Easing.LINEAR : new Easing.Hold());
      default -> pattern(Repeating.values()[random.nextInt(Repeating.values().length)], random);
    };
  }

  private static Pattern pattern(Repeating kind, Random random) {
    BigDecimal phase = random.nextBoolean() ? BigDecimal.ZERO : decimal(random, -2, 2);
    return switch (kind) {
      case FLASH ->
          new Flash(
              AMBER,
              phase,
              decimal(random, 10, 200),
              decimal(random, 0, 200),
              1 + random.nextInt(4),
              decimal(random, 0, 700));
      case INDICATOR ->
          new Indicator(AMBER, phase, decimal(random, 30, 400), decimal(random, 0, 1));
      case ROTATING_BEACON ->
          new RotatingBeacon(
              AMBER,
              phase,
              decimal(random, 20, 400),
              20 + random.nextInt(340),
              random.nextBoolean(),
              List.of());
      case FILL ->
          new Fill(
              AMBER,
              phase,
              decimal(random, 0, 400),
              decimal(random, 1, 300),
              decimal(random, 0, 400));
      case COLOUR_CYCLE ->
          new ColourCycle(
              AMBER,
              phase,
              decimal(random, 100, 3000),
              random.nextInt(5) / 4.0,
              random.nextDouble(),
              random.nextBoolean());
      case KEYFRAMES -> new Keyframes(AMBER, phase, frames(random), true);
      case LIGHT_CHARACTER ->
          new LightCharacter(
              AMBER,
              phase,
              pick(random, "Fl(2) 3.1s", "Oc 1.7s", "Iso 2.3s", "VQ", "UQ", "Q(3) 4.7s", "Mo(K)"),
              decimal(random, 20, 200));
      case CHASE ->
          new Chase(
              AMBER,
              phase,
              decimal(random, 10, 150),
              1 + random.nextInt(2),
              random.nextInt(3),
              random.nextBoolean());
      case TEST_WALK -> new TestWalk(AMBER, phase, decimal(random, 10, 300));
    };
  }

  private static List<Keyframe> frames(Random random) {
    List<Keyframe> frames = new ArrayList<>();
    int at = random.nextBoolean() ? 0 : random.nextInt(300);
    for (int i = 2 + random.nextInt(3); i > 0; i--) {
      Easing easing =
          switch (random.nextInt(4)) {
            case 0 -> new Easing.Hold();
            case 1 -> new Easing.Smooth();
            case 2 -> new Easing.CubicBezier(0.3, -0.4, 0.1, 1.7);
            default -> Easing.LINEAR;
          };
      frames.add(frame(at, random.nextInt(5) / 4.0, easing));
      at += random.nextInt(5) == 0 ? 0 : 20 * random.nextInt(40);
    }
    return frames;
  }

  private static Keyframe frame(int atMs, double level, Easing easing) {
    return new Keyframe(ms(atMs), Optional.empty(), OptionalDouble.of(level), easing);
  }

  private static BigDecimal within(Random random, Cue cue) {
    double share = 0.01 + 0.98 * random.nextDouble();
    long after = Math.max(2, (long) (share * cue.lengthMs().doubleValue()));
    return cue.startMs()
        .add(BigDecimal.valueOf(after).min(cue.lengthMs().subtract(ms(2))))
        .setScale(random.nextInt(3), java.math.RoundingMode.HALF_UP);
  }

  /** With no, one, two or three decimals. */
  private static BigDecimal decimal(Random random, int least, int most) {
    int scale = random.nextInt(4);
    int one = (int) Math.pow(10, scale);
    return BigDecimal.valueOf((long) least * one + random.nextInt((most - least) * one + 1), scale);
  }

  private static String pick(Random random, String... from) {
    return from[random.nextInt(from.length)];
  }

  private static BigDecimal ms(double value) {
    return BigDecimal.valueOf(value);
  }
}
