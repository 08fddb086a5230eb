package lampwright.exporters.proof.rp2040;

/**
 * The Cortex-M0+ core: all of ARMv6-M's Thumb instructions with the cycles of a core that
 * multiplies in one and waits for nothing (ARM DDI 0484, table 3-1; from memory).
 */
final class Cpu {
  static final int SP = 13;
  static final int LR = 14;

  private static final int THUMB_BIT = 1 << 24;

  /** From memory, as the table. */
  private static final int EXCEPTION_ENTRY_CYCLES = 15;

  private static final int EXCEPTION_RETURN_CYCLES = 13;

  private final Rp2040 chip;
  private final Bus bus;
  private final int[] r = new int[16];

  private boolean negative;
  private boolean zero;
  private boolean carry;
  private boolean overflow;
  private boolean masked;
  private boolean processStack;
  private int otherStack;

  /** The lowest that a stack pointer has been, as an unsigned address. */
  private int lowestStack = -1;

  private int exception;

  /** The instruction that runs, and the next. */
  private int current;

  private int next;

  /** Set by instructions that end the run of instructions: waiting, masks, returns. */
  private boolean attention;

  private Waiting waiting = Waiting.NOT;
  private boolean event;

  /** What the core waits for. */
  enum Waiting {
    NOT,
    INTERRUPT,
    EVENT
  }

  Cpu(Rp2040 chip, Bus bus) {
    this.chip = chip;
    this.bus = bus;
  }

  /** Begins at an instruction, with a stack pointer. */
  void start(int address, int stack) {
    r[SP] = stack & ~3;
    next = address & ~1;
    r[LR] = 0;
  }

  int pc() {
    return current;
  }

  int next() {
    return next;
  }

  int register(int number) {
    return number == SP ? r[SP] : r[number];
  }

  void register(int number, int value) {
    r[number] = value;
  }

  /** The lowest address that a stack has reached; -1, the highest, if there was none. */
  int lowestStack() {
    return lowestStack;
  }

  private void stack(int address) {
    r[SP] = address;
    if (Integer.compareUnsigned(address, lowestStack) < 0) {
      lowestStack = address;
    }
  }

  /** Number of the exception that is served; 0 if none. */
  int exception() {
    return exception;
  }

  boolean masked() {
    return masked;
  }

  Waiting waiting() {
    return waiting;
  }

  void wake() {
    if (waiting == Waiting.EVENT) {
      event = false;
    }
    waiting = Waiting.NOT;
  }

  /** What {@code SEV}, or an interrupt with SEVONPEND, does. */
  void signal() {
    event = true;
  }

  boolean signalled() {
    return event;
  }

  /** Whether the last instruction asks to look at exceptions and waiting; asked once. */
  boolean takeAttention() {
    boolean was = attention;
    attention = false;
    return was;
  }

  boolean attention() {
    return attention;
  }

  int flags() {
    return (negative ? 1 << 31 : 0)
        | (zero ? 1 << 30 : 0)
        | (carry ? 1 << 29 : 0)
        | (overflow ? 1 << 28 : 0);
  }

  void flags(int value) {
    negative = value < 0;
    zero = (value & 1 << 30) != 0;
    carry = (value & 1 << 29) != 0;
    overflow = (value & 1 << 28) != 0;
  }

