package lampwright.exporters.packed.encode;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.NavigableMap;
import java.util.TreeMap;
import lampwright.exporters.packed.format.ByteSink;
import lampwright.exporters.packed.format.Coding;

/**
 * Which columns of a lamp are coded, and how the others follow from them: each that equals an
 * earlier one takes its value, pixel by pixel where the whole lamp allows.
 */
final class Echoes {
  /** Columns from emitter to emitter and from pixel to pixel. */
  private static final int[] PITCHES = {1, 3, 4};

  private final LampTable table;
  private final int pitch;

  /** Echoes of the whole lamp, or none. */
  private final List<Grouping.Echo> whole = new ArrayList<>();

  Echoes(LampTable table) {
    this.table = table;
    pitch = pitch();
    int width = table.columns.length;
    for (int at = pitch; pitch > 0 && at < width; at += Grouping.MAX_COUNT) {
      whole.add(new Grouping.Echo(at, at - pitch, Math.min(Grouping.MAX_COUNT, width - at), 1));
    }
  }

  /** After how many columns the whole lamp repeats itself; 0 if it doesn't. */
  private int pitch() {
    int width = table.columns.length;
    if (table.columns[width - 1] != width - 1) {
      return 0;
    }
    for (int pitch = 1; pitch < width; pitch++) {
      if (contains(PITCHES, pitch) || pitch % 3 == 0 || pitch % 4 == 0) {
        boolean same = true;
        for (int i = pitch; i < width && same; i++) {
          same = Arrays.equals(table.values[i], table.values[i - pitch]);
        }
        if (same) {
          return pitch;
        }
      }
    }
    return 0;
  }

  private static boolean contains(int[] list, int value) {
    return Arrays.stream(list).anyMatch(v -> v == value);
  }

  /** The column that represents a slot. */
  int column(int slot) {
    return table.columns[table.slots.get(slot)[0]];
  }

  /** Writes the echoes that the slots need. */
  void write(ByteSink out, Coding coding, List<Integer> slots) {
    List<Grouping.Echo> each = spread(slots, Integer.MAX_VALUE);
    List<Grouping.Echo> byPixel = spread(slots, pitch);
    byPixel.addAll(whole);
    List<Grouping.Echo> echoes = whole.isEmpty() || each.size() <= byPixel.size() ? each : byPixel;
    if (echoes.size() > Grouping.MAX_COUNT) {
      throw new TooManyPartsException("echoes", echoes.size());
    }
    out.u8(echoes.size());
    for (Grouping.Echo echo : echoes) {
      echo.write(out, coding);
    }
  }

  private List<Grouping.Echo> spread(List<Integer> slots, int before) {
    NavigableMap<Integer, int[]> left = new TreeMap<>();
    for (int slot : slots) {
      if (table.slots.get(slot).length == 1) {
        continue;
      }
      int[] columns =
          Arrays.stream(table.slots.get(slot))
              .map(i -> table.columns[i])
              .filter(c -> c < before)
              .toArray();
      if (columns.length > 1) {
        left.put(columns[0], columns);
      }
    }
    List<Grouping.Echo> echoes = new ArrayList<>();
    // More than can be written are not looked for.
    while (!left.isEmpty() && echoes.size() <= Grouping.MAX_COUNT) {
      List<int[]> run = alikeAndEven(left);
      run.forEach(columns -> left.remove(columns[0]));
      List<Grouping.Echo> apart = new ArrayList<>();
      run.forEach(columns -> apart.addAll(Grouping.spread(columns)));
      List<Grouping.Echo> together = together(run);
      echoes.addAll(together.size() < apart.size() ? together : apart);
    }
    return echoes;
  }

  /** The first slot left and others of the same shape at an even stride: as many as there are. */
  private static List<int[]> alikeAndEven(NavigableMap<Integer, int[]> left) {
    int[] first = left.firstEntry().getValue();
    List<int[]> best = List.of(first);
    for (int[] second :
        left.subMap(first[0], false, first[0] + Grouping.MAX_STRIDE, true).values()) {
      int stride = second[0] - first[0];
      List<int[]> run = new ArrayList<>(List.of(first));
      int[] next = second;
      while (run.size() < Grouping.MAX_COUNT
          && next != null
          && isShifted(first, next, run.size() * stride)) {
        run.add(next);
        next = left.get(first[0] + run.size() * stride);
      }
      if (run.size() > best.size()) {
        best = run;
      }
    }
    return best;
  }

  private static boolean isShifted(int[] columns, int[] others, int by) {
    if (columns.length != others.length) {
      return false;
    }
    for (int i = 0; i < columns.length; i++) {
      if (others[i] != columns[i] + by) {
        return false;
      }
    }
    return true;
  }

  /** For each column of the shape but the first, one echo over all slots. */
  private static List<Grouping.Echo> together(List<int[]> run) {
    int[] first = run.get(0);
    int stride = run.size() > 1 ? run.get(1)[0] - first[0] : 0;
    List<Grouping.Echo> echoes = new ArrayList<>();
    for (int i = 1; i < first.length; i++) {
      echoes.add(new Grouping.Echo(first[i], first[0], run.size(), stride));
    }
    return echoes;
  }
}
