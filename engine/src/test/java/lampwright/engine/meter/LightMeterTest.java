package lampwright.engine.meter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import lampwright.engine.document.Project;
import lampwright.engine.light.Colour;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.light.Curve;
import lampwright.engine.pattern.Chase;
import lampwright.engine.pattern.ColourCycle;
import lampwright.engine.pattern.Flash;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.RotatingBeacon;
import lampwright.engine.pattern.Steady;
import lampwright.engine.render.FrameTable;
import lampwright.engine.review.Code;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Review;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.CurrentCap;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Blend;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Flashes of lamps, their pixels and the whole model, from bytes; figures by hand. */
class LightMeterTest {
  private static final Colour RED = new Colour.Drive(1, 0, 0, 0);
  private static final Colour BLUE = new Colour.Drive(0, 0, 1, 0);
  private static final Colour WHITE = new Colour.Drive(1, 1, 1, 0);

  private double brightness = 1;
  private Dither dither = Dither.OFF;
  private boolean loop = true;
  private long lengthMs = 4000;
  private double framesPerSecond = 50;
  private final List<Lamp> lamps = new ArrayList<>();
  private final List<Track> tracks = new ArrayList<>();
  private int pixels;

  private String lamp(int count, Pattern... patterns) {
    String id = "lamp-" + lamps.size();
    lamps.add(Lamp.ofPixels(id, new PixelRun("roof", pixels, count)));
    pixels += count;
    for (Pattern pattern : patterns) {
      tracks.add(Track.of(List.of(id), Cue.of(0, lengthMs, pattern)));
    }
    return id;
  }

  private SceneReport report() {
    Chain chain =
        new Chain("roof", BuiltInPixelTypes.find("ws2812b").orElseThrow(), Math.max(1, pixels));
    DriverOutput output = new DriverOutput("led", new Colour.Srgb(0, 0, 255), 20, 1, 3);
    Rig rig =
        new Rig(
            5,
            100_000,
            5,
            new Curve.Linear(),
            ColourMatching.DIRECT,
            false,
            brightness,
            CurrentCap.OFF,
            List.of(chain),
            List.of(output),
            lamps);
    Scene scene =
        new Scene(
            "s",
            BigDecimal.valueOf(lengthMs),
            BigDecimal.valueOf(framesPerSecond),
            loop,
            dither,
            tracks);
    return SceneReport.of(FrameTable.of(rig, scene));
  }

  private LightReport light() {
    return report().measure().lights().get(0);
  }

  private List<Finding> findings() {
    SceneReport report = report();
    Project project = Project.of("", report.table().layout().rig(), report.table().scene());
    return new Review(List.of()).ofScene(project, report);
  }

  private static Flash flash(double onMs, double offMs, int flashes, double gapMs, Look look) {
    return new Flash(
        look,
        BigDecimal.ZERO,
        BigDecimal.valueOf(onMs),
        BigDecimal.valueOf(offMs),
        flashes,
        BigDecimal.valueOf(gapMs));
  }

  private static Flash flash(double onMs, double offMs, Colour colour) {
    return flash(onMs, offMs, 1, 0, new Look(colour, 1));
  }

  private static Flash shifted(double onMs, double offMs, Colour colour, double phase) {
    return new Flash(
        new Look(colour, 1),
        BigDecimal.valueOf(phase),
        BigDecimal.valueOf(onMs),
        BigDecimal.valueOf(offMs),
        1,
        BigDecimal.ZERO);
  }

  private static Steady steady(Colour colour, double level) {
    return new Steady(new Look(colour, level));
  }

  /** Issue 10: 0 flashes, as blue stayed under a tenth of a screen's white. */
  @Test
  void blueStrobeFlashesTenTimes() {
    lamp(1, flash(60, 40, BLUE));
    assertThat(light().caution().whole().general().flashes()).isEqualTo(10);
    assertThat(light().caution().whole().red().flashes()).isZero();
    assertThat(findings()).hasSize(1);
    assertThat(findings().get(0).text())
        .startsWith(
            "lamp lamp-0, scene s, 0.00 s: 10 flashes per second (whole lamp); limit 3 per");
  }

