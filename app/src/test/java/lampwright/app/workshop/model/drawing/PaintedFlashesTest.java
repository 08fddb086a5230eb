package lampwright.app.workshop.model.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import lampwright.app.picture.Dots;
import lampwright.app.picture.Glow;
import lampwright.app.picture.PaintedFlashes;
import lampwright.app.workshop.model.SceneLight;
import lampwright.engine.light.Colour;
import lampwright.engine.meter.FlashCaution;
import lampwright.engine.meter.ScreenFlashes;
import lampwright.engine.pattern.Flash;
import lampwright.engine.pattern.Look;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import org.junit.jupiter.api.Test;

/** The flash caution of what the screen shows, by W3C WCAG 2.2, 2.3.1. */
class PaintedFlashesTest {
  private static final int SIDE = 96;
  private static final Rig RIG =
      Rig.of(
          List.of(new Chain("roof", BuiltInPixelTypes.find("ws2812b").orElseThrow(), 6)),
          List.of(),
          List.of(
              Lamp.ofPixels("bar", new PixelRun("roof", 0, 3)),
              Lamp.ofPixels("tail", new PixelRun("roof", 3, 3))));

  private static SceneLight light(Colour colour) {
    Flash flash =
        new Flash(
            new Look(colour, 1),
            BigDecimal.ZERO,
            BigDecimal.valueOf(60),
            BigDecimal.valueOf(40),
            1,
            BigDecimal.ZERO);
    Scene scene =
        new Scene(
            "s",
            BigDecimal.valueOf(2000),
            BigDecimal.valueOf(50),
            true,
            Dither.OFF,
            List.of(Track.of(List.of("bar"), Cue.of(0, 2000, flash))));
    SceneLight light = SceneLight.of(FrameTable.of(RIG, scene));
    light.frames().render(() -> {});
    return light;
  }

  private static Glow ground(int code) {
    int[] argb = new int[SIDE * SIDE];
    Arrays.fill(argb, 0xFF000000 | code << 16 | code << 8 | code);
    return new Glow(SIDE, SIDE, argb);
  }

  private static final List<Dots.Dot> DOTS =
      List.of(
          new Dots.Dot(0, 0, 20, 20, 6),
          new Dots.Dot(0, 1, 40, 20, 6),
          new Dots.Dot(0, 2, 60, 20, 6));

  private static FlashCaution judge(Colour colour, int code, float exposure) {
    return new Painting(light(colour), ground(code), DOTS, exposure).flashes();
  }

  @Test
  void whiteStrobeOnBlackFlashesTenTimes() {
    FlashCaution caution = judge(new Colour.Drive(1, 1, 1, 0), 0, 1);
    assertThat(caution.general().flashes()).isEqualTo(10);
    assertThat(caution.red().flashes()).isZero();
  }

  @Test
  void redStrobeOnBlackIsARedOne() {
    assertThat(judge(new Colour.Drive(1, 0, 0, 0), 0, 4).red().flashes()).isEqualTo(10);
  }

  /** Blue of a screen has luminance 0.0722: no general flash there; the lamp's rule finds it. */
  @Test
  void blueIsPaintedBlueHoweverBright() {
    FlashCaution caution = judge(new Colour.Drive(0, 0, 1, 0), 0, 16);
    assertThat(caution.passes()).isTrue();
    SceneLight light = light(new Colour.Drive(0, 0, 1, 0));
    Glow glow = ground(0);
    byte[] frame = new byte[18];
    light.frames().read(0, frame);
    glow.paint(light.screen(), frame, DOTS, 16, Float.MAX_VALUE);
    int painted = glow.argb()[20 * SIDE + 20];
    assertThat(painted & 0xFFFF00FF).isEqualTo(0xFF0000FF);
    // Its hue to the degree: PaintedHueTest.
    assertThat(painted >> 8 & 0xFF).isLessThan(64);
  }

  /** Light by which white paper changes its luminance by less than a tenth is no flash there. */
  @Test
  void faintLightOnWhitePaperDoesNotFlash() {
    assertThat(judge(new Colour.Drive(1, 1, 1, 0), 250, 0.05f).general().flashes()).isZero();
    assertThat(judge(new Colour.Drive(1, 1, 1, 0), 0, 0.2f).general().flashes()).isEqualTo(10);
  }

