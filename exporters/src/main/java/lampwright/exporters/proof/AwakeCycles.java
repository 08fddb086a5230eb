package lampwright.exporters.proof;

import java.util.Locale;

/**
 * Cycles of each frame in which the core did not sleep: what decoding and starting to send cost.
 */
final class AwakeCycles {
  private long last = -1;
  private long frames;
  private long sum;
  private long worst;

  /**
   * A frame begins.
   *
   * @param awake cycles since power-up in which the core did not sleep
   */
  void frame(long awake) {
    if (last >= 0) {
      frames++;
      sum += awake - last;
      worst = Math.max(worst, awake - last);
    }
    last = awake;
  }

  void report(Figures figures, double periodCycles) {
    figures.put("/decode/frames", frames);
    if (frames > 0) {
      figures.put("/decode/averageCycles", (double) sum / frames);
      figures.put("/decode/worstCycles", worst);
      figures.put(
          "/decode/worstShareOfPeriod", String.format(Locale.ROOT, "%.5f", worst / periodCycles));
    }
  }
}
