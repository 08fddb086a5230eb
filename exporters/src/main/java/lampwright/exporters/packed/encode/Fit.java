package lampwright.exporters.packed.encode;

import java.util.List;

/**
 * Curves and their readers: slot s at frame t has waves[wave[s]][(pace t + phase[s]) mod size]. A
 * fit that swings has phase 0 for the first pixel; from the time that pace t mod size reaches
 * {@link #swingsAt} on, phases are taken backwards: -phase[s] in place of phase[s].
 */
final class Fit {
  /** In place of a phase, where a fit does not swing. */
  static final int NEVER = -1;

  private final int size;
  private final int pace;
  private final List<int[]> waves;
  private final int[] wave;
  private final int[] phase;
  private final int swingsAt;

  Fit(int size, int pace, List<int[]> waves, int[] wave, int[] phase) {
    this(size, pace, waves, wave, phase, NEVER);
  }

  Fit(int size, int pace, List<int[]> waves, int[] wave, int[] phase, int swingsAt) {
    this.swingsAt = swingsAt;
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

  /** What a slot has at a frame, where the fit does not swing. */
  int at(int slot, int frame) {
    return waves.get(wave[slot])[(int) (((long) pace * frame + phase[slot]) % size)];
  }

  int swingsAt() {
    return swingsAt;
  }
}
