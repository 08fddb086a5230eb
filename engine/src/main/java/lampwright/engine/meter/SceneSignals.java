package lampwright.engine.meter;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import lampwright.engine.render.FrameCurrent;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.Lamp;

/**
 * What each lamp draws and shines in each frame of a scene. Of a scene with too many frames only
 * the most that they draw is kept.
 */
final class SceneSignals implements FrameGauge {
  final int frames;
  final boolean loops;

  /** The most that each part draws, mA, without idle. */
  final double[] peaks;

  /** Whether each part is ever lit. */
  final boolean[] lit;

  /** The most that each line draws in one frame, mA, without idle; last, that of everything. */
  final double[] linePeaks;

  /** What each part draws in each frame, mA, without idle; empty if it is not kept. */
  final double[][] milliamps;

  /** The luminance of each lamp in each frame over its own greatest; empty if not kept. */
  final float[][] light;

  private final List<LampParts.Part> parts;
  private final FrameCurrent current;

  private SceneSignals(FrameTable table, List<LampParts.Part> parts, int lines, boolean keep) {
    this.parts = parts;
    this.current = new FrameCurrent(table.layout());
    frames = table.frameCount();
    loops = table.loops();
    peaks = new double[parts.size()];
    lit = new boolean[parts.size()];
    linePeaks = new double[lines + 1];
    milliamps = new double[keep ? parts.size() : 0][frames];
    light = keep ? light(table) : new float[0][];
  }

  /**
   * Renders a scene.
   *
   * @param parts of the layout
   * @param lines how many feed them
   * @param keep whether what is in each frame may be kept: a double for each part, a float for each
   *     lamp
   */
  static SceneSignals of(FrameTable table, List<LampParts.Part> parts, int lines, boolean keep) {
    SceneSignals signals = new SceneSignals(table, parts, lines, keep);
    Frames.render(table, signals);
    return signals;
  }

  boolean kept() {
    return milliamps.length == parts.size();
  }

  @Override
  public void frame(int frame, byte[] bytes) {
    double[] line = new double[linePeaks.length];
    for (int i = 0; i < parts.size(); i++) {
      double now = current.milliamps(bytes, parts.get(i).columns());
      line[parts.get(i).line()] += now;
      line[line.length - 1] += now;
      peaks[i] = Math.max(peaks[i], now);
      lit[i] |= isLit(bytes, parts.get(i).columns());
      if (kept()) {
        milliamps[i][frame] = now;
      }
    }
    for (int i = 0; i < line.length; i++) {
      linePeaks[i] = Math.max(linePeaks[i], line[i]);
    }
  }

  // An output may be stated to draw nothing.
  private static boolean isLit(byte[] bytes, int[] columns) {
    for (int column : columns) {
      if (bytes[column] != 0) {
        return true;
      }
    }
    return false;
  }

  // What is meant to be seen, as a scene's own flashes are judged.
  private static float[][] light(FrameTable table) {
    List<Lamp> lamps = table.layout().rig().lamps();
    Map<String, List<LampLight>> pixels = LampLight.ofLamps(table.layout());
    float[][] light = new float[lamps.size()][table.frameCount()];
    double[] xyz = new double[3];
    Frames.render(
        table.withoutDither(),
        (frame, bytes) -> {
          for (int i = 0; i < light.length; i++) {
            Arrays.fill(xyz, 0);
            pixels.getOrDefault(lamps.get(i).id(), List.of()).forEach(p -> p.add(bytes, xyz, 0));
            light[i][frame] = (float) xyz[1];
          }
        });
    for (float[] of : light) {
      float most = 0;
      for (float now : of) {
        most = Math.max(most, now);
      }
      for (int i = 0; i < of.length && most > 0; i++) {
        of[i] /= most;
      }
    }
    return light;
  }
}