  /** Runs one instruction. Returns its cycles. */
  int step() {
    int pc = next;
    current = pc;
    int op = bus.fetch(pc);
    next = pc + 2;
    switch (Opcode.of(op)) {
      case Opcode.LSL_IMM -> {
        int by = op >>> 6 & 31;
        int value = r[op >>> 3 & 7];
        if (by != 0) {
          carry = (value >>> (32 - by) & 1) != 0;
        }
        r[op & 7] = result(value << by);
      }
      case Opcode.LSR_IMM -> {
        int by = op >>> 6 & 31;
        int value = r[op >>> 3 & 7];
        carry = (by == 0 ? value < 0 : (value >>> (by - 1) & 1) != 0);
        r[op & 7] = result(by == 0 ? 0 : value >>> by);
      }
      case Opcode.ASR_IMM -> {
        int by = op >>> 6 & 31;
        int value = r[op >>> 3 & 7];
        carry = (by == 0 ? value < 0 : (value >>> (by - 1) & 1) != 0);
        r[op & 7] = result(value >> (by == 0 ? 31 : by));
      }
      case Opcode.ADD_REG -> r[op & 7] = add(r[op >>> 3 & 7], r[op >>> 6 & 7], 0);
      case Opcode.SUB_REG -> r[op & 7] = add(r[op >>> 3 & 7], ~r[op >>> 6 & 7], 1);
      case Opcode.ADD_3 -> r[op & 7] = add(r[op >>> 3 & 7], op >>> 6 & 7, 0);
      case Opcode.SUB_3 -> r[op & 7] = add(r[op >>> 3 & 7], ~(op >>> 6 & 7), 1);
      case Opcode.MOV_8 -> r[op >>> 8 & 7] = result(op & 0xFF);
      case Opcode.CMP_8 -> add(r[op >>> 8 & 7], ~(op & 0xFF), 1);
      case Opcode.ADD_8 -> r[op >>> 8 & 7] = add(r[op >>> 8 & 7], op & 0xFF, 0);
      case Opcode.SUB_8 -> r[op >>> 8 & 7] = add(r[op >>> 8 & 7], ~(op & 0xFF), 1);
      case Opcode.DATA -> data(op);
      case Opcode.ADD_HIGH -> {
        int to = (op & 7) | (op >>> 4 & 8);
        return moveHigh(to, high(to, pc) + high(op >>> 3 & 15, pc));
      }
      case Opcode.CMP_HIGH -> add(r[(op & 7) | (op >>> 4 & 8)], ~r[op >>> 3 & 15], 1);
      case Opcode.MOV_HIGH -> {
        return moveHigh((op & 7) | (op >>> 4 & 8), high(op >>> 3 & 15, pc));
      }
      case Opcode.BX -> {
        return branchTo(r[op >>> 3 & 15], 2);
      }
      case Opcode.BLX -> {
        int target = r[op >>> 3 & 15];
        r[LR] = next | 1;
        return branchTo(target, 2);
      }
      case Opcode.LDR_PC -> {
        r[op >>> 8 & 7] = bus.read32((pc + 4 & ~3) + (op & 0xFF) * 4);
        return 2;
      }
      case Opcode.STR -> {
        return store32(r[op >>> 3 & 7] + r[op >>> 6 & 7], r[op & 7]);
      }
      case Opcode.STRH -> {
        bus.write16(r[op >>> 3 & 7] + r[op >>> 6 & 7], r[op & 7]);
        return 2;
      }
      case Opcode.STRB -> {
        bus.write8(r[op >>> 3 & 7] + r[op >>> 6 & 7], r[op & 7]);
        return 2;
      }
      case Opcode.LDRSB -> {
        r[op & 7] = (byte) bus.read8(r[op >>> 3 & 7] + r[op >>> 6 & 7]);
        return 2;
      }
      case Opcode.LDR -> {
        return load32(op & 7, r[op >>> 3 & 7] + r[op >>> 6 & 7]);
      }
      case Opcode.LDRH -> {
        r[op & 7] = bus.read16(r[op >>> 3 & 7] + r[op >>> 6 & 7]);
        return 2;
      }
      case Opcode.LDRB -> {
        r[op & 7] = bus.read8(r[op >>> 3 & 7] + r[op >>> 6 & 7]);
        return 2;
      }
      case Opcode.LDRSH -> {
        r[op & 7] = (short) bus.read16(r[op >>> 3 & 7] + r[op >>> 6 & 7]);
        return 2;
      }
      case Opcode.STR_5 -> {
        return store32(r[op >>> 3 & 7] + (op >>> 6 & 31) * 4, r[op & 7]);
      }
      case Opcode.LDR_5 -> {
        return load32(op & 7, r[op >>> 3 & 7] + (op >>> 6 & 31) * 4);
      }
      case Opcode.STRB_5 -> {
        bus.write8(r[op >>> 3 & 7] + (op >>> 6 & 31), r[op & 7]);
        return 2;
      }
      case Opcode.LDRB_5 -> {
        r[op & 7] = bus.read8(r[op >>> 3 & 7] + (op >>> 6 & 31));
        return 2;
      }
      case Opcode.STRH_5 -> {
        bus.write16(r[op >>> 3 & 7] + (op >>> 6 & 31) * 2, r[op & 7]);
        return 2;
      }
      case Opcode.LDRH_5 -> {
        r[op & 7] = bus.read16(r[op >>> 3 & 7] + (op >>> 6 & 31) * 2);
        return 2;
      }
      case Opcode.STR_SP -> {
        return store32(r[SP] + (op & 0xFF) * 4, r[op >>> 8 & 7]);
      }
      case Opcode.LDR_SP -> {
        return load32(op >>> 8 & 7, r[SP] + (op & 0xFF) * 4);
      }
      case Opcode.ADR -> r[op >>> 8 & 7] = (pc + 4 & ~3) + (op & 0xFF) * 4;
      case Opcode.ADD_RD_SP -> r[op >>> 8 & 7] = r[SP] + (op & 0xFF) * 4;
      case Opcode.ADD_SP -> r[SP] += (op & 0x7F) * 4;
      case Opcode.SUB_SP -> stack(r[SP] - (op & 0x7F) * 4);
      case Opcode.EXTEND -> r[op & 7] = extend(op >>> 6 & 3, r[op >>> 3 & 7]);
      case Opcode.REVERSE -> r[op & 7] = reverse(op >>> 6 & 3, r[op >>> 3 & 7]);
      case Opcode.PUSH -> {
        return push(op);
      }
      case Opcode.POP -> {
        return pop(op);
      }
      case Opcode.STM -> {
        return storeMany(op);
      }
      case Opcode.LDM -> {
        return loadMany(op);
      }
      case Opcode.B_COND -> {
        if (holds(op >>> 8 & 15)) {
          next = pc + 4 + ((byte) op) * 2;
          return 2;
        }
      }
      case Opcode.B -> {
        next = pc + 4 + (op << 21 >> 20);
        return 2;
      }
      case Opcode.CPS -> {
        masked = (op & 16) != 0;
        attention = true;
      }
      case Opcode.HINT -> {
        return hint(op >>> 4 & 15);
      }
      case Opcode.SVC -> {
        chip.nvic().pendSupervisorCall();
        attention = true;
      }
      case Opcode.LONG -> {
        return longInstruction(op, pc);
      }
      case Opcode.BKPT -> throw chip.fault(pc, "breakpoint " + (op & 0xFF));
      default -> throw chip.fault(pc, "undefined instruction " + Block.hex(op));
    }
    return 1;
  }

