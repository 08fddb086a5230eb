package lampwright.engine.second;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A page of docs/, for its tables and listings. */
final class Page {
  private static final Path DOCS = Path.of("..", "docs");

  private final List<String> lines;

  private Page(List<String> lines) {
    this.lines = lines;
  }

  static Page of(String name) {
    try {
      return new Page(Files.readAllLines(DOCS.resolve(name)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The section from a heading to the next one of any depth. */
  Page section(String heading) {
    int from = lines.indexOf(heading) + 1;
    if (from == 0) {
      throw new IllegalArgumentException("no heading " + heading);
    }
    int to = from;
    boolean listing = false;
    while (to < lines.size() && (listing || !lines.get(to).startsWith("#"))) {
      listing ^= lines.get(to).startsWith("```");
      to++;
    }
    return new Page(lines.subList(from, to));
  }

  /** Headings that begin so, without the mark and quotes. */
  List<String> headings(String begin) {
    return lines.stream().filter(line -> line.startsWith(begin)).toList();
  }

  /** Rows of the tables, without their two heads; cells without space and back quotes around. */
  List<List<String>> rows() {
    List<List<String>> rows = new ArrayList<>();
    for (int i = 2; i < lines.size(); i++) {
      if (isRow(i) && isRow(i - 1) && isRow(i - 2)) {
        rows.add(cells(lines.get(i)));
      }
    }
    return rows;
  }

  private boolean isRow(int i) {
    return lines.get(i).startsWith("|");
  }

  private static List<String> cells(String row) {
    List<String> cells = new ArrayList<>();
    for (String cell : row.substring(1, row.length() - 1).split("\\|", -1)) {
      cells.add(cell.strip().replaceAll("^`|`$", ""));
    }
    return cells;
  }

  /** The one listing of the section. */
  String listing() {
    int from = 0;
    while (!lines.get(from).startsWith("```")) {
      from++;
    }
    int to = from + 1;
    while (!lines.get(to).startsWith("```")) {
      to++;
    }
    return String.join("\n", lines.subList(from + 1, to));
  }
}
