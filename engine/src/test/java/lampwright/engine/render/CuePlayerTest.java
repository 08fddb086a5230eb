package lampwright.engine.render;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import lampwright.engine.light.Curve;
import lampwright.engine.light.Mixer;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Steady;
import lampwright.engine.scene.Blend;
import lampwright.engine.scene.Cue;
import lampwright.engine.time.Moment;
import org.junit.jupiter.api.Test;

/** What is hidden is not painted, and only what is. Ten frames a second, two packages. */
class CuePlayerTest {
  private final FrameClock clock = new FrameClock(BigDecimal.TEN);
  private int painted;

  @Test
  void opaqueCueHidesWhatIsUnderIt() {
    assertThat(paintedUnder("0", Blend.COVER, 5, 0, 1)).isZero();
  }

  @Test
  void cueThatFadesHidesNothing() {
    // It fades in until 300 ms.
    assertThat(paintedUnder("300", Blend.COVER, 2, 0, 1)).isOne();
    assertThat(paintedUnder("300", Blend.COVER, 3, 0, 1)).isZero();
  }

  @Test
  void onlyCoverHides() {
    assertThat(paintedUnder("0", Blend.ADD, 5, 0, 1)).isOne();
    assertThat(paintedUnder("0", Blend.BRIGHTER, 5, 0, 1)).isOne();
    assertThat(paintedUnder("0", Blend.SCALE, 5, 0, 1)).isOne();
  }

  @Test
  void cueThatCoversAPartHidesNothingOfARow() {
    assertThat(paintedUnder("0", Blend.COVER, 5, 1)).isOne();
  }

  @Test
  void changesAreWhereFadesBeginAndEnd() {
    CuePlayer player =
        player(Rendering.cue("100", "2000", "300", "500", Blend.COVER, pattern()), 0);
    assertThat(player.firstFrame()).isEqualTo(1);
    assertThat(player.nextChange(1)).isEqualTo(4);
    // At 1,600 ms it is still full.
    assertThat(player.nextChange(4)).isEqualTo(17);
    assertThat(player.nextChange(17)).isEqualTo(21);
    CuePlayer fading = player(Rendering.cue("0", "500", "900", "900", Blend.COVER, pattern()), 0);
    assertThat(fading.nextChange(0)).isEqualTo(5);
  }

  // How often a cue on both packages is painted under another.
  private int paintedUnder(String fadeInMs, Blend blend, int frame, int... packages) {
    CuePlayer under = player(Rendering.cue("0", "2000", "0", "0", Blend.COVER, pattern()), 0, 1);
    CuePlayer over = player(Rendering.cue("0", "2000", fadeInMs, "0", blend, pattern()), packages);
    boolean[] hidden = new boolean[2];
    over.arrange(frame, hidden);
    under.arrange(frame, hidden);
    painted = 0;
    Moment timeMs = new Moment();
    clock.timeMs(frame, timeMs);
    under.play(frame, timeMs, new Light(2), RenderWatcher.NOBODY);
    return painted;
  }

  private CuePlayer player(Cue cue, int... packages) {
    CuePlayer.Row row =
        new CuePlayer.Row((tMs, drives) -> painted++, new PackageRuns(List.of(packages)));
    return new CuePlayer(0, cue, clock, Curve.DEFAULT, List.of(row), new double[2 * Mixer.SLOTS]);
  }

  private static Steady pattern() {
    return new Steady(Look.DEFAULT);
  }
}
