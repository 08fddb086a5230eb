package lampwright.engine.render;

import java.util.List;
import lampwright.engine.light.Curve;
import lampwright.engine.light.Mixer;
import lampwright.engine.pattern.Painter;
import lampwright.engine.scene.Blend;
import lampwright.engine.scene.Cue;
import lampwright.engine.time.Ratio;

/** One cue made ready: where its light goes and in which frames. */
final class CuePlayer {
  /** Rows of pixels that the pattern sees alike, painted once for all of them. */
  static final class Row {
    private final Painter painter;
    private final double[] scratch;
    private final List<int[]> rows;

    /**
     * @param painter the pattern on such a row
     * @param scratch room for the drives of one row
     * @param rows the packages of each row
     */
    Row(Painter painter, double[] scratch, List<int[]> rows) {
      this.painter = painter;
      this.scratch = scratch;
      this.rows = rows;
    }
  }

  private final Ratio startMs;
  private final Ratio endMs;
  private final Ratio fadeInMs;
  private final Ratio fadeOutMs;
  private final Blend blend;
  private final Curve curve;
  private final List<Row> rows;
  private final long firstFrame;
  private final long endFrame;

  CuePlayer(Cue cue, FrameClock clock, Curve curve, List<Row> rows) {
    this.startMs = Ratio.of(cue.startMs());
    this.endMs = Ratio.of(cue.endMs());
    this.fadeInMs = Ratio.of(cue.fadeInMs());
    this.fadeOutMs = Ratio.of(cue.fadeOutMs());
    this.blend = cue.blend();
    this.curve = curve;
    this.rows = rows;
    this.firstFrame = clock.firstAtOrAfter(startMs);
    this.endFrame = clock.firstAtOrAfter(endMs);
  }

  /** The first frame that the cue covers. */
  long firstFrame() {
    return firstFrame;
  }

  /** The first frame that it no longer covers. */
  long endFrame() {
    return endFrame;
  }

  /** Lays the cue's light over the light so far. */
  void play(Ratio timeMs, double[] light) {
    Ratio tMs = timeMs.minus(startMs);
    double a = curve.light(fade(tMs, endMs.minus(timeMs)));
    for (Row row : rows) {
      row.painter.paint(tMs, row.scratch);
      for (int[] packages : row.rows) {
        lay(row.scratch, packages, a, light);
      }
    }
  }

  private void lay(double[] over, int[] packages, double a, double[] light) {
    for (int k = 0; k < packages.length; k++) {
      int from = k * Mixer.SLOTS;
      int to = packages[k] * Mixer.SLOTS;
      for (int slot = 0; slot < Mixer.SLOTS; slot++) {
        light[to + slot] = blend.blend(light[to + slot], over[from + slot], a);
      }
    }
  }

  private double fade(Ratio sinceStart, Ratio untilEnd) {
    double v = 1;
    if (fadeInMs.signum() > 0 && sinceStart.compareTo(fadeInMs) < 0) {
      v = sinceStart.over(fadeInMs).doubleValue();
    }
    if (fadeOutMs.signum() > 0 && untilEnd.compareTo(fadeOutMs) < 0) {
      v = Math.min(v, untilEnd.over(fadeOutMs).doubleValue());
    }
    return v;
  }
}
