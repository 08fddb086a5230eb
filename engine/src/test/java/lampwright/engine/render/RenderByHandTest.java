package lampwright.engine.render;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.light.Curve;
import lampwright.engine.pattern.Easing;
import lampwright.engine.pattern.Fade;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.Steady;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.CurrentCap;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Feel;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.LampFunction;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Frames, caps and currents that come out by hand. */
class RenderByHandTest {
  private static final Feel FEEL = new Feel(90, 60);
  private static final Pattern FULL = new Steady(Look.DEFAULT);
  private static final Pattern RISE =
      new Fade(Look.DEFAULT, Optional.empty(), Optional.empty(), 0, 1, Easing.LINEAR);

  private static Lamp onOutput(String id, Optional<Feel> feel) {
    return new Lamp(
        id,
        "",
        "",
        LampFunction.OTHER,
        new Fitting.Output(id),
        Optional.empty(),
        java.util.List.of(),
        feel);
  }

  private static Rig outputs(double limit, double brightness, CurrentCap cap, Lamp... lamps) {
    List<DriverOutput> outputs = new ArrayList<>();
    for (Lamp lamp : lamps) {
      outputs.add(DriverOutput.of(lamp.id()));
    }
    return new Rig(
        5,
        limit,
        5,
        new Curve.Linear(),
        ColourMatching.DIRECT,
        false,
        brightness,
        cap,
        List.of(),
        outputs,
        List.of(lamps));
  }

  private static Scene once(Dither dither, Cue cue, String... lamps) {
    return Rendering.scene("1000", "50", false, dither, Track.of(List.of(lamps), cue));
  }

  private static Lamp plain(String id) {
    return onOutput(id, Optional.empty());
  }

  private static Lamp felt(String id) {
    return onOutput(id, Optional.of(FEEL));
  }

  // Frames of 20 ms: 1 - 10^(-20/90) is 0.4005 of the way, 102 of 255; then 1 - 10^(-40/90) is
  // 0.6406, 163. The first lamp is at full at once.
  @Test
  void feelIsOfItsLampAlone() {
    Rig rig = outputs(2000, 1, CurrentCap.OFF, plain("a"), felt("b"));
    FrameTable table = FrameTable.of(rig, once(Dither.OFF, Cue.of(0, 1000, FULL), "a", "b"));
    assertThat(Rendering.frames(table).subList(0, 2))
        .containsExactly(List.of(255, 102), List.of(255, 163));
  }

  /** Any frame is the one that playing from the start gives, on whatever the cursor was before. */
  @ParameterizedTest
  @CsvSource({"OFF, false", "OFF, true", "TEMPORAL, false", "TEMPORAL, true"})
  void cursorGoesBackToWhatItPlayed(Dither dither, boolean feel) {
    Rig rig = outputs(2000, 1, CurrentCap.OFF, feel ? felt("a") : plain("a"));
    // Lit for the first half alone, so that a cue that is over has to come back.
    FrameTable table = FrameTable.of(rig, once(dither, Cue.of(0, 500, RISE), "a"));
    List<List<Integer>> played = Rendering.frames(table);
    FrameCursor cursor = table.cursor();
    byte[] frame = new byte[1];
    for (int at : new int[] {49, 0, 30, 7, 24, 3}) {
      cursor.seek(at);
      assertThat(cursor.position()).isEqualTo(at);
      cursor.next(frame);
      assertThat(Rendering.unsigned(frame)).as("frame %d", at).isEqualTo(played.get(at));
    }
    cursor.seek(50);
    assertThat(cursor.hasNext()).isFalse();
    cursor.seek(49);
    assertThat(cursor.hasNext()).isTrue();
  }

  // An output of 20 mA at half brightness draws 10 mA; a limit of 8 mA makes the drive 0.4.
  @ParameterizedTest
  @CsvSource({"FRAME", "SCENE"})
  void capWorksOnTheDimmedDrive(CurrentCap cap) {
    FrameTable table =
        FrameTable.of(
            outputs(8, 0.5, cap, plain("a")), once(Dither.OFF, Cue.of(0, 1000, FULL), "a"));
    assertThat(Rendering.column(table)).containsOnly(102);
  }

