package lampwright.exporters.packed;

import java.util.Arrays;

/** A growing little-endian byte list. */
final class ByteSink {
  private byte[] bytes = new byte[256];
  private int size;

  int size() {
    return size;
  }

  ByteSink u8(int value) {
    if (size == bytes.length) {
      bytes = Arrays.copyOf(bytes, size * 2);
    }
    bytes[size++] = (byte) value;
    return this;
  }

  ByteSink u16(int value) {
    return u8(value).u8(value >> 8);
  }

  ByteSink u24(int value) {
    return u16(value).u8(value >> 16);
  }

  /** A number of the given count of bytes. */
  ByteSink number(int value, int count) {
    for (int i = 0; i < count; i++) {
      u8(value >> (8 * i));
    }
    return this;
  }

  ByteSink all(byte[] more) {
    for (byte b : more) {
      u8(b);
    }
    return this;
  }

  /** Overwrites a number written before. */
  void set(int at, int value, int count) {
    for (int i = 0; i < count; i++) {
      bytes[at + i] = (byte) (value >> (8 * i));
    }
  }

  byte[] toBytes() {
    return Arrays.copyOf(bytes, size);
  }
}
