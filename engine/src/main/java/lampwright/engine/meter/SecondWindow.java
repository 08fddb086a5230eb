package lampwright.engine.meter;

/**
 * Finds the second that holds most pairs of events. A second is so many frames one after another;
 * the events come in order, and no more than those of one second are kept.
 */
final class SecondWindow {
  private final int length;
  private int[] ring = {};
  private int first;
  private int size;
  private int most;
  private int mostStart;

  /**
   * @param length frames of a second, at least 1
   */
  SecondWindow(int length) {
    this.length = length;
  }

  /** The frames of a second: the rate, rounded up. */
  static int frames(double framesPerSecond) {
    return (int) Math.ceil(framesPerSecond);
  }

  /**
   * Takes one event.
   *
   * @param frame past that of the event before
   */
  void add(int frame) {
    while (size > 0 && frame - ring[first] >= length) {
      first = at(1);
      size--;
    }
    if (size == ring.length) {
      grow();
    }
    ring[at(size)] = frame;
    size++;
    if (size / 2 > most) {
      most = size / 2;
      mostStart = ring[first];
    }
  }

  /** How many pairs of events are in the second that holds most. */
  int mostPairs() {
    return most;
  }

  /** The frame of the first event of the first such second; 0 if there was no pair. */
  int mostStart() {
    return mostStart;
  }

  // The place of the i-th event that is kept; up to that of the next one.
  private int at(int i) {
    int place = first + i;
    return place < ring.length ? place : place - ring.length;
  }

  private void grow() {
    int[] larger = new int[Math.max(4, Math.min(length, 2 * ring.length))];
    for (int i = 0; i < size; i++) {
      larger[i] = ring[at(i)];
    }
    ring = larger;
    first = 0;
  }
}
