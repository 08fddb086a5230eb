package lampwright.exporters.table;

import java.io.IOException;
import java.util.List;
import lampwright.engine.render.Column;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportFacts;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportTarget;
import lampwright.exporters.Progress;

/**
 * One row per frame, one column per byte, under a row of the columns' names. Numbers are decimal,
 * separated by commas; lines end with a line feed. No name needs quotes: they hold letters, digits,
 * hyphens, dots and colons only.
 */
final class CsvExporter extends TableExporter {
  private static final int MAX_VALUE_BYTES = 4;

  // Each byte's digits and a comma, the first of them in the lowest byte.
  private static final int[] DIGITS = new int[256];
  private static final int[] DIGITS_LENGTH = new int[256];

  static {
    for (int value = 0; value < 256; value++) {
      String text = value + ",";
      DIGITS_LENGTH[value] = text.length();
      for (int i = 0; i < text.length(); i++) {
        DIGITS[value] |= text.charAt(i) << (8 * i);
      }
    }
  }

  @Override
  public String key() {
    return "csv";
  }

  @Override
  public String summary() {
    return "one row per frame, one column per byte (.csv)";
  }

  @Override
  public ExportFacts facts(ExportJob job) {
    return new ExportFacts(key(), job.table().bytes(), List.of(job.fileName("csv")));
  }

  @Override
  void write(ExportJob job, ExportTarget target, Progress progress)
      throws IOException, CancelledException {
    writeFile(
        target,
        job.fileName("csv"),
        out -> {
          names(job.table().layout().columns(), out);
          writeFrames(job.table(), progress, frame -> row(frame, out));
        });
  }

  private static void names(List<Column> columns, BlockOutput out) throws IOException {
    String separator = "";
    for (Column column : columns) {
      out.text(separator);
      out.text(column.name());
      separator = ",";
    }
    out.text("\n");
  }

  private static void row(byte[] frame, BlockOutput out) throws IOException {
    byte[] block = out.block();
    for (byte duty : frame) {
      int value = Byte.toUnsignedInt(duty);
      int at = out.reserve(MAX_VALUE_BYTES);
      BlockOutput.INT.set(block, at, DIGITS[value]);
      out.keepTo(at + DIGITS_LENGTH[value]);
    }
    // Room is made before each value, so the comma after the last is still in the block.
    block[out.end() - 1] = '\n';
  }
}
