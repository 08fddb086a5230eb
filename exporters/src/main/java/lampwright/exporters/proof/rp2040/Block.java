package lampwright.exporters.proof.rp2040;

import java.util.Arrays;
import java.util.function.BiConsumer;
import java.util.function.IntConsumer;
import java.util.function.IntSupplier;
import java.util.function.IntUnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * A peripheral's registers on the bus. What a peripheral does not say of a register faults when the
 * firmware touches it.
 */
abstract class Block {
  /** Registers beyond lie in no peripheral of ours. */
  private static final int WORDS = 0x1000 / 4;

  final Rp2040 chip;
  private final String table;
  private final int base;
  private final int resetBit;
  private final @Nullable Slot[] slots = new Slot[WORDS];

  /**
   * A peripheral.
   *
   * @param table its name in the table of registers
   * @param base its first address
   * @param resetBit its bit in the resets; -1 if it has none
   */
  Block(Rp2040 chip, String table, int base, int resetBit) {
    this.chip = chip;
    this.table = table;
    this.base = base;
    this.resetBit = resetBit;
    for (Register register : RegisterTable.of(table)) {
      for (int i = 0; i < register.count(); i++) {
        slots[index(register, i)] = new Slot(register, i);
      }
    }
  }

  Block(Rp2040 chip, String table, int resetBit) {
    this(chip, table, RegisterTable.base(table), resetBit);
  }

  private static int index(Register register, int number) {
    return (register.offset() + number * register.stride() & 0xFFFF) / 4 % WORDS;
  }

  final int base() {
    return base;
  }

  final int resetBit() {
    return resetBit;
  }

  /** Puts everything back to how it is after a reset. */
  abstract void reset();

  /** The table's field of a register of this peripheral. */
  final BitField field(String register, String name) {
    return RegisterTable.get(table, register).field(name);
  }

  /** Says how a register is read. */
  final void reads(String name, IntSupplier reader) {
    readsEach(name, number -> reader.getAsInt());
  }

  /** Says how a register is written; only bits that are in fields come. */
  final void writes(String name, IntConsumer writer) {
    writesEach(name, (number, value) -> writer.accept(value));
  }

  final void readsEach(String name, IntUnaryOperator reader) {
    for (Slot slot : slots(name)) {
      slot.reader = reader;
    }
  }

  final void writesEach(String name, BiConsumer<Integer, Integer> writer) {
    for (Slot slot : slots(name)) {
      slot.writer = writer;
    }
  }

  /** Lets a register be written by the aliases that set, clear and toggle bits. */
  final void aliased(String... names) {
    for (String name : names) {
      for (Slot slot : slots(name)) {
        slot.aliased = true;
      }
    }
  }

  /** A register that only keeps what is written; bits of it that must stay 0 fault. */
  final void keeps(String name, int[] values, int mayWrite) {
    readsEach(name, number -> values[number]);
    writesEach(
        name,
        (number, value) -> {
          if ((value & ~mayWrite) != 0) {
            throw chip.fault(base, name + ": " + hex(value) + " is not modelled");
          }
          values[number] = value;
        });
    aliased(name);
  }

  private Slot[] slots(String name) {
    Register register = RegisterTable.get(table, name);
    Slot[] found = new Slot[register.count()];
    for (int i = 0; i < found.length; i++) {
      found[i] = slotAt(index(register, i));
    }
    return found;
  }

  private Slot slotAt(int index) {
    Slot slot = slots[index];
    if (slot == null) {
      throw new IllegalArgumentException(table + " at " + index);
    }
    return slot;
  }

  final int resetValue(String name) {
    return RegisterTable.get(table, name).reset();
  }

  static void fill(int[] values, int value) {
    Arrays.fill(values, value);
  }

  static String hex(int value) {
    return "0x" + Integer.toHexString(value);
  }

  /**
   * Reads a register.
   *
   * @param address the whole of it, for faults
   * @param offset from the base, without alias
   */
  final int read(int address, int offset) {
    Slot slot = slot(address, offset);
    if (slot.reader == null) {
      throw chip.fault(address, "reading " + slot.name() + " is not modelled");
    }
    return slot.reader.applyAsInt(slot.number);
  }

  /**
   * Writes a register.
   *
   * @param alias 0 plain, 1 toggles, 2 sets, 3 clears the bits of the value
   */
  final void write(int address, int offset, int alias, int value) {
    Slot slot = slot(address, offset);
    if (slot.writer == null) {
      throw chip.fault(address, "writing " + slot.name() + " is not modelled");
    }
    if ((value & ~slot.known) != 0 && alias != 3) {
      throw chip.fault(address, slot.name() + ": " + hex(value) + " writes reserved bits");
    }
    int written = value;
    if (alias != 0) {
      if (!slot.aliased || slot.reader == null) {
        throw chip.fault(address, slot.name() + ": writing it by an alias is not modelled");
      }
      int old = slot.reader.applyAsInt(slot.number);
      written =
          switch (alias) {
            case 1 -> old ^ value;
            case 2 -> old | value;
            default -> old & ~value;
          };
    }
    slot.writer.accept(slot.number, written);
  }

  private Slot slot(int address, int offset) {
    Slot slot = offset >= 0 && offset / 4 < WORDS ? slots[offset / 4] : null;
    if (slot == null) {
      throw chip.fault(address, "no register of " + table + " here");
    }
    return slot;
  }

  /** One register of the peripheral, and what it does. */
  private final class Slot {
    private final Register register;
    private final int number;
    private final int known;
    private boolean aliased;
    private @Nullable IntUnaryOperator reader;
    private @Nullable BiConsumer<Integer, Integer> writer;

    Slot(Register register, int number) {
      this.register = register;
      this.number = number;
      this.known = register.known();
    }

    String name() {
      String text = table + " " + register.name();
      return register.count() == 1 ? text : text + " (number " + number + ")";
    }
  }
}
