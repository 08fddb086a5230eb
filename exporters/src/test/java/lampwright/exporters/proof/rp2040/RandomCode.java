package lampwright.exporters.proof.rp2040;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Random;

/**
 * A program of random instruction sequences that runs in memory: it loads registers and flags from
 * a record, runs a sequence, and puts registers and flags back into the record.
 */
final class RandomCode {
  static final int SCRATCH = 0x20000000;
  static final int DRIVER = 0x20000100;
  static final int CASES = 0x20000200;
  static final int RECORDS = 0x20002400;
  static final int MEMORY_BYTES = 0x4000;

  private static final int RECORD_BYTES = 60;
  private static final int COUNT = 100;
  private static final int[] SPECIAL = {
    0, 1, -1, 2, 31, 32, 33, 255, 256, 0x7FFFFFFF, 0x80000000, 0x8000, 0xFFFF
  };

  private final Random random;
  private final ByteBuffer memory =
      ByteBuffer.allocate(MEMORY_BYTES).order(ByteOrder.LITTLE_ENDIAN);
  private int exit;

  RandomCode(long seed) {
    random = new Random(seed);
    byte[] scratch = new byte[256];
    random.nextBytes(scratch);
    memory.put(0, scratch);
    driver();
    Thumb cases = new Thumb(CASES);
    for (int i = 0; i < COUNT; i++) {
      record(i, cases.here());
      sequence(cases);
    }
    memory.put(CASES - SCRATCH, cases.bytes());
    if (cases.here() > RECORDS) {
      throw new IllegalStateException("cases up to " + Integer.toHexString(cases.here()));
    }
    record(COUNT, exit);
  }

  /** Memory before the run. */
  byte[] memory() {
    return memory.array().clone();
  }

  /** Where the program goes in the end. */
  int exit() {
    return exit;
  }

  private void driver() {
    Thumb code = new Thumb(DRIVER).load(0, RECORDS).mov(13, 0);
    int loop = code.here();
    code.op(0xBC3F).mov(8, 1).mov(9, 2).mov(10, 3).mov(11, 4).mov(12, 5);
    Thumb rest = new Thumb(code.here()).load(6, 0).mov(14, 6).op(0xF380, 0x8800, 0xBDFF);
    int back = rest.here();
    code.load(6, back | 1).mov(14, 6).op(0xF380, 0x8800, 0xBDFF);
    code.op(0xB4FF, 0xF3EF, 0x8600).mov(1, 8).mov(2, 9).mov(3, 10).mov(4, 11).mov(5, 12);
    code.op(0xB47E, 0xB00E).b(loop);
    if ((code.here() & 2) != 0) {
      code.op(0xBF00);
    }
    exit = code.here();
    int block = 0x200001E0;
    // Semihosting: open "ram" to write, write memory, exit (Arm semihosting, calls 1, 5, 0x18).
    code.movs(0, 1).load(1, block).op(0xBEAB);
    code.load(1, block + 12).str(0, 1, 0).movs(0, 5).op(0xBEAB);
    code.movs(0, 0x18).load(1, 0x20026).op(0xBEAB).b(code.here());
    memory.put(DRIVER - SCRATCH, code.bytes());
    int at = block - SCRATCH;
    memory.putInt(at, block + 24).putInt(at + 4, 5).putInt(at + 8, 3);
    memory.putInt(at + 16, SCRATCH).putInt(at + 20, MEMORY_BYTES);
    memory.put(at + 24, new byte[] {'r', 'a', 'm', 0});
  }

  private void record(int number, int code) {
    int at = RECORDS - SCRATCH + number * RECORD_BYTES;
    memory.putInt(at, random.nextInt(16) << 28);
    for (int i = 1; i < 14; i++) {
      memory.putInt(at + 4 * i, value());
    }
    memory.putInt(at + 4 * 3, SCRATCH + 4 * random.nextInt(16));
    memory.putInt(at + 56, code | 1);
  }

