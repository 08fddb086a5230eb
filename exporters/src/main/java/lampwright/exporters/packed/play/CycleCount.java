package lampwright.exporters.packed.play;

import org.jspecify.annotations.Nullable;

/** Adds up what steps cost. */
final class CycleCount {
  private final @Nullable DecodeCost cost;
  private int sum;

  /**
   * Starts at 0.
   *
   * @param cost null where nobody asks, so that all steps cost 0
   */
  CycleCount(@Nullable DecodeCost cost) {
    this.cost = cost;
  }

  void add(PlayerStep step) {
    add(step, 1);
  }

  void add(PlayerStep step, int times) {
    if (cost != null) {
      sum += cost.cycles(step) * times;
    }
  }

  /** Gives the sum and starts again at 0. */
  int take() {
    int taken = sum;
    sum = 0;
    return taken;
  }
}
