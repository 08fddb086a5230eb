package lampwright.exporters.table;

import java.io.ByteArrayOutputStream;
import java.util.List;

/** Reads rows of numbers under a row of names; written apart from the exporter. */
final class CsvReader {
  private CsvReader() {}

  static List<String> names(String text) {
    return List.of(text.substring(0, text.indexOf('\n')).split(",", -1));
  }

  static byte[] bytes(String text) {
    if (!text.endsWith("\n")) {
      throw new AssertionError("the last row has no end");
    }
    int columns = names(text).size();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    for (String row : text.lines().skip(1).toList()) {
      String[] cells = row.split(",", -1);
      if (cells.length != columns) {
        throw new AssertionError(columns + " columns, but a row of " + cells.length);
      }
      for (String cell : cells) {
        int value = Integer.parseInt(cell);
        if (value < 0 || value > 255 || !cell.equals(Integer.toString(value))) {
          throw new AssertionError("not a byte: " + cell);
        }
        bytes.write(value);
      }
    }
    return bytes.toByteArray();
  }
}
