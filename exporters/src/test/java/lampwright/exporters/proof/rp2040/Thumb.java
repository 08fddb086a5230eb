package lampwright.exporters.proof.rp2040;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;

/** Instructions of ARMv6-M by hand: ARMv6-M Architecture Reference Manual, A6.7; from memory. */
public final class Thumb {
  private final int start;
  private final List<Integer> halves = new ArrayList<>();

  /** Code that begins at an address of whole words. */
  public Thumb(int start) {
    this.start = start;
  }

  /** Where the next instruction goes. */
  public int here() {
    return start + 2 * halves.size();
  }

  /** Any half words. */
  public Thumb op(int... words) {
    for (int word : words) {
      halves.add(word & 0xFFFF);
    }
    return this;
  }

  /** {@code movs rd, #value}. */
  public Thumb movs(int d, int value) {
    return op(0x2000 | (d << 8) | (value & 0xFF));
  }

  /** {@code mov rd, rm}, any registers. */
  public Thumb mov(int d, int m) {
    return op(0x4600 | ((d & 8) << 4) | (m << 3) | (d & 7));
  }

  /** Any value into a low register, by {@code ldr} from behind a branch. */
  public Thumb load(int d, int value) {
    if ((here() & 2) != 0) {
      op(0xBF00);
    }
    // ldr rd, [pc, #0]; b over the word.
    return op(0x4800 | d << 8, 0xE001, value, value >>> 16);
  }

  /** {@code str rt, [rn, #offset]}. */
  public Thumb str(int t, int n, int offset) {
    return op(0x6000 | ((offset / 4) << 6) | (n << 3) | t);
  }

  /** {@code ldr rt, [rn, #offset]}. */
  public Thumb ldr(int t, int n, int offset) {
    return op(0x6800 | ((offset / 4) << 6) | (n << 3) | t);
  }

  /** {@code b target}. */
  public Thumb b(int target) {
    return op(0xE000 | (((target - here() - 4) / 2) & 0x7FF));
  }

  /** {@code bne target}. */
  public Thumb bne(int target) {
    return op(0xD100 | (((target - here() - 4) / 2) & 0xFF));
  }

  /** A word to a register on the bus; uses r0 and r1. */
  public Thumb poke(int address, int value) {
    return load(0, address).load(1, value).str(1, 0, 0);
  }

  /** Waits until bits of a register are set; uses r0 to r2. */
  public Thumb await(int address, int bits) {
    load(0, address).load(1, bits);
    int again = here();
    ldr(2, 0, 0).op(0x400A).op(0x428A);
    return bne(again);
  }

  /** The code. */
  public byte[] bytes() {
    ByteBuffer bytes = ByteBuffer.allocate(2 * halves.size()).order(ByteOrder.LITTLE_ENDIAN);
    halves.forEach(half -> bytes.putShort(half.shortValue()));
    return bytes.array();
  }
}
