package lampwright.engine.render;

import static lampwright.engine.render.Rendering.chain;
import static lampwright.engine.render.Rendering.column;
import static lampwright.engine.render.Rendering.cue;
import static lampwright.engine.render.Rendering.frames;
import static lampwright.engine.render.Rendering.lamp;
import static lampwright.engine.render.Rendering.oneOutput;
import static lampwright.engine.render.Rendering.rig;
import static lampwright.engine.render.Rendering.scene;
import static lampwright.engine.render.Rendering.unsigned;
import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwright.engine.light.Colour;
import lampwright.engine.light.Curve;
import lampwright.engine.pattern.Chase;
import lampwright.engine.pattern.Flash;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Steady;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.EmitterOrder;
import lampwright.engine.rig.Feel;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Blend;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Span;
import lampwright.engine.scene.Track;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FrameTableTest {
  private static final Steady FULL = new Steady(Look.DEFAULT);

  private static Steady level(double level) {
    return new Steady(new Look(Colour.WHITE, level));
  }

  private static Track spot(Cue... cues) {
    return Track.of(List.of("spot"), cues);
  }

  private static Rig plain() {
    return oneOutput(Optional.empty(), 1);
  }

  @ParameterizedTest
  @CsvSource({
    "1000, 50, 50",
    "30, 50, 2",
    "29, 50, 1",
    "1, 50, 1",
    "1001, 30, 30",
    "999.9, 24.5, 24"
  })
  void frameCountIsRoundedHalfUpAndAtLeast1(String lengthMs, String rate, int frames) {
    assertThat(scene(lengthMs, rate, true).frameCount()).isEqualTo(frames);
  }

  @Test
  void cueCoversFromItsStartToBeforeItsEnd() {
    // Frames every 20 ms: 40 is in, 100 is out.
    Scene scene = scene("140", "50", true, spot(Cue.of(40, 60, FULL)));
    assertThat(column(FrameTable.of(plain(), scene))).containsExactly(0, 0, 255, 255, 255, 0, 0);
  }

  @Test
  void cueBetweenTwoFramesIsNeverSeen() {
    Scene scene = scene("100", "50", true, spot(cue("21", "18", "0", "0", Blend.COVER, FULL)));
    assertThat(column(FrameTable.of(plain(), scene))).containsOnly(0);
  }

  /** 29.97 frames/s is 30000/1001 only nearly; as written it is 2997/100. */
  @Test
  void millionthFrameIsAsExactAsTheFirst() {
    Flash flash =
        new Flash(
            Look.DEFAULT,
            BigDecimal.ZERO,
            dec("0.1"),
            dec("33.2"),
            1,
            dec("0.0667000333667000333667"));
    Scene scene =
        new Scene(
            "long",
            dec("33366666.7"),
            dec("29.97"),
            true,
            Dither.OFF,
            List.of(spot(cue("0", "33366666.7", "0", "0", Blend.COVER, flash))));
    assertThat(scene.frameCount()).isEqualTo(999_999);
    // The flash's period is a little shorter than a frame; which frames are lit was computed with
    // exact fractions outside the project: frame i is lit while i x (100000/2997) mod P < 0.1.
    FrameTable table = FrameTable.of(plain(), scene);
    for (int frame : new int[] {0, 1, 2, 500_000, 999_997, 999_998}) {
      assertThat(table.frame(frame)[0] != 0).as("frame %d", frame).isEqualTo(lit(frame));
    }
  }

  // Integer arithmetic in units of 10^-22 ms / 2997, independent of Ratio.
  private static boolean lit(int frame) {
    java.math.BigInteger unit =
        java.math.BigInteger.TEN.pow(22).multiply(java.math.BigInteger.valueOf(2997));
    java.math.BigInteger t =
        unit.multiply(java.math.BigInteger.valueOf(100_000L))
            .multiply(java.math.BigInteger.valueOf(frame))
            .divide(java.math.BigInteger.valueOf(2997));
    java.math.BigInteger period =
        dec("33.3667000333667000333667").multiply(new BigDecimal(unit)).toBigIntegerExact();
    return t.mod(period).compareTo(dec("0.1").multiply(new BigDecimal(unit)).toBigIntegerExact())
        < 0;
  }

  private static BigDecimal dec(String number) {
    return new BigDecimal(number);
  }

  @ParameterizedTest
  @CsvSource({
    "COVER, 0.5, 0.8, 1, 0.8",
    "COVER, 0.5, 0.8, 0.25, 0.575",
    "ADD, 0.5, 0.8, 1, 1",
    "ADD, 0.5, 0.8, 0.5, 0.9",
    "BRIGHTER, 0.5, 0.8, 1, 0.8",
    "BRIGHTER, 0.5, 0.8, 0.5, 0.5",
    "SCALE, 0.5, 0.8, 1, 0.4",
    "SCALE, 0.5, 0.8, 0.5, 0.45"
  })
  void blendIsInLinearDrive(Blend blend, double under, double over, double a, double result) {
    assertThat(blend.blend(under, over, a)).isEqualTo(result);
  }

  @Test
  void laterTrackLiesOverTheEarlierOne() {
    Scene scene =
        scene(
            "40",
            "50",
            true,
            spot(Cue.of(0, 40, FULL)),
            spot(cue("0", "40", "0", "0", Blend.SCALE, level(0.5))));
    assertThat(column(FrameTable.of(plain(), scene))).containsExactly(128, 128);
  }

  @Test
  void cuesOfATrackPlayInOrderOfStart() {
    Scene scene = scene("60", "50", true, spot(Cue.of(20, 20, level(0.2)), Cue.of(0, 60, FULL)));
    assertThat(column(FrameTable.of(plain(), scene))).containsExactly(255, 51, 255);
  }

  @Test
  void fadesRunThroughTheCurve() {
    Rig rig =
        rig(
            new Curve.Power(2),
            1,
            List.of(),
            List.of(DriverOutput.of("one")),
            Lamp.ofOutput("spot", "one"));
    Scene scene = scene("100", "100", true, spot(cue("0", "100", "40", "40", Blend.COVER, FULL)));
    // v = 0, 1/4, 1/2, 3/4, 1, 1, 1, 3/4, 1/2, 1/4, squared, of 255.
    assertThat(column(FrameTable.of(rig, scene)))
        .containsExactly(0, 16, 64, 143, 255, 255, 255, 143, 64, 16);
  }

  @Test
  void overlappingFadesTakeTheLeast() {
    Scene scene = scene("40", "100", true, spot(cue("0", "40", "40", "40", Blend.COVER, FULL)));
    assertThat(column(FrameTable.of(plain(), scene))).containsExactly(0, 64, 128, 64);
  }

  @Test
  void spanEachShowsThePatternToEveryLampAlone() {
    Chain chain = chain("c", "ws2812b", 4);
    Rig rig =
        rig(
            new Curve.Linear(),
            1,
            List.of(chain),
            List.of(),
            lamp("a", "c", 0, 2),
            lamp("b", "c", 2, 2));
    Chase chase = new Chase(Look.DEFAULT, BigDecimal.ZERO, dec("20"), 1, 0, false);
    Track each = new Track(List.of("b", "a"), Span.EACH, List.of(Cue.of(0, 80, chase)));
    Track joined = new Track(List.of("b", "a"), Span.JOINED, List.of(Cue.of(0, 80, chase)));
    assertThat(heads(FrameTable.of(rig, scene("80", "50", true, each))))
        .containsExactly(List.of(0, 2), List.of(1, 3), List.of(0, 2), List.of(1, 3));
    assertThat(heads(FrameTable.of(rig, scene("80", "50", true, joined))))
        .containsExactly(List.of(2), List.of(3), List.of(0), List.of(1));
  }

  private static List<List<Integer>> heads(FrameTable table) {
    return frames(table).stream()
        .map(
            f ->
                java.util.stream.IntStream.range(0, 4)
                    .filter(p -> f.get(3 * p) > 0)
                    .boxed()
                    .toList())
        .toList();
  }

  /** Green, red, blue, white, as the SK6812 RGBW takes them (datasheet, from memory). */
  @Test
  void bytesStandInChainOrderThenOutputs() {
    Chain grbw = chain("one", "sk6812-rgbw", 2);
    Chain brg =
        new Chain(
            "two",
            BuiltInPixelTypes.find("ws2812b").orElseThrow(),
            1,
            EmitterOrder.parse("BRG").orElseThrow(),
            OptionalDouble.empty());
    Rig rig =
        rig(
            new Curve.Linear(),
            1,
            List.of(grbw, brg),
            List.of(DriverOutput.of("spare"), DriverOutput.of("tail")),
            Lamp.ofPixels(
                "both",
                new lampwright.engine.rig.PixelRun("two", 0, 1),
                new lampwright.engine.rig.PixelRun("one", 1, 1)),
            Lamp.ofOutput("rear", "tail"));
    Steady drives = new Steady(new Look(new Colour.Drive(0.2, 0.4, 0.6, 0.8), 1));
    Scene scene = scene("20", "50", true, Track.of(List.of("both", "rear"), Cue.of(0, 20, drives)));
    FrameTable table = FrameTable.of(rig, scene);
    assertThat(frames(table).get(0))
        .containsExactly(0, 0, 0, 0, 102, 51, 153, 204, 153, 51, 102, 0, 204);
    assertThat(table.layout().columns().stream().map(Column::name))
        .containsExactly(
            "chain:one.0.g",
            "chain:one.0.r",
            "chain:one.0.b",
            "chain:one.0.w",
            "both.1.g",
            "both.1.r",
            "both.1.b",
            "both.1.w",
            "both.0.b",
            "both.0.r",
            "both.0.g",
            "output:spare",
            "rear.output");
    assertThat(table.layout().chainOffset(1)).isEqualTo(8);
    assertThat(table.layout().outputsOffset()).isEqualTo(11);
  }

  @Test
  void byteIsRoundedHalfUp() {
    // 255 x 0.5 = 127.5; 255 x 0.1 = 25.5.
    assertThat(
            column(
                FrameTable.of(plain(), scene("20", "50", true, spot(Cue.of(0, 20, level(0.5)))))))
        .containsExactly(128);
    assertThat(
            column(
                FrameTable.of(plain(), scene("20", "50", true, spot(Cue.of(0, 20, level(0.499)))))))
        .containsExactly(127);
  }

  @Test
  void brightnessCapScalesEveryDrive() {
    Rig rig = oneOutput(Optional.empty(), 0.4);
    assertThat(column(FrameTable.of(rig, scene("20", "50", true, spot(Cue.of(0, 20, FULL))))))
        .containsExactly(102);
  }

  @Test
  void temporalDitherCarriesTheErrorIntoTheNextFrame() {
    // 0.25 of a step above 10: three frames of 10, one of 11, begun half way by the rounding.
    Steady quarter = new Steady(new Look(new Colour.Drive(10.25 / 255, 0, 0, 0), 1));
    Scene scene = scene("160", "50", true, Dither.TEMPORAL, spot(Cue.of(0, 160, quarter)));
    List<Integer> bytes = column(FrameTable.of(plain(), scene));
    assertThat(bytes).containsExactly(10, 11, 10, 10, 10, 11, 10, 10);
    assertThat(bytes.stream().mapToInt(b -> b).average().getAsDouble()).isEqualTo(10.25);
  }

  /** By definition of riseMs: 90 % of the way after that time. */
  @Test
  void feelReaches90PercentInItsRiseTime() {
    Rig rig = oneOutput(Optional.of(new Feel(100, 50)), 1);
    Scene once = scene("400", "100", false, spot(Cue.of(0, 200, FULL)));
    List<Integer> bytes = column(FrameTable.of(rig, once));
    // Frame 0 has already followed for one frame, so frame 9 has followed for 100 ms.
    assertThat(bytes.get(9)).isEqualTo((int) Math.floor(255 * 0.9 + 0.5));
    assertThat(bytes.get(19)).isEqualTo((int) Math.floor(255 * 0.99 + 0.5));
    // From 0.99 down to a tenth of it 50 ms after the end at frame 20.
    assertThat(bytes.get(24)).isEqualTo((int) Math.floor(255 * 0.099 + 0.5));
  }

  @Test
  void feelOfALoopShowsNoSeam() {
    Rig rig = oneOutput(Optional.of(new Feel(100, 300)), 1);
    Scene loop = scene("400", "100", true, spot(Cue.of(0, 200, FULL)));
    Scene twice = scene("800", "100", false, spot(Cue.of(0, 200, FULL), Cue.of(400, 200, FULL)));
    assertThat(column(FrameTable.of(rig, loop)))
        .isEqualTo(column(FrameTable.of(rig, twice)).subList(40, 80));
  }

  @Test
  void feelOf0IsAtOnce() {
    Rig rig = oneOutput(Optional.of(new Feel(0, 0)), 1);
    assertThat(column(FrameTable.of(rig, scene("60", "50", true, spot(Cue.of(20, 20, FULL))))))
        .containsExactly(0, 255, 0);
  }

  @Test
  void seekGivesTheSameFrameAsPlayingThere() {
    Rig rig = oneOutput(Optional.of(new Feel(80, 60)), 0.7);
    Flash flash =
        new Flash(new Look(Colour.WHITE, 0.6), BigDecimal.ZERO, dec("50"), dec("70"), 1, dec("0"));
    Scene scene = scene("1000", "50", true, Dither.TEMPORAL, spot(Cue.of(0, 1000, flash)));
    FrameTable table = FrameTable.of(rig, scene);
    List<List<Integer>> played = frames(table);
    for (int frame : new int[] {49, 0, 17, 3}) {
      assertThat(unsigned(table.frame(frame))).isEqualTo(played.get(frame));
    }
    FrameCursor cursor = table.cursor();
    byte[] bytes = new byte[1];
    cursor.seek(30);
    cursor.seek(12);
    cursor.next(bytes);
    assertThat(unsigned(bytes)).isEqualTo(played.get(12));
  }

  @Test
  void cursorLeavesBytesPastTheFrameAlone() {
    FrameTable table = FrameTable.of(plain(), scene("20", "50", true, spot(Cue.of(0, 20, FULL))));
    byte[] padded = {7, 7, 7};
    table.cursor().next(padded);
    assertThat(padded).containsExactly((byte) 255, 7, 7);
  }

  @Test
  void cursorRefusesTooLittleRoomAndTheFrameAfterTheLast() {
    FrameTable table = FrameTable.of(plain(), scene("20", "50", true));
    FrameCursor cursor = table.cursor();
    assertThrows(IndexOutOfBoundsException.class, () -> cursor.next(new byte[0]));
    cursor.next(new byte[1]);
    assertThat(cursor.hasNext()).isFalse();
    assertThrows(IndexOutOfBoundsException.class, () -> cursor.next(new byte[1]));
    assertThrows(IndexOutOfBoundsException.class, () -> table.frame(-1));
  }

  @Test
  void tableRefusesALampThatTheRigHasNot() {
    Scene scene = scene("20", "50", true, Track.of(List.of("nobody"), Cue.of(0, 20, FULL)));
    assertThrows(IllegalArgumentException.class, () -> FrameTable.of(plain(), scene));
  }

  @Test
  void sceneWithoutTracksIsDark() {
    assertThat(column(FrameTable.of(plain(), scene("60", "50", true)))).containsExactly(0, 0, 0);
  }

  @Test
  void cuePastTheEndOfTheSceneIsCut() {
    Scene scene = scene("40", "50", true, spot(cue("20", "1000", "0", "0", Blend.COVER, FULL)));
    assertThat(column(FrameTable.of(plain(), scene))).containsExactly(0, 255);
  }
}
