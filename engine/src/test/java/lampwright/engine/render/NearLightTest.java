package lampwright.engine.render;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.engine.light.Colour;
import lampwright.engine.light.Curve;
import lampwright.engine.pattern.Flicker;
import lampwright.engine.pattern.Look;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Feel;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Track;
import org.junit.jupiter.api.Test;

/**
 * Light that is worked out quickly gives the bytes of exact light, above all where that is near.
 */
class NearLightTest {
  private static final int SCENES = 1000;

  @Test
  void quickLightHasTheBytesOfExactLight() {
    for (long seed = 10_000; seed < 10_000 + SCENES; seed++) {
      FrameTable table = RandomScenes.table(seed);
      assertThat(bytes(table, SceneRenderer.Way.QUICK))
          .as("seed %d", seed)
          .isEqualTo(bytes(table, SceneRenderer.Way.EXACT));
    }
  }

  /**
   * Levels whose light lies within a few last places of where a byte changes: the byte by the plain
   * formula.
   */
  @Test
  void bytesAreExactWhereTheyChange() {
    double gamma = 2.2;
    List<Double> levels = new ArrayList<>();
    for (int step = 1; step <= 255; step += 3) {
      double level = StrictMath.pow((step - 0.5) / 255, 1 / gamma);
      levels.add(level);
      levels.add(Math.nextDown(level));
      levels.add(Math.nextUp(level));
    }
    List<Integer> want =
        levels.stream()
            .map(level -> (int) Math.floor(255 * StrictMath.pow(level, gamma) + 0.5))
            .toList();
    // Both bytes of most steps are among them.
    assertThat(want.stream().distinct().count()).isGreaterThan(140);
    for (boolean loop : new boolean[] {false, true}) {
      List<List<Integer>> plain =
          Rendering.frames(flickering(levels, gamma, Optional.empty(), loop));
      assertThat(plain).allMatch(want::equals);
      // A feel without a delay changes nothing, but each frame then rests on those before.
      List<List<Integer>> felt =
          Rendering.frames(flickering(levels, gamma, Optional.of(new Feel(0, 0)), loop));
      assertThat(felt).allMatch(want::equals);
    }
  }

  // A flicker without depth is the level itself.
  private static FrameTable flickering(
      List<Double> levels, double gamma, Optional<Feel> feel, boolean loop) {
    List<DriverOutput> outputs = new ArrayList<>();
    List<Lamp> lamps = new ArrayList<>();
    List<Track> tracks = new ArrayList<>();
    for (int i = 0; i < levels.size(); i++) {
      String id = "l" + i;
      outputs.add(DriverOutput.of(id));
      lamps.add(Lamp.FEEL.with(Lamp.ofOutput(id, id), feel));
      Look look = new Look(new Colour.Srgb(255, 255, 255), levels.get(i));
      tracks.add(
          Track.of(List.of(id), Cue.of(0, 100, new Flicker(look, 1, 0, BigDecimal.valueOf(8)))));
    }
    Rig rig =
        Rendering.rig(new Curve.Power(gamma), 1, List.of(), outputs, lamps.toArray(Lamp[]::new));
    return FrameTable.of(
        rig, Rendering.scene("100", "50", loop, Dither.OFF, tracks.toArray(Track[]::new)));
  }

  private static List<Integer> bytes(FrameTable table, SceneRenderer.Way way) {
    List<Integer> bytes = new ArrayList<>();
    byte[] frame = new byte[table.layout().bytes()];
    for (FrameCursor cursor = table.cursor(way); cursor.hasNext(); ) {
      cursor.next(frame);
      bytes.addAll(Rendering.unsigned(frame));
    }
    return bytes;
  }
}
