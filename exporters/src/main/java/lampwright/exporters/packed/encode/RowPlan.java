package lampwright.exporters.packed.encode;

import java.util.List;

/**
 * How the rows of one lamp may be coded: its slots in coding order and, for each, what every
 * predictor leaves over at every frame.
 */
final class RowPlan {
  /** Absolute, step and scaled, as the format has them. */
  static final int PREDICTORS = 3;

  /** Number of the step predictor. */
  static final int STEP = 1;

  /**
   * Frames in which the width of a row stays the same, about: a section is seldom shorter. Found by
   * trial: with 16 the corpus packs to 72,077 bytes in place of 72,069, with 64 to 72,026.
   */
  private static final int WINDOW = 32;

  /**
   * Slots before a slot that are tried as its source. Found by trial: 8 and 12 change nothing in
   * the corpus, with 3 the samples pack to 5,968 bytes in place of 5,715.
   */
  private static final int SOURCES = 5;

  /** Whether rows of bits may come of it: if not, nothing is found out that only they need. */
  final boolean forRows;

  /** Numbers of the slots in coding order. */
  final List<Integer> slots;

  /**
   * Remainders by place in the order, predictor (absolute, step, scaled), frame; absent where
   * useless.
   */
  final short[][][] rest;

  /** Column of each slot. */
  final int[] column;

  /** Column of the source of each slot's scaled predictor. */
  final int[] sourceColumn;

  /** Factor of each slot's scaled predictor in 1/256. */
  final int[] factor;

  RowPlan(LampTable table, Echoes echoes, List<Integer> slots, boolean forRows) {
    this.forRows = forRows;
    this.slots = List.copyOf(slots);
    int n = slots.size();
    rest = new short[n][PREDICTORS][];
    sourceColumn = new int[n];
    factor = new int[n];
    column = new int[n];
    byte[][] values = new byte[n][];
    for (int i = 0; i < n; i++) {
      column[i] = echoes.column(slots.get(i));
      values[i] = table.values[table.slots.get(slots.get(i))[0]];
      rest[i][0] = absolute(values[i]);
      rest[i][1] = steps(values[i]);
      if (forRows) {
        findSource(i, values, table.frames);
      }
    }
  }

  private static short[] absolute(byte[] v) {
    short[] rest = new short[v.length];
    for (int f = 0; f < v.length; f++) {
      rest[f] = (short) (v[f] & 255);
    }
    return rest;
  }

  private static short[] steps(byte[] v) {
    short[] rest = new short[v.length];
    for (int f = 1; f < v.length; f++) {
      rest[f] = (short) ((v[f] & 255) - (v[f - 1] & 255));
    }
    return rest;
  }

  private void findSource(int i, byte[][] values, int frames) {
    double best = Math.min(spread(rest[i][0]), spread(rest[i][1]));
    for (int j = Math.max(0, i - SOURCES); j < i; j++) {
      double cross = 0;
      double square = 0;
      for (int f = 0; f < frames; f++) {
        int r = values[j][f] & 255;
        cross += (double) r * (values[i][f] & 255);
        square += (double) r * r;
      }
      int middle = (int) Math.round(256 * cross / square);
      for (int m = Math.max(1, middle - 1); m <= Math.min(255, middle + 1); m++) {
        short[] left = new short[frames];
        for (int f = 0; f < frames; f++) {
          left[f] = (short) ((values[i][f] & 255) - (((values[j][f] & 255) * m) >> 8));
        }
        double cost = spread(left);
        if (cost < best) {
          best = cost;
          rest[i][2] = left;
          sourceColumn[i] = column[j];
          factor[i] = m;
        }
      }
    }
  }

  /** Bits that windows of the remainder need, summed. */
  private static double spread(short[] rest) {
    double sum = 0;
    for (int from = 0; from < rest.length; from += WINDOW) {
      int least = Integer.MAX_VALUE;
      int most = Integer.MIN_VALUE;
      for (int f = from; f < Math.min(rest.length, from + WINDOW); f++) {
        least = Math.min(least, rest[f]);
        most = Math.max(most, rest[f]);
      }
      sum += width(least, most);
    }
    return sum;
  }

  /** Bits for a remainder in a range. */
  static int width(int least, int most) {
    return 32 - Integer.numberOfLeadingZeros(most - least);
  }
}
