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
    if (samples == 1) {
      return new PhaseOrder(1, 0, 0);
    }
    int up = 1;
    int down = 1;
    int above = speed.pace();
    int below = speed.size() - speed.pace();
    // The next sample that is nearer to sample 0 is as many on as both of these together.
    while (up + down < samples) {
      if (above > below) {
        int times = Math.min((above - 1) / below, (samples - 1 - up) / down);
        up += times * down;
        above -= times * below;
      } else {
        int times = Math.min((below - 1) / above, (samples - 1 - down) / up);
        down += times * up;
        below -= times * above;
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
