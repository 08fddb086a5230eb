package lampwright.exporters.proof.rp2040;

import java.util.Arrays;

/**
 * What the boot ROM does before flash's own code runs: it copies the first 256 bytes of flash to
 * the end of memory, and runs them if their last word is the CRC-32 of the others. From memory:
 * RP2040 datasheet, 2.8.
 */
final class BootRom {
  static final int STAGE_BYTES = 256;
  private static final int STAGE_ADDRESS = 0x20041F00;
  private static final int POLYNOMIAL = 0x04C11DB7;

  private final Rp2040 chip;
  private final Flash flash;

  BootRom(Rp2040 chip, Flash flash) {
    this.chip = chip;
    this.flash = flash;
  }

  void run() {
    if (!flash.isKnown(0)) {
      throw chip.fault(Bus.FLASH, "flash is empty: the boot ROM waits for a file");
    }
    byte[] stage = Arrays.copyOf(flash.bytes(), STAGE_BYTES);
    int sum = 0;
    for (int i = 0; i < 4; i++) {
      sum |= (stage[STAGE_BYTES - 4 + i] & 0xFF) << (8 * i);
    }
    if (checksum(stage, STAGE_BYTES - 4) != sum) {
      throw chip.fault(
          Bus.FLASH, "the second boot stage's checksum is wrong: the boot ROM waits for a file");
    }
    chip.bus().load(STAGE_ADDRESS, stage);
    chip.resets().release("IO_QSPI");
    chip.resets().release("PADS_QSPI");
    chip.cpu().start(STAGE_ADDRESS, STAGE_ADDRESS);
  }

  /** CRC-32, not reflected, from all ones, not inverted at the end. */
  static int checksum(byte[] bytes, int length) {
    int sum = -1;
    for (int i = 0; i < length; i++) {
      sum ^= bytes[i] << 24;
      for (int bit = 0; bit < 8; bit++) {
        sum = sum < 0 ? sum << 1 ^ POLYNOMIAL : sum << 1;
      }
    }
    return sum;
  }
}
