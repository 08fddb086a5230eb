package lampwright.exporters.packed.encode;

import com.google.common.primitives.Ints;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * One lamp's part of a frame table, column by column, with what the coders ask of it. Columns are
 * numbered from the lamp's first byte, so that lamps of one build can share code.
 */
final class LampTable {
  /** Numbers of the lamp's columns, ascending, from 0. */
  final int[] columns;

  /** Values by index in {@link #columns}, then frame. */
  final byte[][] values;

  final int frames;

  /** Index of the columns that change at all, grouped into slots of equal columns. */
  final List<int[]> slots = new ArrayList<>();

  /** Index in {@link #columns} of each column number, or -1. */
  final int[] indexOf;

  LampTable(int[] columns, byte[][] values, int frames) {
    this.columns = columns;
    this.values = values;
    this.frames = frames;
    indexOf = new int[columns[columns.length - 1] + 1];
    Arrays.fill(indexOf, -1);
    for (int i = 0; i < columns.length; i++) {
      indexOf[columns[i]] = i;
    }
    findSlots();
  }

  /** A column's values, found again by their hash. */
  private static final class Values {
    private final byte[] bytes;
    private final int hash;

    Values(byte[] bytes) {
      this.bytes = bytes;
      this.hash = Arrays.hashCode(bytes);
    }

    @Override
    public boolean equals(@Nullable Object other) {
      return other instanceof Values values
          && hash == values.hash
          && Arrays.equals(bytes, values.bytes);
    }

    @Override
    public int hashCode() {
      return hash;
    }
  }

  private void findSlots() {
    Map<Values, List<Integer>> alike = new LinkedHashMap<>();
    for (int i = 0; i < columns.length; i++) {
      if (!isConstant(i)) {
        alike.computeIfAbsent(new Values(values[i]), v -> new ArrayList<>()).add(i);
      }
    }
    alike.values().forEach(slot -> slots.add(Ints.toArray(slot)));
  }

  boolean isConstant(int index) {
    byte first = values[index][0];
    for (int f = 1; f < frames; f++) {
      if (values[index][f] != first) {
        return false;
      }
    }
    return true;
  }

  int at(int index, int frame) {
    return values[index][frame] & 255;
  }

  /** The columns' values at one frame. */
  int[] row(int frame) {
    int[] row = new int[columns.length];
    for (int i = 0; i < row.length; i++) {
      row[i] = at(i, frame);
    }
    return row;
  }

  /** Whether a slot changes from the frame before. */
  boolean changed(int slot, int frame) {
    byte[] v = values[slots.get(slot)[0]];
    return v[frame] != v[frame - 1];
  }

  /** Whether nothing changes from the frame before. */
  boolean still(int frame) {
    for (int s = 0; s < slots.size(); s++) {
      if (changed(s, frame)) {
        return false;
      }
    }
    return true;
  }

  /** A hash of each frame's changing columns. */
  long[] hashes() {
    long[] hashes = new long[frames];
    for (int[] slot : slots) {
      byte[] v = values[slot[0]];
      for (int f = 0; f < frames; f++) {
        long h = (hashes[f] ^ (v[f] & 255)) * 0x9E3779B97F4A7C15L;
        hashes[f] = h ^ (h >>> 29);
      }
    }
    return hashes;
  }

  /** The same lamp over some of its frames. */
  LampTable part(int from, int to) {
    byte[][] cut = new byte[values.length][];
    for (int i = 0; i < cut.length; i++) {
      cut[i] = Arrays.copyOfRange(values[i], from, to);
    }
    return new LampTable(columns, cut, to - from);
  }

  /** Which columns ever change, by index in {@link #columns}. */
  boolean[] varying() {
    boolean[] varying = new boolean[columns.length];
    for (int[] slot : slots) {
      for (int index : slot) {
        varying[index] = true;
      }
    }
    return varying;
  }
}
