package lampwright.exporters.packed.encode;

import lampwright.exporters.packed.format.ByteSink;

/** Writes bits, the most significant first. */
final class BitSink {
  private final ByteSink out;
  private int held;
  private int count;

  BitSink(ByteSink out) {
    this.out = out;
  }

  void put(int value, int width) {
    for (int i = width - 1; i >= 0; i--) {
      held = held << 1 | ((value >> i) & 1);
      if (++count == 8) {
        out.u8(held);
        held = 0;
        count = 0;
      }
    }
  }

  /** Fills the last byte with zeros. */
  void flush() {
    while (count != 0) {
      put(0, 1);
    }
  }
}