  /** The same of a plain blue LED on a driver output. */
  @Test
  void blueLedOnAnOutputFlashesTenTimes() {
    lamps.add(Lamp.ofOutput("led-lamp", "led"));
    tracks.add(Track.of(List.of("led-lamp"), Cue.of(0, 4000, flash(60, 40, BLUE))));
    LampCaution caution = light().caution();
    assertThat(caution.whole().general().flashes()).isEqualTo(10);
    assertThat(caution.general().worst()).isEqualTo(caution.whole().general());
    assertThat(findings().get(0).code()).isEqualTo(Code.FLASH_GENERAL);
  }

  /** Issue 10: 0 flashes, as such red stays under a tenth of a screen's white. */
  @Test
  void redThatDipsToAQuarterFlashesTenTimes() {
    lamp(1, steady(new Colour.Drive(0.25, 0, 0, 0), 1));
    Cue over = Cue.BLEND.with(Cue.of(0, 4000, flash(60, 40, RED)), Blend.BRIGHTER);
    tracks.add(Track.of(List.of("lamp-0"), over));
    FlashCaution caution = light().caution().whole();
    assertThat(caution.general().flashes()).isEqualTo(10);
    assertThat(caution.red().flashes()).isZero();
  }

  /**
   * Issue 10: told as 3, from an end pixel. The head goes 0 1 2 3 4 3 2 1 in 320 ms, so that pixels
   * 1 to 3 flash twice in it, 6.25 times a second. At most 13 changes lie in a second: 6 flashes.
   */
  @Test
  void innerPixelsOfABouncingChaseFlashTwiceAPeriod() {
    lengthMs = 3200;
    lamp(5, new Chase(new Look(WHITE, 1), BigDecimal.ZERO, BigDecimal.valueOf(40), 1, 0, true));
    LightReport light = light();
    assertThat(light.caution().general().worst().flashes()).isEqualTo(6);
    assertThat(light.caution().general().pixel()).isBetween(1, 3);
    assertThat(light.caution().passes()).isFalse();
    // Of those that shine alike the first, which is lit from frame 0 on.
    assertThat(light.brightestFrame()).isZero();
    // One pixel is lit at any time, all equally bright.
    assertThat(light.caution().whole().general().flashes()).isZero();
    assertThat(light.train().orElseThrow().flashesPerMinute().getAsDouble())
        .isCloseTo(375, within(1e-6));
    assertThat(findings()).hasSize(1);
    assertThat(findings().get(0).what())
        .matches("6 flashes per second \\(pixel [123]; whole lamp 0\\)");
  }

  /** Issue 10: "40 a minute in groups of 2 ... at most 0 in any second". */
  @Test
  void doubleFlashIsTwoFlashesASecond() {
    lengthMs = 6000;
    lamp(1, flash(60, 80, 2, 1220, new Look(BLUE, 1)));
    LightReport light = light();
    assertThat(light.caution().whole().general().flashes()).isEqualTo(2);
    assertThat(light.train().orElseThrow().rateWords())
        .isEqualTo("40 groups/min, 2 flashes each = 80 flashes/min");
  }

  /** Issue 10: "at most 0 in any second, 1 of them red". Red is a flash of luminance as well. */
  @Test
  void redFlashesAreFlashes() {
    lamp(1, flash(500, 500, RED));
    FlashCaution caution = light().caution().whole();
    assertThat(caution.general().flashes()).isEqualTo(1);
    assertThat(caution.red().flashes()).isEqualTo(1);
  }

  /** Issue 10: "1.0 a minute, 5 % lit". */
  @ParameterizedTest
  @ValueSource(longs = {1000, 4000, 60_000})
  void colourCycleThatNeverGoesDarkDoesNotFlash(long periodMs) {
    lengthMs = periodMs;
    lamp(
        1,
        new ColourCycle(
            new Look(WHITE, 1), BigDecimal.ZERO, BigDecimal.valueOf(periodMs), 0, 1, false));
    assertThat(light().train()).isEmpty();
  }

  /** Red and blue by turns never go dark: no flashing lamp, but five red flashes a second. */
  @Test
  void coloursByTurnsAreNoFlashingLamp() {
    lamp(1);
    for (Flash half : List.of(flash(100, 100, RED), shifted(100, 100, BLUE, 0.5))) {
      Cue cue = Cue.of(0, 4000, half);
      tracks.add(Track.of(List.of("lamp-0"), Cue.BLEND.with(cue, Blend.ADD)));
    }
    assertThat(light().train()).isEmpty();
    assertThat(light().caution().whole().red().flashes()).isEqualTo(5);
  }

