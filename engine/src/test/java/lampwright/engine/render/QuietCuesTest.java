package lampwright.engine.render;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import lampwright.engine.light.Mixer;
import lampwright.engine.pattern.PaintContext;
import lampwright.engine.pattern.Painter;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import lampwright.engine.time.Moment;
import lampwright.engine.time.Ratio;
import org.junit.jupiter.api.Test;

/**
 * For as many frames as a painter says, it paints the same; and it says so for those that blink.
 */
class QuietCuesTest {
  private static final int SCENES = 400;
  private static final int MOST = 150;

  private int longer;

  @Test
  void paintersPaintTheSameForAsLongAsTheySay() {
    for (long seed = 0; seed < SCENES; seed++) {
      FrameTable table = RandomScenes.table(seed);
      Scene scene = table.scene();
      Mixer[] mixers = SceneRenderer.mixers(table.layout().rig());
      Ratio frameMs = new FrameClock(scene.framesPerSecond()).frame();
      for (Track track : scene.tracks()) {
        int[] row = SceneRenderer.rows(table.layout(), track).get(0);
        List<Mixer> seen = Arrays.stream(row).mapToObj(at -> mixers[at]).toList();
        for (Cue cue : track.cues()) {
          Ratio lengthMs = Ratio.of(cue.lengthMs());
          Painter painter =
              cue.pattern().painter(new PaintContext(seen, table.layout().rig().curve(), lengthMs));
          follow(painter, frameMs, Ratio.of(cue.startMs()), seen.size(), "seed " + seed);
        }
      }
    }
    assertThat(longer).isGreaterThan(SCENES / 8);
  }

  private void follow(Painter painter, Ratio frameMs, Ratio startMs, int pixels, String where) {
    double[] drives = new double[pixels * Mixer.SLOTS];
    Moment tMs = new Moment();
    Moment sinceMs = new Moment();
    List<Double> held = List.of();
    long until = 0;
    for (long frame = startMs.over(frameMs).ceiling(), end = frame + MOST; frame < end; frame++) {
      tMs.setProduct(frameMs, frame);
      sinceMs.setDifference(tMs, startMs);
      painter.paint(sinceMs, drives);
      List<Double> now = Arrays.stream(drives).boxed().toList();
      if (frame < until) {
        assertThat(now).as("%s, frame %d", where, frame).isEqualTo(held);
      } else {
        long same = painter.sameFor(sinceMs, frameMs);
        assertThat(same).isPositive();
        longer += same > 1 ? 1 : 0;
        until = frame + same;
        held = now;
      }
    }
  }

  /** A steady lamp, and one that blinks 60 times per minute: 2 changes in 50 frames. */
  @Test
  void cuesThatStayTheSameAreNotPlayedAgain() {
    List<Cue> cues = new ArrayList<>();
    cues.add(
        Cue.of(
            0,
            10_000,
            new lampwright.engine.pattern.Indicator(
                lampwright.engine.pattern.Look.DEFAULT,
                BigDecimal.ZERO,
                BigDecimal.valueOf(60),
                new BigDecimal("0.5"))));
    FrameClock clock = new FrameClock(BigDecimal.valueOf(50));
    Mixer[] mixers = {
      lampwright.engine.light.Mixers.forOutput(new lampwright.engine.light.Curve.Linear())
    };
    TrackPlayer track =
        new TrackPlayer(
            0,
            Track.of(List.of("spot"), cues.toArray(Cue[]::new)),
            List.of(new int[] {0}),
            mixers,
            new double[Mixer.SLOTS],
            clock,
            new lampwright.engine.light.Curve.Linear());
    Layers layers = new Layers(List.of(track), new boolean[1]);
    Light light = new Light(1);
    Moment timeMs = new Moment();
    int played = 0;
    for (int frame = 0; frame < 500; frame++) {
      light.begin(true);
      clock.timeMs(frame, timeMs);
      played += layers.play(frame, timeMs, light, RenderWatcher.NOBODY);
      assertThat(light.drives()[0]).as("frame %d", frame).isEqualTo(frame % 50 < 25 ? 1 : 0);
    }
    assertThat(played).isEqualTo(20);
  }
}