  /** What is judged is what is painted: the same, from the pictures that are really painted. */
  @Test
  void judgesTheColoursThatArePainted() {
    Random random = new Random(5);
    for (int round = 0; round < 30; round++) {
      Dots.Dot[] dots = new Dots.Dot[6];
      for (int i = 0; i < 6; i++) {
        // Close enough to shine upon each other.
        dots[i] =
            new Dots.Dot(
                i / 3,
                i % 3,
                20 + 50 * random.nextDouble(),
                20 + 50 * random.nextDouble(),
                2 + 6 * random.nextDouble());
      }
      float exposure = (float) Math.pow(2, random.nextInt(7) - 2);
      int code = random.nextInt(256);
      int frames = 40;
      byte[][] bytes = new byte[frames][18];
      for (int f = 0; f < frames; f++) {
        for (int c = 0; c < 18; c++) {
          bytes[f][c] =
              (byte) (random.nextBoolean() || f == 0 ? random.nextInt(256) : bytes[f - 1][c]);
        }
      }
      SceneLight light = light(new Colour.Drive(1, 1, 1, 0));
      PaintedFlashes judged =
          new PaintedFlashes(light.screen(), ground(code), List.of(dots), exposure, 25, frames);
      // Six dots, two lamps, all.
      ScreenFlashes[] mirrored = new ScreenFlashes[9];
      Arrays.setAll(mirrored, i -> new ScreenFlashes(25, frames, true));
      Glow glow = ground(code);
      int[] rounds = {0};
      FlashCaution found =
          judged.ofLoop(
              judge -> {
                if (rounds[0]++ > 0) {
                  Arrays.stream(mirrored).forEach(ScreenFlashes::nextRound);
                }
                for (int f = 0; f < frames; f++) {
                  judge.frame(f, bytes[f]);
                  glow.paint(light.screen(), bytes[f], List.of(dots), exposure, Float.MAX_VALUE);
                  mirror(f, glow.argb(), dots, mirrored);
                }
              });
      assertThat(rounds[0]).isEqualTo(2);
      FlashCaution expected = FlashCaution.NONE;
      for (ScreenFlashes of : mirrored) {
        expected = expected.orWorse(of.found());
      }
      assertThat(found.general().flashes()).isEqualTo(expected.general().flashes());
      assertThat(found.red().flashes()).isEqualTo(expected.red().flashes());
    }
  }

  /** The colours of six dots, of their two lamps and of all, each dot weighing by its area. */
  private static void mirror(int frame, int[] painted, Dots.Dot[] dots, ScreenFlashes[] into) {
    double[][] sum = new double[9][4];
    for (int i = 0; i < 6; i++) {
      int at = (int) Math.round(dots[i].y()) * SIDE + (int) Math.round(dots[i].x());
      int argb = painted[at];
      double area = dots[i].radius() * dots[i].radius();
      for (int of : new int[] {i, 6 + i / 3, 8}) {
        sum[of][0] += area * decoded(argb >> 16);
        sum[of][1] += area * decoded(argb >> 8);
        sum[of][2] += area * decoded(argb);
        sum[of][3] += area;
      }
    }
    for (int of = 0; of < 9; of++) {
      double area = sum[of][3];
      into[of].frame(frame, sum[of][0] / area, sum[of][1] / area, sum[of][2] / area);
    }
  }

  // IEC 61966-2-1.
  private static double decoded(int code) {
    double v = (code & 0xFF) / 255.0;
    return v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4);
  }

  /** Where lamps stand close, a dimmed preview adds no more light than that of one. */
  @Test
  void dimmedLightOfCloseLampsDoesNotAddUp() {
    SceneLight light = light(new Colour.Drive(1, 1, 1, 0));
    byte[] frame = new byte[18];
    light.frames().read(0, frame);
    Glow glow = ground(0);
    List<Dots.Dot> close =
        List.of(
            new Dots.Dot(0, 0, 40, 40, 6),
            new Dots.Dot(0, 1, 41, 40, 6),
            new Dots.Dot(0, 2, 42, 40, 6));
    glow.paint(light.screen(), frame, close, 16, 0.06f);
    for (int argb : glow.argb()) {
      // IEC 61966-2-1 of 0.06: 1.055 x 0.06^(1/2.4) - 0.055 = 0.2716, code 69.
      assertThat(argb >> 16 & 0xFF).isLessThanOrEqualTo(70);
      assertThat(argb >> 8 & 0xFF).isLessThanOrEqualTo(70);
      assertThat(argb & 0xFF).isLessThanOrEqualTo(70);
    }
  }
}