  /** Issue 10: "1050 a minute" and 18 flashes a second of light of a third of the lowest byte. */
  @Test
  void ditheringIsNoFlashing() {
    dither = Dither.TEMPORAL;
    lamp(1, steady(new Colour.Drive(0.35 / 255, 0, 0, 0), 1));
    LightReport light = light();
    assertThat(light.train()).isEmpty();
    assertThat(light.caution().passes()).isTrue();
    // 0.35 of 50 frames: the byte goes up and down 17 times in most seconds, or 18.
    DitherFlicker flicker = light.dither().orElseThrow();
    assertThat(flicker.low()).isZero();
    assertThat(flicker.high()).isEqualTo(1);
    assertThat(flicker.hertz()).isBetween(17, 18);
    assertThat(findings()).hasSize(1);
    assertThat(findings().get(0).text())
        .startsWith("lamp lamp-0, scene s: dithering alternates pixel 0 between bytes 0 and 1 at")
        .contains("Hz, 0.4 % of full brightness")
        .endsWith("[dither-flicker]");
  }

  /** Of two emitters the one at the lower bytes, where a step is more of the light. */
  @ParameterizedTest
  @CsvSource({"0.35, 4.5, 1", "4.5, 0.35, 1", "4.5, 2.5, 3", "9.5, 0, 10"})
  void ditheringIsToldOfTheLowestBytes(double red, double green, int high) {
    dither = Dither.TEMPORAL;
    lamp(1, steady(new Colour.Drive(red / 255, green / 255, 0, 0), 1));
    DitherFlicker flicker = light().dither().orElseThrow();
    assertThat(flicker.high()).isEqualTo(high);
    assertThat(flicker.low()).isEqualTo(high - 1);
  }

  /** Of two at the same bytes the one that alternates more often: half of the time, or a tenth. */
  @ParameterizedTest
  @CsvSource({"0.1, 0.5", "0.5, 0.1"})
  void ditheringIsToldOfTheFasterOfTwo(double red, double green) {
    dither = Dither.TEMPORAL;
    lamp(1, steady(new Colour.Drive(red / 255, green / 255, 0, 0), 1));
    assertThat(light().dither().orElseThrow().hertz()).isBetween(24, 25);
  }

  /** Bytes 9 and 10 are a tenth apart, 10 and 11 a little less (WCAG 2.2: a tenth or more). */
  @Test
  void stepOfATenthIsCoarse() {
    assertThat(new DitherFlicker(0, 9, 10, 20).isCoarse()).isTrue();
    assertThat(new DitherFlicker(0, 10, 11, 20).isCoarse()).isFalse();
    assertThat(new DitherFlicker(0, 0, 1, 20).isCoarse()).isTrue();
    assertThat(new DitherFlicker(0, 50, 51, 20).share()).isEqualTo(0.2);
  }

  /** It is dark for half a second, 25 frames at 50 a second. */
  @Test
  void brightestFrameIsTheFirstOfItsKind() {
    lamp(1);
    Pattern white = new Steady(new Look(WHITE, 1));
    tracks.add(Track.of(List.of("lamp-0"), Cue.of(500, 1500, white)));
    assertThat(light().brightestFrame()).isEqualTo(25);
  }

  @Test
  void flashesOfADitheredSceneCount() {
    dither = Dither.TEMPORAL;
    lamp(1, flash(60, 40, BLUE));
    assertThat(light().caution().whole().general().flashes()).isEqualTo(10);
    assertThat(light().train().orElseThrow().rateWords()).isEqualTo("600 flashes/min");
    assertThat(light().dither()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"150, 120", "150, 90", "60, 180", "240, 120"})
  void ringThatStandsForABeamTellsItsTurns(int perMinute, double beam) {
    lengthMs = 6000;
    lamp(
        4,
        new RotatingBeacon(
            new Look(WHITE, 1),
            BigDecimal.ZERO,
            BigDecimal.valueOf(perMinute),
            beam,
            true,
            List.of()));
    assertThat(light().train().orElseThrow().groupsPerMinute().getAsDouble())
        .isCloseTo(perMinute, within(0.01 * perMinute));
  }

  @Test
  void busiestPixelStandsForTheLamp() {
    lamp(3, new Chase(new Look(WHITE, 1), BigDecimal.ZERO, BigDecimal.valueOf(500), 1, 0, true));
    // Head 0 1 2 1: the middle pixel flashes twice in 2 s, the outer ones once.
    assertThat(light().train().orElseThrow().flashesPerMinute().getAsDouble())
        .isCloseTo(60, within(1e-6));
  }

