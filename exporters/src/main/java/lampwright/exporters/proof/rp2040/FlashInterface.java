package lampwright.exporters.proof.rp2040;

/**
 * The serial interface to flash, as far as a second boot stage sets it up to read with the command
 * that every flash chip knows: 03h, one line, 24 address bits.
 */
final class FlashInterface extends Block {
  private static final int READ_COMMAND = 0x03;
  private static final int EIGHT_BITS = 2;
  private static final int ADDRESS_NIBBLES = 6;
  private static final int WORD_BITS_LESS_1 = 31;
  private static final int EEPROM_READ = 3;

  private final int[] control0 = new int[1];
  private final int[] control1 = new int[1];
  private final int[] divider = new int[1];
  private final int[] select = new int[1];
  private final int[] command = new int[1];
  private final int[] sampleDelay = new int[1];
  private final BitField enable = field("SSIENR", "SSI_EN");
  private int enabled;

  FlashInterface(Rp2040 chip) {
    super(chip, "SSI", -1);
    set("CTRLR0", control0);
    set("CTRLR1", control1);
    set("BAUDR", divider);
    set("SER", select);
    set("SPI_CTRLR0", command);
    set("RX_SAMPLE_DLY", sampleDelay);
    reads("SSIENR", () -> enabled);
    writes("SSIENR", this::enable);
    reads("SR", () -> field("SR", "TFE").mask() | field("SR", "TFNF").mask());
  }

  private void set(String name, int[] value) {
    reads(name, () -> value[0]);
    writes(
        name,
        written -> {
          if (enable.isSet(enabled)) {
            throw chip.fault(base(), "SSI " + name + " is written while the interface is enabled");
          }
          value[0] = written;
        });
  }

  /** The boot ROM leaves it on, as it has read flash itself. */
  @Override
  void reset() {
    enabled = enable.mask();
    select[0] = 1;
  }

  private void enable(int value) {
    enabled = value;
    if (enable.isSet(value)) {
      check("BAUDR", divider[0], "SCKDV", -1);
      check("CTRLR0", control0[0], "DFS_32", WORD_BITS_LESS_1);
      check("CTRLR0", control0[0], "TMOD", EEPROM_READ);
      check("CTRLR0", control0[0], "SPI_FRF", 0);
      check("SPI_CTRLR0", command[0], "XIP_CMD", READ_COMMAND);
      check("SPI_CTRLR0", command[0], "INST_L", EIGHT_BITS);
      check("SPI_CTRLR0", command[0], "ADDR_L", ADDRESS_NIBBLES);
      check("SPI_CTRLR0", command[0], "WAIT_CYCLES", 0);
      check("SPI_CTRLR0", command[0], "TRANS_TYPE", 0);
      check("SER", select[0], "SER", 1);
    }
    chip.bus().flashReady(enable.isSet(value));
  }

  /** What else there is to set is not known to read flash. */
  private void check(String register, int value, String name, int needed) {
    int is = field(register, name).of(value);
    boolean fits = needed < 0 ? is >= 2 && is % 2 == 0 : is == needed;
    if (!fits) {
      throw chip.fault(
          base(), "SSI " + register + "." + name + " is " + is + ": reading flash so is not known");
    }
  }
}
