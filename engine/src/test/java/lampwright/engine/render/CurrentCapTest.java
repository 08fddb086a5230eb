package lampwright.engine.render;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import lampwright.engine.light.Colour;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.light.Curve;
import lampwright.engine.pattern.Easing;
import lampwright.engine.pattern.Fade;
import lampwright.engine.pattern.Flicker;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.CurrentCap;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class CurrentCapTest {
  private static final Fade RISE =
      new Fade(
          Look.DEFAULT,
          java.util.Optional.empty(),
          java.util.Optional.empty(),
          0,
          1,
          Easing.LINEAR);

  private static Rig rig(int pixels, double limit, CurrentCap cap) {
    Chain chain = Rendering.chain("c", "ws2812b", pixels);
    return new Rig(
        5,
        limit,
        5,
        new Curve.Linear(),
        ColourMatching.DIRECT,
        false,
        1,
        cap,
        List.of(chain),
        List.of(DriverOutput.of("o")),
        List.of(Rendering.lamp("l", "c", 0, pixels)));
  }

  private static Scene scene(Pattern pattern, Dither dither) {
    return Rendering.scene(
        "1000", "50", true, dither, Track.of(List.of("l"), Cue.of(0, 1000, pattern)));
  }

  private static double worst(FrameTable table) {
    FrameCurrent current = new FrameCurrent(table.layout());
    FrameCursor cursor = table.cursor();
    byte[] frame = new byte[table.layout().bytes()];
    double worst = 0;
    while (cursor.hasNext()) {
      cursor.next(frame);
      worst = Math.max(worst, current.milliamps(frame));
    }
    return worst;
  }

  /** 10 pixels at 1 mA idle and 3 x 20 mA, worked by hand: 10 + 600 mA x duty. */
  @Test
  void currentIsIdleAndDutyOfEveryEmitter() {
    FrameTable table = FrameTable.of(rig(10, 2000, CurrentCap.OFF), scene(RISE, Dither.OFF));
    FrameCurrent current = new FrameCurrent(table.layout());
    assertThat(current.milliamps(new byte[31])).isEqualTo(10);
    byte[] full = new byte[31];
    java.util.Arrays.fill(full, (byte) 255);
    assertThat(current.milliamps(full)).isCloseTo(10 + 600 + 20, within(1e-9));
  }

  @Test
  void sceneCapScalesEveryFrameByOneFactor() {
    FrameTable free = FrameTable.of(rig(10, 310, CurrentCap.OFF), scene(RISE, Dither.OFF));
    FrameTable capped = FrameTable.of(rig(10, 310, CurrentCap.SCENE), scene(RISE, Dither.OFF));
    // The fade ends a frame before full: 49/50 of 600 mA, of which 300 mA may stay.
    assertThat(capped.sceneFactor()).isCloseTo(300 / 588.0, within(0.003));
    assertThat(worst(capped)).isLessThanOrEqualTo(310);
    List<Integer> before = Rendering.column(free);
    List<Integer> after = Rendering.column(capped);
    for (int i = 0; i < before.size(); i++) {
      assertThat((double) after.get(i))
          .isCloseTo(before.get(i) * capped.sceneFactor(), within(1.0));
    }
  }

  @Test
  void frameCapLeavesFramesUnderTheLimitAlone() {
    List<Integer> free =
        Rendering.column(FrameTable.of(rig(10, 310, CurrentCap.OFF), scene(RISE, Dither.OFF)));
    List<Integer> capped =
        Rendering.column(FrameTable.of(rig(10, 310, CurrentCap.FRAME), scene(RISE, Dither.OFF)));
    assertThat(capped.subList(0, 25)).isEqualTo(free.subList(0, 25));
    assertThat(capped.subList(26, 50)).containsOnly(127);
  }

  @Test
  void limitBelowTheIdleCurrentLeavesTheDark() {
    assertThat(
            Rendering.column(FrameTable.of(rig(10, 5, CurrentCap.FRAME), scene(RISE, Dither.OFF))))
        .containsOnly(0);
  }

  @Property(tries = 200)
  void capIsNeverExceededAfterRounding(
      @ForAll @IntRange(min = 1, max = 40) int pixels,
      @ForAll @DoubleRange(min = 41, max = 2000) double limit,
      @ForAll @IntRange(min = 0, max = 1000) int seed,
      @ForAll Dither dither,
      @ForAll CurrentCap cap) {
    Flicker flicker =
        new Flicker(
            new Look(new Colour.Srgb(255, seed % 256, 40), 1), seed, 1, BigDecimal.valueOf(7));
    FrameTable table = FrameTable.of(rig(pixels, limit, cap), scene(flicker, dither));
    if (cap != CurrentCap.OFF) {
      assertThat(worst(table)).isLessThanOrEqualTo(limit);
    }
  }
}
