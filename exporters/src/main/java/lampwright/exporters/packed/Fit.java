package lampwright.exporters.packed;

import java.util.List;

/** Curves and their readers: slot s at frame t has waves[wave[s]][(pace t + phase[s]) mod size]. */
final class Fit {
  private final int size;
  private final int pace;
  private final List<int[]> waves;
  private final int[] wave;
  private final int[] phase;

  Fit(int size, int pace, List<int[]> waves, int[] wave, int[] phase) {
    this.size = size;
    this.pace = pace;
    this.waves = waves;
    this.wave = wave;
    this.phase = phase;
  }

  int size() {
    return size;
  }

  int pace() {
    return pace;
  }

  List<int[]> waves() {
    return waves;
  }

  int[] wave() {
    return wave;
  }

  int[] phase() {
    return phase;
  }
}
