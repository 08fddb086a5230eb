package lampwright.exporters.table;

import java.io.IOException;
import java.io.OutputStream;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * Gathers small writes into blocks of 64 KiB. Writers of many small items ask for room, put the
 * bytes into the block themselves and say where they ended.
 */
final class BlockOutput {
  /** Puts the low byte of a number first, then the higher ones: 2, 4 or 8 bytes at once. */
  static final VarHandle SHORT =
      MethodHandles.byteArrayViewVarHandle(short[].class, ByteOrder.LITTLE_ENDIAN);

  static final VarHandle INT =
      MethodHandles.byteArrayViewVarHandle(int[].class, ByteOrder.LITTLE_ENDIAN);

  static final VarHandle LONG =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);

  private static final int BLOCK_BYTES = 1 << 16;

  private final OutputStream out;
  private final byte[] block = new byte[BLOCK_BYTES];
  private int end;

  BlockOutput(OutputStream out) {
    this.out = out;
  }

  /**
   * Makes room.
   *
   * @param bytes 1 to 64 KiB
   * @return where the room begins in {@link #block}
   */
  int reserve(int bytes) throws IOException {
    if (BLOCK_BYTES - end < bytes) {
      flush();
    }
    return end;
  }

  /** Where the bytes that are kept end in {@link #block}. */
  int end() {
    return end;
  }

  byte[] block() {
    return block;
  }

  /** Keeps what was put into the block before this place; the room past it is free again. */
  void keepTo(int newEnd) {
    end = newEnd;
  }

  void bytes(byte[] source, int from, int count) throws IOException {
    if (count > BLOCK_BYTES) {
      flush();
      out.write(source, from, count);
      return;
    }
    int at = reserve(count);
    System.arraycopy(source, from, block, at, count);
    end = at + count;
  }

  /** Writes text of ASCII characters. */
  void text(String ascii) throws IOException {
    byte[] encoded = ascii.getBytes(StandardCharsets.US_ASCII);
    bytes(encoded, 0, encoded.length);
  }

  /** Writes text of ASCII characters and a line feed. */
  void line(String ascii) throws IOException {
    text(ascii);
    text("\n");
  }

  void flush() throws IOException {
    out.write(block, 0, end);
    end = 0;
  }
}
