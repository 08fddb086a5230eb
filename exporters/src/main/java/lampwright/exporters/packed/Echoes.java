package lampwright.exporters.packed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Which columns of a lamp are coded, and how the others follow from them: each that equals an
 * earlier one takes its value, pixel by pixel where the whole lamp allows.
 */
final class Echoes {
  private static final int[] PITCHES = {1, 3, 4};
  private static final int MAX_COUNT = 255;

  private final LampTable table;
  private final int pitch;

  /** Echoes of the whole lamp, or none. */
  private final List<Grouping.Echo> whole = new ArrayList<>();

  Echoes(LampTable table) {
    this.table = table;
    pitch = pitch();
    int width = table.columns.length;
    for (int at = pitch; pitch > 0 && at < width; at += MAX_COUNT) {
      whole.add(new Grouping.Echo(at, at - pitch, Math.min(MAX_COUNT, width - at), 1));
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

  /** The column that stands for a slot. */
  int column(int slot) {
    return table.columns[table.slots.get(slot)[0]];
  }

  /** Writes the echoes that the slots need. */
  void write(ByteSink out, Coding coding, List<Integer> slots) {
    List<Grouping.Echo> each = spread(slots, Integer.MAX_VALUE);
    List<Grouping.Echo> byPixel = spread(slots, pitch);
    byPixel.addAll(whole);
    List<Grouping.Echo> echoes = whole.isEmpty() || each.size() <= byPixel.size() ? each : byPixel;
    if (echoes.size() > MAX_COUNT) {
      throw new TooManyPartsException("echoes", echoes.size());
    }
    out.u8(echoes.size());
    for (Grouping.Echo echo : echoes) {
      echo.write(out, coding);
    }
  }

  private List<Grouping.Echo> spread(List<Integer> slots, int before) {
    List<Grouping.Echo> echoes = new ArrayList<>();
    for (int slot : slots) {
      int[] columns =
          Arrays.stream(table.slots.get(slot))
              .map(i -> table.columns[i])
              .filter(c -> c < before)
              .toArray();
      if (columns.length > 0) {
        echoes.addAll(Grouping.spread(columns));
      }
    }
    return echoes;
  }
}
