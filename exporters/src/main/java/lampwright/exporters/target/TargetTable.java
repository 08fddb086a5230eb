package lampwright.exporters.target;

import com.google.common.base.Splitter;
import com.google.common.collect.ImmutableMap;
import com.google.common.collect.Maps;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import lampwright.engine.facts.NumberTable;
import lampwright.engine.facts.SourcedNumber;
import lampwright.engine.rig.Pin;

/** The data file of a controller: one item in a line, with its source. Immutable. */
final class TargetTable {
  private final String id;
  private final ImmutableMap<String, SourcedNumber> items;

  private TargetTable(String id, ImmutableMap<String, SourcedNumber> items) {
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
    NumberTable table =
        NumberTable.read(Objects.requireNonNull(TargetTable.class.getResourceAsStream(name), name));
    return new TargetTable(id, Maps.uniqueIndex(table.of(""), SourcedNumber::item));
  }

  /** Notes on the boards of a family, as Markdown; none if there are none. */
  static Optional<String> notes(String id) {
    try (InputStream in = TargetTable.class.getResourceAsStream(id + ".md")) {
      return in == null
          ? Optional.empty()
          : Optional.of(new String(in.readAllBytes(), StandardCharsets.UTF_8).strip());
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  /** Whether nothing is known of the controller. */
  boolean isEmpty() {
    return items.isEmpty();
  }

  /** Every item, in the order of the file. */
  List<SourcedNumber> items() {
    return items.values().asList();
  }

  Optional<SourcedNumber> find(String name) {
    return Optional.ofNullable(items.get(name));
  }

  SourcedNumber item(String name, String... parts) {
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

  /** Choices of pins, separated by {@code |}. */
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