  /** Two lamps by turns: even light all together, each weighing the same however bright it is. */
  @Test
  void lampsByTurnsAreEvenLightTogether() {
    lamp(1, flash(260, 240, new Colour.Drive(0.01, 0.01, 0.01, 0)));
    lamp(4, shifted(240, 260, WHITE, 0.48));
    SceneReport report = report();
    assertThat(report.measure().lights().get(0).caution().whole().general().flashes()).isEqualTo(2);
    assertThat(report.measure().lights().get(1).caution().whole().general().flashes()).isEqualTo(2);
    assertThat(report.measure().model().general().flashes()).isZero();
  }

  /** Four lamps one after another, each once a second: the model flashes four times. */
  @Test
  void lampsOneAfterAnotherFlashTogether() {
    for (int i = 0; i < 4; i++) {
      lamp(1);
      tracks.add(
          Track.of(List.of("lamp-" + i), Cue.of(0, 4000, shifted(100, 900, WHITE, 0.25 * i))));
    }
    assertThat(findings()).hasSize(1);
    assertThat(findings().get(0).code()).isEqualTo(Code.FLASH_MODEL);
    assertThat(findings().get(0).text())
        .contains("whole model", "4 flashes per second of all lamps together; limit 3 per second");
  }

  /**
   * WCAG 2.2: a change of a tenth or more, the darker below 0.80. Of twelve lamps one is a twelfth;
   * of nine and of five the others are 0.89 and 0.80; of four 0.75.
   */
  @ParameterizedTest
  @CsvSource({"12, true", "9, true", "5, true", "4, false"})
  void oneFlashingLampOfManyDoesNotMakeTheModelFlash(int count, boolean passes) {
    lamp(1, flash(60, 60, WHITE));
    for (int i = 1; i < count; i++) {
      lamp(1, new Steady(new Look(WHITE, 1)));
    }
    SceneMeasure measure = report().measure();
    assertThat(measure.model().passes()).isEqualTo(passes);
    assertThat(measure.lights().get(0).caution().passes()).isFalse();
    assertThat(measure.lights().get(1).caution().passes()).isTrue();
    assertThat(measure.passesFlashCaution()).isFalse();
  }

  @Test
  void sceneThatPlaysOnceIsMeasuredWithoutItsSeam() {
    loop = false;
    lengthMs = 1000;
    lamp(1, flash(100, 100, WHITE));
    // Changes by hand: at 0.1, 0.2 ... 0.9 s.
    assertThat(light().caution().whole().general().flashes()).isEqualTo(4);
    loop = true;
    assertThat(light().caution().whole().general().flashes()).isEqualTo(5);
  }

  /** However little light there is, down to the lowest byte. */
  @ParameterizedTest
  @ValueSource(doubles = {1, 0.3, 0.05, 0.004})
  void dimmingASceneRemovesNoFlash(double cap) {
    brightness = cap;
    lamp(1, flash(60, 40, BLUE));
    lamp(3, flash(80, 40, RED));
    assertThat(findings().stream().map(Finding::code))
        .containsExactly(
            Code.FLASH_GENERAL, Code.FLASH_GENERAL, Code.FLASH_RED, Code.FLASH_MODEL_RED);
  }

  /** What others do is nothing to a lamp. */
  @Test
  void lampFlashesAsItDidWhereAnotherIsAdded() {
    Random random = new Random(7);
    for (int i = 0; i < 40; i++) {
      lamps.clear();
      tracks.clear();
      pixels = 0;
      lengthMs = 1000 + 20L * random.nextInt(50);
      loop = random.nextBoolean();
      lamp(1 + random.nextInt(3), random(random), random(random));
      LightReport alone = light();
      lamp(1 + random.nextInt(9), random(random));
      assertThat(light()).isEqualTo(alone);
    }
  }

  private static Flash random(Random random) {
    Colour colour =
        new Colour.Drive(random.nextDouble(), random.nextDouble() / 4, random.nextDouble() / 4, 0);
    return flash(
        20 * (1 + random.nextInt(9)),
        20 * (1 + random.nextInt(9)),
        1 + random.nextInt(3),
        20 * random.nextInt(9),
        new Look(colour, 1));
  }
}
