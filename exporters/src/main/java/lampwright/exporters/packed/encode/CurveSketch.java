package lampwright.exporters.packed.encode;

import java.util.Arrays;

/**
 * A closed curve while samples are put on it, of which most are never known. A bit for each place
 * says whether it is, so that what is known is found, and forgotten, without walking along all of
 * the curve.
 */
final class CurveSketch {
  /** Meant only where known. */
  private final int[] values;

  private final long[] known;
  private int count;

  /**
   * A curve of which nothing is known.
   *
   * @param size samples of the whole curve
   */
  CurveSketch(int size) {
    values = new int[size];
    known = new long[(size + Long.SIZE - 1) / Long.SIZE];
  }

  /** Puts a sample on it; changes nothing and gives false where another value is known. */
  boolean put(int place, int value) {
    long bit = 1L << place;
    if ((known[place / Long.SIZE] & bit) != 0) {
      return values[place] == value;
    }
    known[place / Long.SIZE] |= bit;
    values[place] = value;
    count++;
    return true;
  }

  /** What is known now. */
  KnownSamples samples() {
    int[] places = new int[count];
    int[] at = new int[count];
    int next = 0;
    for (int word = 0; word < known.length; word++) {
      for (long left = known[word]; left != 0; left &= left - 1) {
        int place = word * Long.SIZE + Long.numberOfTrailingZeros(left);
        places[next] = place;
        at[next++] = values[place];
      }
    }
    return new KnownSamples(values.length, places, at);
  }

  /** Forgets all of it. */
  void clear() {
    Arrays.fill(known, 0);
    count = 0;
  }
}
