package lampwright.exporters.target;

import com.google.common.base.Splitter;
import com.google.common.collect.ImmutableMap;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import lampwright.engine.rig.Pin;

/** The data file of a controller: one item in a line, with its source. Immutable. */
final class TargetTable {
  private static final int COLUMNS = 4;

  /**
   * One item.
   *
   * @param name what it is, such as {@code ramBytes}
   * @param value as it stands in the file
   * @param source published, memory or practice
   * @param document the document, or how it was found
   */
  record Item(String name, String value, String source, String document) {
    /** Where it comes from, in words; what no one has looked up is called an estimate. */
    String sourceWords() {
      return switch (source) {
        case "memory" -> "estimate: " + document;
        case "practice" -> "common practice: " + document;
        default -> document;
      };
    }
  }

  private final String id;
  private final ImmutableMap<String, Item> items;

  private TargetTable(String id, ImmutableMap<String, Item> items) {
    this.id = id;
    this.items = items;
  }

  /**
   * The file of a controller.
   *
   * @param id of the controller
   */
  static TargetTable of(String id) {
    String name = id + ".csv";
    try (InputStream in =
            Objects.requireNonNull(TargetTable.class.getResourceAsStream(name), name);
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      return new TargetTable(
          id,
          lines
              .lines()
              .filter(line -> !line.startsWith("#"))
              .skip(1)
              .map(TargetTable::item)
              .collect(ImmutableMap.toImmutableMap(Item::name, item -> item)));
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  private static Item item(String line) {
    List<String> cells = Splitter.on(',').limit(COLUMNS).splitToList(line);
    return new Item(cells.get(0), cells.get(1), cells.get(2), cells.get(3));
  }

  /** Every item, in the order of the file. */
  List<Item> items() {
    return items.values().asList();
  }

  Optional<Item> find(String name) {
    return Optional.ofNullable(items.get(name));
  }

  Item item(String name, String... parts) {
    String whole = parts.length == 0 ? name : name + "." + String.join(".", parts);
    return find(whole).orElseThrow(() -> new IllegalStateException(id + ".csv: no " + whole));
  }

  String text(String name, String... parts) {
    return item(name, parts).value();
  }

  int number(String name, String... parts) {
    return Integer.parseInt(text(name, parts));
  }

  List<String> words(String name, String... parts) {
    return Splitter.on(' ').splitToList(text(name, parts));
  }

  List<Integer> numbers(String name) {
    return words(name).stream().map(Integer::valueOf).toList();
  }

  /** The names of items that begin so, without that beginning, in the order of the file. */
  List<String> below(String beginning) {
    return items.keySet().stream()
        .filter(name -> name.startsWith(beginning + "."))
        .map(name -> Splitter.on('.').splitToList(name).get(1))
        .distinct()
        .toList();
  }

  /** Pins; {@code PB01 PD2} is PB0, PB1, PD2. */
  List<Pin> pins(String name) {
    return pinsOf(text(name));
  }

  /** Choices of pins, parted by {@code |}. */
  List<List<Pin>> choices(String name) {
    return Splitter.on('|').splitToStream(text(name)).map(TargetTable::pinsOf).toList();
  }

  private static List<Pin> pinsOf(String text) {
    List<Pin> pins = new ArrayList<>();
    for (String word : Splitter.on(' ').split(text)) {
      if (word.startsWith("GP")) {
        pins.add(new Pin(word));
        continue;
      }
      word.substring(2)
          .chars()
          .forEach(bit -> pins.add(new Pin(word.substring(0, 2) + (char) bit)));
    }
    return pins;
  }
}
