package lampwright.exporters.packed.format;

import java.util.Arrays;

/** A growing little-endian byte list. */
public final class ByteSink {
  private byte[] bytes = new byte[256];
  private int size;

  public int size() {
    return size;
  }

  public ByteSink u8(int value) {
    if (size == bytes.length) {
      bytes = Arrays.copyOf(bytes, size * 2);
    }
    bytes[size++] = (byte) value;
    return this;
  }

  public ByteSink u16(int value) {
    return u8(value).u8(value >> 8);
  }

  public ByteSink u24(int value) {
    return u16(value).u8(value >> 16);
  }

  /** A number of the given count of bytes. */
  public ByteSink number(int value, int count) {
    for (int i = 0; i < count; i++) {
      u8(value >> (8 * i));
    }
    return this;
  }

  public ByteSink all(byte[] more) {
    for (byte b : more) {
      u8(b);
    }
    return this;
  }

  /** Overwrites a number written before. */
  public void set(int at, int value, int count) {
    for (int i = 0; i < count; i++) {
      bytes[at + i] = (byte) (value >> (8 * i));
    }
  }

  public byte[] toBytes() {
    return Arrays.copyOf(bytes, size);
  }
}
