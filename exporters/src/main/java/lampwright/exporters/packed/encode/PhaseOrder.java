package lampwright.exporters.packed.encode;

/**
 * The order of samples by their phase, where each comes a whole number of steps after the one
 * before. Neighbours are then at no more than three distances (the three-distance theorem; V. T.
 * Sos, "On the distribution mod 1 of the sequence n alpha", 1958, cited from memory), so that the
 * next one is found without sorting.
 */
final class PhaseOrder {
  private final int samples;

  /** The sample that has the least phase but that of sample 0. */
  private final int up;

  /** The sample that has the greatest phase. */
  private final int down;

  private PhaseOrder(int samples, int up, int down) {
    this.samples = samples;
    this.up = up;
    this.down = down;
  }

  /**
   * The order of the first samples at a speed.
   *
   * @param samples no more than the speed's size, whose pace has no factor in common with it: so no
   *     two have the same phase
   */
  static PhaseOrder of(int samples, FineGrid.Speed speed) {
    int up = 0;
    int down = 0;
    int least = speed.size();
    int most = 0;
    int at = 0;
    for (int i = 1; i < samples; i++) {
      at += speed.pace();
      at = at >= speed.size() ? at - speed.size() : at;
      if (at < least) {
        least = at;
        up = i;
      }
      if (at > most) {
        most = at;
        down = i;
      }
    }
    return new PhaseOrder(samples, up, down);
  }

  /** The sample that comes after one; sample 0 after the last. */
  int next(int sample) {
    if (sample < samples - up) {
      return sample + up;
    }
    return sample >= down ? sample - down : sample + up - down;
  }

  /** Sum of the steps between samples in this order, all round; or something above the limit. */
  long variation(int[] v, long limit) {
    long sum = 0;
    int sample = 0;
    int last = v[0];
    for (int i = 0; i < samples && sum <= limit; i++) {
      sample = next(sample);
      sum += Math.abs(v[sample] - last);
      last = v[sample];
    }
    return sum;
  }
}