  private int result(int value) {
    negative = value < 0;
    zero = value == 0;
    return value;
  }

  private int add(int a, int b, int carryIn) {
    int sum = a + b + carryIn;
    carry = (a & 0xFFFFFFFFL) + (b & 0xFFFFFFFFL) + carryIn > 0xFFFFFFFFL;
    overflow = ((a ^ sum) & (b ^ sum)) < 0;
    return result(sum);
  }

  private void data(int op) {
    int d = op & 7;
    int a = r[d];
    int b = r[op >>> 3 & 7];
    switch (op >>> 6 & 15) {
      case 0 -> r[d] = result(a & b);
      case 1 -> r[d] = result(a ^ b);
      case 2 -> r[d] = result(shiftLeft(a, b & 0xFF));
      case 3 -> r[d] = result(shiftRight(a, b & 0xFF));
      case 4 -> r[d] = result(shiftSigned(a, b & 0xFF));
      case 5 -> r[d] = add(a, b, carry ? 1 : 0);
      case 6 -> r[d] = add(a, ~b, carry ? 1 : 0);
      case 7 -> r[d] = result(rotate(a, b & 0xFF));
      case 8 -> result(a & b);
      case 9 -> r[d] = add(0, ~b, 1);
      case 10 -> add(a, ~b, 1);
      case 11 -> add(a, b, 0);
      case 12 -> r[d] = result(a | b);
      case 13 -> r[d] = result(a * b);
      case 14 -> r[d] = result(a & ~b);
      default -> r[d] = result(~b);
    }
  }

  private int shiftLeft(int value, int by) {
    if (by == 0) {
      return value;
    }
    carry = by <= 32 && (value >>> (32 - by) & 1) != 0;
    return by < 32 ? value << by : 0;
  }

  private int shiftRight(int value, int by) {
    if (by == 0) {
      return value;
    }
    carry = by <= 32 && (value >>> (by - 1) & 1) != 0;
    return by < 32 ? value >>> by : 0;
  }

  private int shiftSigned(int value, int by) {
    if (by == 0) {
      return value;
    }
    carry = (by <= 32 ? value >> (by - 1) & 1 : value >>> 31) != 0;
    return value >> Math.min(by, 31);
  }

  private int rotate(int value, int by) {
    if (by == 0) {
      return value;
    }
    int rotated = Integer.rotateRight(value, by);
    carry = rotated < 0;
    return rotated;
  }

  private static int extend(int kind, int value) {
    return switch (kind) {
      case 0 -> (short) value;
      case 1 -> (byte) value;
      case 2 -> value & 0xFFFF;
      default -> value & 0xFF;
    };
  }

