package lampwright.exporters.table;

import java.io.IOException;
import lampwright.exporters.ExportJob;

/** The source file: the table as one array, each frame from a line of its own. */
final class CArray {
  private static final int VALUES_A_LINE = 16;
  private static final int VALUE_BYTES = "0x00,".length();

  // Each byte as C writes it, the first character in the lowest byte.
  private static final long[] VALUES = new long[256];

  static {
    String digits = "0123456789ABCDEF";
    for (int value = 0; value < 256; value++) {
      String text = "0x" + digits.charAt(value >> 4) + digits.charAt(value & 15) + ",";
      for (int i = 0; i < VALUE_BYTES; i++) {
        VALUES[value] |= (long) text.charAt(i) << (8 * i);
      }
    }
  }

  private CArray() {}

  static void begin(ExportJob job, CNames names, BlockOutput out) throws IOException {
    out.line("/* The frame table that " + job.fileName("h") + " describes. */");
    out.line("#include \"" + job.fileName("h") + "\"");
    out.line("");
    out.line(
        "const uint8_t "
            + names.table()
            + "["
            + names.constant("TABLE_BYTES")
            + "] "
            + names.constant("MEMORY")
            + " = {");
  }

  static void frame(byte[] frame, BlockOutput out) throws IOException {
    byte[] block = out.block();
    for (int from = 0; from < frame.length; from += VALUES_A_LINE) {
      int to = Math.min(frame.length, from + VALUES_A_LINE);
      // Values are written eight bytes at a time, so the last needs room for three more.
      int at = out.reserve(VALUES_A_LINE * VALUE_BYTES + Long.BYTES);
      for (int i = from; i < to; i++, at += VALUE_BYTES) {
        BlockOutput.LONG.set(block, at, VALUES[frame[i] & 0xFF]);
      }
      block[at++] = '\n';
      out.keepTo(at);
    }
  }

  static void end(ExportJob job, ExportMark mark, BlockOutput out) throws IOException {
    out.line("};");
    out.line("");
    for (String line : mark.check(job.fileName("c"))) {
      out.line(line);
    }
  }
}