  private int value() {
    return random.nextInt(3) == 0 ? SPECIAL[random.nextInt(SPECIAL.length)] : random.nextInt();
  }

  private int low() {
    return random.nextInt(8);
  }

  /** Any register that a sequence may change: r10 is where scratch memory is. */
  private int high() {
    int register = random.nextInt(12);
    return register >= 10 ? register + 1 : register;
  }

  private void sequence(Thumb code) {
    for (int i = 0; i < 8; i++) {
      step(code);
    }
    code.op(0x4770);
  }

  private void step(Thumb code) {
    switch (random.nextInt(16)) {
      case 0, 1 -> code.op(random.nextInt(0x1800));
      case 2, 3 -> code.op(0x1800 | random.nextInt(0x800));
      case 4, 5 -> code.op(0x2000 | random.nextInt(0x2000));
      case 6, 7, 8, 9 -> code.op(0x4000 | random.nextInt(0x400));
      case 10 -> highRegisters(code);
      case 11 -> code.op(0xB200 | random.nextInt(0x100));
      case 12 -> code.op(0xBA00 | new int[] {0, 1, 3}[random.nextInt(3)] << 6 | random.nextInt(64));
      case 13 -> branches(code);
      default -> memory(code);
    }
  }

  private void highRegisters(Thumb code) {
    switch (random.nextInt(6)) {
      case 0 -> add(code, high(), high());
      case 1 -> code.mov(high(), high());
      case 2 -> code.mov(low(), 15);
      case 3 -> add(code, high(), 15);
      case 4 -> {
        int n = random.nextInt(13);
        int m = 8 + random.nextInt(5);
        code.op(0x4500 | ((n & 8) << 4) | (m << 3) | (n & 7));
      }
      default -> code.op(0xA000 | random.nextInt(0x1000));
    }
  }

  private static void add(Thumb code, int d, int m) {
    code.op(0x4400 | ((d & 8) << 4) | (m << 3) | (d & 7));
  }

  private void branches(Thumb code) {
    if (random.nextInt(3) == 0) {
      // A call to what follows, and where it would come back to.
      code.mov(11, 14).op(0xF000, 0xF800).mov(3, 14).mov(14, 11);
    } else {
      code.op(0xD000 | random.nextInt(14) << 8).op(0x3000 | random.nextInt(0x800));
    }
  }

  private void memory(Thumb code) {
    int offset = 4 * random.nextInt(8);
    code.mov(7, 10);
    switch (random.nextInt(7)) {
      case 0 -> {
        int shift = new int[] {2, 1, 0, 0, 2, 1, 0, 1}[offset / 4];
        int kind = offset / 4;
        code.movs(6, random.nextInt(16) << shift);
        code.op(0x5000 | kind << 9 | 6 << 6 | 7 << 3 | random.nextInt(6));
      }
      case 1 -> code.op(0x6000 | random.nextInt(32) << 6 | 7 << 3 | random.nextInt(6));
      case 2 -> code.op(0x6800 | random.nextInt(32) << 6 | 7 << 3 | random.nextInt(6));
      case 3 ->
          code.op(0x7000 | random.nextInt(2) << 11 | random.nextInt(32) << 6 | 7 << 3 | low());
      case 4 ->
          code.op(0x8000 | random.nextInt(2) << 11 | random.nextInt(32) << 6 | 7 << 3 | low());
      case 5 -> code.op(0xC000 | random.nextInt(2) << 11 | 7 << 8 | 1 + random.nextInt(0x7F));
      default -> {
        int list = 1 + random.nextInt(0xFF);
        code.op(0xB400 | list).op(0xBC00 | list).op(0x9800 | (random.nextInt(0x700) & 0x700) | 2);
        code.op(0xB080 | offset / 4).op(0xB000 | offset / 4);
      }
    }
  }
}
