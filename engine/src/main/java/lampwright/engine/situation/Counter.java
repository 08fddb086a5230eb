package lampwright.engine.situation;

/** Counts frames and stays at its greatest value, which no time of a project reaches. */
final class Counter {
  /** More frames than the longest time at the highest rate: a day at 1,000 frames/s. */
  private static final int MAX = 100_000_000;

  private Counter() {}

  static int next(int frames) {
    return frames < MAX ? frames + 1 : frames;
  }
}
