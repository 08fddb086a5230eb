package lampwright.engine.meter;

import com.google.common.collect.ArrayListMultimap;
import com.google.common.collect.ListMultimap;
import com.google.common.primitives.Ints;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import lampwright.engine.render.Column;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Lamp;

/** The bytes of a frame, separated by the lamp that they belong to and the line that feeds them. */
final class LampParts {
  /** Some bytes of one lamp. */
  static final class Part {
    private final int lamp;
    private final int line;
    private final int[] columns;

    private Part(int lamp, int line, int[] columns) {
      this.lamp = lamp;
      this.line = line;
      this.columns = columns;
    }

    /** The lamp, by its place in the rig. */
    int lamp() {
      return lamp;
    }

    /** The chain that feeds them, by its place; the number of chains for all outputs. */
    int line() {
      return line;
    }

    /** The bytes; not to be changed. */
    int[] columns() {
      return columns;
    }
  }

  private LampParts() {}

  /** The parts of all lamps, lamp by lamp. */
  static List<Part> of(FrameLayout layout) {
    List<Chain> chains = layout.rig().chains();
    Map<String, Integer> lines = new HashMap<>();
    for (int i = 0; i < chains.size(); i++) {
      lines.put(chains.get(i).id(), i);
    }
    ListMultimap<String, Integer> owned = ArrayListMultimap.create();
    List<Column> columns = layout.columns();
    for (int i = 0; i < columns.size(); i++) {
      int at = i;
      columns.get(i).lamp().ifPresent(of -> owned.put(of.lamp(), at));
    }
    List<Part> parts = new ArrayList<>();
    List<Lamp> lamps = layout.rig().lamps();
    for (int lamp = 0; lamp < lamps.size(); lamp++) {
      ListMultimap<Integer, Integer> byLine = ArrayListMultimap.create();
      for (int at : owned.get(lamps.get(lamp).id())) {
        byLine.put(line(columns.get(at).source(), lines), at);
      }
      for (int line : byLine.keySet().stream().sorted().toList()) {
        parts.add(new Part(lamp, line, Ints.toArray(byLine.get(line))));
      }
    }
    return parts;
  }

  private static int line(Column.Source source, Map<String, Integer> lines) {
    return source instanceof Column.PixelEmitter pixel
        ? lines.getOrDefault(pixel.chain(), lines.size())
        : lines.size();
  }
}