  private static int reverse(int kind, int value) {
    int bytes = Integer.reverseBytes(value);
    return switch (kind) {
      case 0 -> bytes;
      case 1 -> Integer.rotateRight(bytes, 16);
      default -> bytes >> 16;
    };
  }

  private int high(int number, int pc) {
    return number == 15 ? pc + 4 : r[number];
  }

  private int moveHigh(int to, int value) {
    if (to == 15) {
      next = value & ~1;
      return 2;
    }
    if (to == SP) {
      stack(value & ~3);
    } else {
      r[to] = value;
    }
    return 1;
  }

  private int branchTo(int target, int cycles) {
    if (exception != 0 && target >>> 28 == 15) {
      returnFromException(target);
      return EXCEPTION_RETURN_CYCLES;
    }
    if ((target & 1) == 0) {
      throw chip.fault(target, "a branch out of Thumb state");
    }
    next = target & ~1;
    return cycles;
  }

  private int load32(int to, int address) {
    r[to] = bus.read32(address);
    return cycles(address);
  }

  private int store32(int address, int value) {
    bus.write32(address, value);
    return cycles(address);
  }

  /** The pins' own port answers at once. */
  private static int cycles(int address) {
    return address >>> 28 == 13 ? 1 : 2;
  }

  private int push(int op) {
    int count = Integer.bitCount(op & 0x1FF);
    int address = r[SP] - 4 * count;
    stack(address);
    for (int i = 0; i < 8; i++) {
      if ((op >>> i & 1) != 0) {
        bus.write32(address, r[i]);
        address += 4;
      }
    }
    if ((op & 0x100) != 0) {
      bus.write32(address, r[LR]);
    }
    return 1 + count;
  }

  private int pop(int op) {
    int count = Integer.bitCount(op & 0x1FF);
    int address = r[SP];
    for (int i = 0; i < 8; i++) {
      if ((op >>> i & 1) != 0) {
        r[i] = bus.read32(address);
        address += 4;
      }
    }
    r[SP] += 4 * count;
    if ((op & 0x100) != 0) {
      return branchTo(bus.read32(address), 3 + count);
    }
    return 1 + count;
  }

  private int storeMany(int op) {
    int base = op >>> 8 & 7;
    int address = r[base];
    for (int i = 0; i < 8; i++) {
      if ((op >>> i & 1) != 0) {
        bus.write32(address, r[i]);
        address += 4;
      }
    }
    r[base] = address;
    return 1 + Integer.bitCount(op & 0xFF);
  }

  private int loadMany(int op) {
    int base = op >>> 8 & 7;
    int address = r[base];
    for (int i = 0; i < 8; i++) {
      if ((op >>> i & 1) != 0) {
        r[i] = bus.read32(address);
        address += 4;
      }
    }
    if ((op >>> base & 1) == 0) {
      r[base] = address;
    }
    return 1 + Integer.bitCount(op & 0xFF);
  }

  private boolean holds(int condition) {
    return switch (condition) {
      case 0 -> zero;
      case 1 -> !zero;
      case 2 -> carry;
      case 3 -> !carry;
      case 4 -> negative;
      case 5 -> !negative;
      case 6 -> overflow;
      case 7 -> !overflow;
      case 8 -> carry && !zero;
      case 9 -> !carry || zero;
      case 10 -> negative == overflow;
      case 11 -> negative != overflow;
      case 12 -> !zero && negative == overflow;
      default -> zero || negative != overflow;
    };
  }

  private int hint(int kind) {
    switch (kind) {
      case 2 -> {
        if (event) {
          event = false;
        } else {
          waiting = Waiting.EVENT;
        }
        attention = true;
        return 2;
      }
      case 3 -> {
        waiting = Waiting.INTERRUPT;
        attention = true;
        return 2;
      }
      case 4 -> event = true;
      default -> {
        // NOP and YIELD do nothing.
      }
    }
    return 1;
  }