  // The last frame is at 980 of 2,000 ms: 0.49 of 20 mA, 9.8 mA. The next would be 10 mA.
  @Test
  void sceneCapLooksAtTheFramesOfTheSceneAlone() {
    FrameTable table =
        FrameTable.of(
            outputs(4.9, 1, CurrentCap.SCENE, plain("a")),
            once(Dither.OFF, Cue.of(0, 2000, RISE), "a"));
    assertThat(table.sceneFactor()).isCloseTo(0.5, within(1e-12));
  }

  @Test
  void limitIsMetByTheGreatestFactorThatRoundingAllows() {
    CurrentLimit limit = new CurrentLimit(100, 600);
    assertThat(limit.factor(() -> 600, f -> 100 + 500 * f)).isEqualTo(1);
    // Rounded it is just within the limit, though not before.
    assertThat(limit.factor(() -> 605, f -> 600)).isEqualTo(1);
    // Half of 1,000 mA is left, whatever is drawn beyond it.
    assertThat(limit.factor(() -> 1100, f -> 100 + (f > 0.5 ? 2000 : 1000) * f)).isEqualTo(0.5);
    // Rounding draws a quarter more than was reckoned, so that 0.4 remains.
    assertThat(limit.factor(() -> 1100, f -> 100 + 1250 * f)).isCloseTo(0.4, within(1e-12));
    assertThat(limit.factor(() -> 1100, f -> 700)).isZero();
  }

  @Test
  void currentIsThatOfEveryPixelAndByte() {
    PixelType type = BuiltInPixelTypes.find("sk6812-rgbw").orElseThrow();
    PixelType thrifty =
        new PixelType(
            "thrifty", type.order(), 0.5, type.volts(), type.emitters(), type.line(), type.needs());
    Chain chain = new Chain("c", thrifty, 8);
    Rig rig =
        Rendering.rig(
            new Curve.Linear(),
            1,
            List.of(chain),
            List.of(DriverOutput.of("o")),
            Rendering.lamp("l", "c", 0, 8));
    FrameCurrent current = new FrameCurrent(new FrameLayout(rig));
    assertThat(current.idleMilliamps()).isEqualTo(4);
    byte[] frame = new byte[33];
    assertThat(current.milliamps(frame)).isEqualTo(4);
    frame[32] = (byte) 51;
    // A fifth of the output's 20 mA.
    assertThat(current.fullMilliamps(32)).isEqualTo(20);
    assertThat(current.milliamps(frame)).isCloseTo(8, within(1e-12));
  }

  @Test
  void tableSaysWhatItIs() {
    Scene scene = once(Dither.TEMPORAL, Cue.of(0, 1000, FULL), "a", "b");
    FrameTable table =
        FrameTable.of(outputs(2000, 1, CurrentCap.OFF, plain("a"), plain("b")), scene);
    assertThat(table.scene()).isSameAs(scene);
    assertThat(table.framesPerSecond()).isEqualTo(50);
    assertThat(table.bytes()).isEqualTo(100);
    assertThat(table.loops()).isFalse();
    assertThat(table.isDithered()).isTrue();
    FrameTable without = table.withoutDither();
    assertThat(without.isDithered()).isFalse();
    assertThat(without.withoutDither()).isSameAs(without);
    Scene loop = Rendering.scene("1000", "50", true, Track.of(List.of("a"), Cue.of(0, 1, FULL)));
    assertThat(FrameTable.of(table.layout().rig(), loop).loops()).isTrue();
  }

  @ParameterizedTest
  @CsvSource({
    "OFF, OFF, false, true",
    "OFF, FRAME, false, true",
    "OFF, SCENE, false, false",
    "TEMPORAL, OFF, false, false",
    "OFF, OFF, true, false"
  })
  void framesStandAloneWithoutFeelAndDitherAndSceneCap(
      Dither dither, CurrentCap cap, boolean feel, boolean alone) {
    Rig rig = outputs(2000, 1, cap, plain("a"), feel ? felt("b") : plain("b"));
    FrameTable table = FrameTable.of(rig, once(dither, Cue.of(0, 1000, FULL), "a"));
    assertThat(table.seeksAtOnce()).isEqualTo(alone);
  }
}
