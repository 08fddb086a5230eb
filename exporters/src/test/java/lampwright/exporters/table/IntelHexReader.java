package lampwright.exporters.table;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;

/**
 * Reads Intel HEX as the Intel hexadecimal object file format specification of 1988 has it; written
 * from that, apart from the exporter. Takes records of type 00, 01 and 04.
 */
final class IntelHexReader {
  /** A data record. */
  static final class Data {
    private final long address;
    private final byte[] bytes;

    Data(long address, byte[] bytes) {
      this.address = address;
      this.bytes = bytes;
    }

    /** The address of its first byte, 0 to 0xFFFFFFFF. */
    long address() {
      return address;
    }

    byte[] bytes() {
      return bytes;
    }
  }

  private final List<Data> records = new ArrayList<>();

  IntelHexReader(String text) {
    boolean ended = false;
    long upper = 0;
    for (String line : text.lines().toList()) {
      check(!ended, "a record after the end", line);
      check(line.matches(":([0-9A-F]{2}){5,}"), "not a record", line);
      byte[] bytes = HexFormat.of().parseHex(line.substring(1));
      int sum = 0;
      for (byte b : bytes) {
        sum += b;
      }
      check((sum & 0xFF) == 0, "wrong checksum", line);
      int count = bytes[0] & 0xFF;
      check(bytes.length == count + 5, "wrong length", line);
      int lower = (bytes[1] & 0xFF) << 8 | (bytes[2] & 0xFF);
      byte[] data = Arrays.copyOfRange(bytes, 4, 4 + count);
      switch (bytes[3]) {
        case 0 -> {
          check(lower + count <= 0x1_0000, "runs past 64 KiB", line);
          records.add(new Data(upper + lower, data));
        }
        case 1 -> {
          check(line.equals(":00000001FF"), "not the end record", line);
          ended = true;
        }
        case 4 -> {
          check(count == 2 && lower == 0, "not an upper address", line);
          upper = ((data[0] & 0xFFL) << 8 | (data[1] & 0xFFL)) << 16;
        }
        default -> check(false, "unknown type", line);
      }
    }
    check(ended && text.endsWith("\n"), "no end", text);
  }

  List<Data> records() {
    return records;
  }

  /** The bytes from an address on, which must stand without a gap. */
  byte[] bytesFrom(long address) {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    for (Data record : records) {
      check(record.address() == address + all.size(), "a gap", record.address() + "");
      all.writeBytes(record.bytes());
    }
    return all.toByteArray();
  }

  private static void check(boolean good, String what, String where) {
    if (!good) {
      throw new AssertionError(what + ": " + where);
    }
  }
}
