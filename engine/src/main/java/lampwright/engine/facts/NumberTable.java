package lampwright.engine.facts;

import com.google.common.collect.ImmutableListMultimap;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * A table of numbers by subject that comes with the program. Its file has lines of cells with
 * commas between them, without subject where it has only one; comments start with {@code #}; the
 * first other line is the heading. The last cell, the document, may have commas of its own.
 */
public final class NumberTable {
  /** All columns; {@code subject} and {@code unit} may be left out. */
  private static final List<String> COLUMNS =
      List.of("subject", "item", "value", "unit", "source", "document");

  private static final List<String> MAY_LACK = List.of("subject", "unit");

  private final ImmutableListMultimap<String, SourcedNumber> numbers;

  private NumberTable(ImmutableListMultimap<String, SourcedNumber> numbers) {
    this.numbers = numbers;
  }

  /**
   * Reads a table of the program; closes the stream.
   *
   * @throws IllegalArgumentException if it is no such table, or gives an item twice
   */
  public static NumberTable read(InputStream file) {
    try (BufferedReader reader =
        new BufferedReader(new InputStreamReader(file, StandardCharsets.UTF_8))) {
      List<String> lines = new ArrayList<>();
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        if (!line.startsWith("#")) {
          lines.add(line);
        }
      }
      List<String> heading = List.of(lines.get(0).split(",", -1));
      List<String> least =
          COLUMNS.stream().filter(c -> heading.contains(c) || !MAY_LACK.contains(c)).toList();
      if (!heading.equals(least)) {
        throw new IllegalArgumentException(lines.get(0) + ": must be " + COLUMNS);
      }
      ImmutableListMultimap.Builder<String, SourcedNumber> numbers =
          ImmutableListMultimap.builder();
      for (String line : lines.subList(1, lines.size())) {
        List<String> cell = List.of(line.split(",", heading.size()));
        if (cell.size() < heading.size()) {
          throw new IllegalArgumentException(line + ": must be " + heading);
        }
        numbers.put(cell(heading, cell, "subject"), number(heading, cell));
      }
      return once(new NumberTable(numbers.build()));
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  private static SourcedNumber number(List<String> heading, List<String> cell) {
    return new SourcedNumber(
        cell(heading, cell, "item"),
        cell(heading, cell, "value"),
        cell(heading, cell, "unit"),
        Source.of(cell(heading, cell, "source")),
        cell(heading, cell, "document"));
  }

  private static String cell(List<String> heading, List<String> cells, String column) {
    int at = heading.indexOf(column);
    return at < 0 ? "" : cells.get(at);
  }

  private static NumberTable once(NumberTable table) {
    for (String subject : table.subjects()) {
      Set<String> items = new HashSet<>();
      for (SourcedNumber number : table.of(subject)) {
        if (!items.add(number.item())) {
          throw new IllegalArgumentException(subject + ": gives an item twice: " + number.item());
        }
      }
    }
    return table;
  }

  /** What there are numbers of, in the order of the file; empty text where it has no subjects. */
  public List<String> subjects() {
    return numbers.keySet().asList();
  }

  /** The numbers of a subject in the order of the file; none if there is no such subject. */
  public List<SourcedNumber> of(String subject) {
    return numbers.get(subject);
  }

  /**
   * One number of a subject.
   *
   * @throws IllegalArgumentException if there is none
   */
  public SourcedNumber get(String subject, String item) {
    return of(subject).stream()
        .filter(number -> number.item().equals(item))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException(subject + ", " + item + ": not given"));
  }
}
