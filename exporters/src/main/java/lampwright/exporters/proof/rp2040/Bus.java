package lampwright.exporters.proof.rp2040;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.util.HashMap;
import java.util.Map;
import java.util.Random;

/**
 * Memory and the registers of peripherals, by address. Flash answers once its interface is set up;
 * its waiting times and those of the peripherals are not modelled.
 */
final class Bus {
  static final int FLASH = 0x10000000;
  static final int RAM = 0x20000000;
  static final int RAM_BYTES = 264 * 1024;

  /** Where flash and its aliases end. */
  private static final int FLASH_END = 0x14000000;

  private static final VarHandle INT =
      MethodHandles.byteArrayViewVarHandle(int[].class, ByteOrder.LITTLE_ENDIAN);
  private static final VarHandle SHORT =
      MethodHandles.byteArrayViewVarHandle(short[].class, ByteOrder.LITTLE_ENDIAN);

  private static final String NOTHING_WRITTEN = "nothing was written to flash here";

  private final Rp2040 chip;
  private final Flash flash;
  private final byte[] flashBytes;
  private final byte[] ram = noise();
  private final Map<Integer, Block> blocks = new HashMap<>();
  private int loadedAt = RAM;
  private byte[] loaded = new byte[0];
  private boolean flashReady;

  Bus(Rp2040 chip, Flash flash) {
    this.chip = chip;
    this.flash = flash;
    this.flashBytes = flash.bytes();
  }

  /** Nobody may count on what memory holds after power-up. */
  private static byte[] noise() {
    byte[] bytes = new byte[RAM_BYTES];
    new Random(2040).nextBytes(bytes);
    return bytes;
  }

  /**
   * Bytes from the start of memory to the last word that is no longer as it was at power-up, or as
   * the boot ROM left it, below an address.
   */
  int ramUsedBelow(int address) {
    byte[] before = noise();
    System.arraycopy(loaded, 0, before, loadedAt - RAM, loaded.length);
    int end = Math.max(0, Math.min(RAM_BYTES, address - RAM)) & ~3;
    while (end > 0 && (int) INT.get(ram, end - 4) == (int) INT.get(before, end - 4)) {
      end -= 4;
    }
    return end;
  }

  void add(Block block) {
    blocks.put(block.base(), block);
  }

  /** Whether flash can be read as memory. */
  void flashReady(boolean ready) {
    flashReady = ready;
  }

  /** What the boot ROM puts into memory. */
  void load(int address, byte[] bytes) {
    loadedAt = address;
    loaded = bytes.clone();
    System.arraycopy(bytes, 0, ram, address - RAM, bytes.length);
  }

  /** An instruction's half word. */
  int fetch(int address) {
    int inFlash = address - FLASH;
    if (inFlash >= 0 && inFlash < flashBytes.length) {
      checkFlash(address, inFlash);
      return (short) SHORT.get(flashBytes, inFlash) & 0xFFFF;
    }
    int inRam = address - RAM;
    if (inRam >= 0 && inRam < RAM_BYTES) {
      return (short) SHORT.get(ram, inRam) & 0xFFFF;
    }
    throw chip.fault(address, isFlash(address) ? NOTHING_WRITTEN : "nothing to run here");
  }

  int read32(int address) {
    int inRam = address - RAM;
    if (inRam >= 0 && inRam < RAM_BYTES && (address & 3) == 0) {
      return (int) INT.get(ram, inRam);
    }
    checkAligned(address, 3);
    int inFlash = address - FLASH;
    if (inFlash >= 0 && inFlash < flashBytes.length) {
      checkFlash(address, inFlash);
      return (int) INT.get(flashBytes, inFlash);
    }
    return readRegister(address);
  }

  int read16(int address) {
    checkAligned(address, 1);
    int inRam = address - RAM;
    if (inRam >= 0 && inRam < RAM_BYTES) {
      return (short) SHORT.get(ram, inRam) & 0xFFFF;
    }
    int inFlash = address - FLASH;
    if (inFlash >= 0 && inFlash < flashBytes.length) {
      checkFlash(address, inFlash);
      return (short) SHORT.get(flashBytes, inFlash) & 0xFFFF;
    }
    return readRegister(address & ~3) >>> ((address & 2) * 8) & 0xFFFF;
  }

  int read8(int address) {
    int inRam = address - RAM;
    if (inRam >= 0 && inRam < RAM_BYTES) {
      return ram[inRam] & 0xFF;
    }
    int inFlash = address - FLASH;
    if (inFlash >= 0 && inFlash < flashBytes.length) {
      checkFlash(address, inFlash);
      return flashBytes[inFlash] & 0xFF;
    }
    return readRegister(address & ~3) >>> ((address & 3) * 8) & 0xFF;
  }

  void write32(int address, int value) {
    checkAligned(address, 3);
    int inRam = address - RAM;
    if (inRam >= 0 && inRam < RAM_BYTES) {
      INT.set(ram, inRam, value);
    } else {
      writeRegister(address, value);
    }
  }

  void write16(int address, int value) {
    checkAligned(address, 1);
    int inRam = address - RAM;
    if (inRam >= 0 && inRam < RAM_BYTES) {
      SHORT.set(ram, inRam, (short) value);
    } else {
      writeNarrow(address, (value & 0xFFFF) * 0x10001);
    }
  }

  void write8(int address, int value) {
    int inRam = address - RAM;
    if (inRam >= 0 && inRam < RAM_BYTES) {
      ram[inRam] = (byte) value;
    } else {
      writeNarrow(address, (value & 0xFF) * 0x01010101);
    }
  }

  /**
   * Registers take the whole word whatever the width, and the bus repeats narrow data over it
   * (RP2040 datasheet, 2.1.4, narrow IO register writes; from memory).
   */
  private void writeNarrow(int address, int repeated) {
    if ((address >>> 28) != 4 && (address >>> 28) != 5) {
      throw chip.fault(address, "a write of less than a word here is not modelled");
    }
    writeRegister(address & ~3, repeated);
  }

  private static boolean isFlash(int address) {
    return address - FLASH >= 0 && address - FLASH < Flash.MAX_BYTES;
  }

  private void checkAligned(int address, int bits) {
    if ((address & bits) != 0) {
      throw chip.fault(address, "unaligned access");
    }
  }

  private void checkFlash(int address, int offset) {
    if (!flashReady) {
      throw chip.fault(address, "flash is read before its interface is set up");
    }
    if (!flash.isKnown(offset)) {
      throw chip.fault(address, NOTHING_WRITTEN);
    }
  }

  private int readRegister(int address) {
    Block block = block(address);
    return block.read(address, address & 0xFFF);
  }

  private void writeRegister(int address, int value) {
    if (address >>> 28 == 1 && address < FLASH_END) {
      throw chip.fault(address, "write to flash");
    }
    Block block = block(address);
    boolean aliases = address >>> 28 == 4 || address >>> 28 == 5;
    int alias = aliases ? address >>> 12 & 3 : 0;
    block.write(address, address & 0xFFF, alias, value);
    chip.reschedule();
  }

  private Block block(int address) {
    int base =
        switch (address >>> 28) {
          case 4 -> address & ~0x3FFF;
          case 5 -> address & ~0x3FFF;
          default -> address & ~0xFFF;
        };
    Block block = blocks.get(base);
    if (block == null) {
      throw chip.fault(
          address, isFlash(address) ? NOTHING_WRITTEN : "nothing is known at this address");
    }
    if (block.resetBit() >= 0 && chip.resets().holds(block.resetBit())) {
      throw chip.fault(address, "the peripheral is held in reset");
    }
    return block;
  }
}