  private int longInstruction(int op, int pc) {
    int second = bus.fetch(pc + 2);
    next = pc + 4;
    if ((second & 0xD000) == 0xD000) {
      int s = op >>> 10 & 1;
      int i1 = ~(second >>> 13 ^ s) & 1;
      int i2 = ~(second >>> 11 ^ s) & 1;
      int offset = s << 24 | i1 << 23 | i2 << 22 | (op & 0x3FF) << 12 | (second & 0x7FF) << 1;
      r[LR] = next | 1;
      next += offset << 7 >> 7;
      return 3;
    }
    if ((op & 0xFFE0) == 0xF380 && (second & 0xFF00) == 0x8800 && (op & 15) < 15) {
      special(second & 0xFF, r[op & 15]);
      return 3;
    }
    if (op == 0xF3EF && (second & 0xF000) == 0x8000) {
      r[second >>> 8 & 15] = special(second & 0xFF);
      return 3;
    }
    int barrier = second & 0xFFF0;
    if (op == 0xF3BF && (barrier == 0x8F40 || barrier == 0x8F50 || barrier == 0x8F60)) {
      return 3;
    }
    throw chip.fault(pc, "undefined instruction " + Block.hex(op << 16 | second));
  }

  private int special(int number) {
    return switch (number) {
      case 0, 1, 2, 3 -> flags() | ((number & 1) != 0 ? exception : 0);
      case 5 -> exception;
      case 6, 7 -> 0;
      case 8 -> processStack ? otherStack : r[SP];
      case 9 -> processStack ? r[SP] : otherStack;
      case 16 -> masked ? 1 : 0;
      case 20 -> processStack ? 2 : 0;
      default -> throw chip.fault(current, "special register " + number + " is not known");
    };
  }

  private void special(int number, int value) {
    switch (number) {
      case 0, 1, 2, 3 -> flags(value);
      case 5, 6, 7 -> {
        // read only
      }
      case 8 -> setStack(false, value);
      case 9 -> setStack(true, value);
      case 16 -> {
        masked = (value & 1) != 0;
        attention = true;
      }
      case 20 -> {
        if ((value & 1) != 0) {
          throw chip.fault(current, "running without privilege is not modelled");
        }
        if (exception == 0) {
          useProcessStack((value & 2) != 0);
        }
      }
      default -> throw chip.fault(current, "special register " + number + " is not known");
    }
  }

  private void setStack(boolean process, int value) {
    if (process == processStack) {
      r[SP] = value & ~3;
    } else {
      otherStack = value & ~3;
    }
  }

  private void useProcessStack(boolean process) {
    if (process != processStack) {
      int swap = r[SP];
      r[SP] = otherStack;
      otherStack = swap;
      processStack = process;
    }
  }

  /** Stacks the state and goes to an exception's handler. Returns the cycles. */
  int enter(int number) {
    int frame = r[SP] - 32 & ~7;
    int align = r[SP] - 32 & 4;
    bus.write32(frame, r[0]);
    bus.write32(frame + 4, r[1]);
    bus.write32(frame + 8, r[2]);
    bus.write32(frame + 12, r[3]);
    bus.write32(frame + 16, r[12]);
    bus.write32(frame + 20, r[LR]);
    bus.write32(frame + 24, next);
    bus.write32(frame + 28, flags() | THUMB_BIT | align << 7 | exception);
    stack(frame);
    r[LR] = exception != 0 ? 0xFFFFFFF1 : processStack ? 0xFFFFFFFD : 0xFFFFFFF9;
    useProcessStack(false);
    exception = number;
    waiting = Waiting.NOT;
    int handler = bus.read32(chip.nvic().vectors() + 4 * number);
    if ((handler & 1) == 0) {
      throw chip.fault(handler, "the vector of exception " + number + " is no Thumb address");
    }
    next = handler & ~1;
    return EXCEPTION_ENTRY_CYCLES;
  }

  private void returnFromException(int target) {
    boolean nested = target == 0xFFFFFFF1;
    if (!nested && target != 0xFFFFFFF9 && target != 0xFFFFFFFD) {
      throw chip.fault(target, "no return from an exception");
    }
    chip.nvic().leave(exception);
    exception = 0;
    useProcessStack(target == 0xFFFFFFFD);
    int frame = r[SP];
    r[0] = bus.read32(frame);
    r[1] = bus.read32(frame + 4);
    r[2] = bus.read32(frame + 8);
    r[3] = bus.read32(frame + 12);
    r[12] = bus.read32(frame + 16);
    r[LR] = bus.read32(frame + 20);
    next = bus.read32(frame + 24) & ~1;
    int status = bus.read32(frame + 28);
    flags(status);
    exception = status & 63;
    if (nested == (exception == 0)) {
      throw chip.fault(target, "the return from an exception does not fit the stacked state");
    }
    r[SP] = frame + 32 + ((status >>> 9 & 1) << 2);
    event = true;
    attention = true;
    if (exception == 0 && chip.nvic().sleepsOnExit()) {
      waiting = Waiting.INTERRUPT;
    }
  }
}
