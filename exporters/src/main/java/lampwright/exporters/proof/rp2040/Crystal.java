package lampwright.exporters.proof.rp2040;

import lampwright.engine.time.Ratio;

/** The oscillator of the crystal. */
final class Crystal extends Block {
  /** What boards of the usual form carry; the boot ROM's USB needs it, too. */
  static final Ratio HERTZ = Ratio.of(12_000_000);

  private static final int ENABLE = 0xFAB;
  private static final int DISABLE = 0xD1E;
  private static final int RANGE_1_TO_15_MHZ = 0xAA0;

  private final BitField enable = field("CTRL", "ENABLE");
  private final BitField range = field("CTRL", "FREQ_RANGE");
  private final BitField delay = field("STARTUP", "DELAY");
  private final BitField fourfold = field("STARTUP", "X4");

  private int control;
  private int startup;
  private long stableAt;

  Crystal(Rp2040 chip) {
    super(chip, "XOSC", -1);
    reads("CTRL", () -> control);
    writes("CTRL", this::control);
    aliased("CTRL");
    reads("STARTUP", () -> startup);
    writes("STARTUP", value -> startup = value);
    aliased("STARTUP");
    reads("STATUS", this::status);
  }

  @Override
  void reset() {
    control = 0;
    startup = 0;
    stableAt = Clocked.NEVER;
  }

  boolean stable() {
    return chip.now() >= stableAt;
  }

  private void control(int value) {
    control = value;
    if (range.of(value) != RANGE_1_TO_15_MHZ && range.of(value) != 0) {
      throw chip.fault(base(), "XOSC CTRL: range " + hex(range.of(value)) + " is not known");
    }
    switch (enable.of(value)) {
      case ENABLE -> start();
      case DISABLE -> {
        if (chip.clocks().usesCrystal()) {
          throw chip.fault(base(), "the crystal is switched off while a clock uses it");
        }
        stableAt = Clocked.NEVER;
      }
      case 0 -> {
        // the range alone
      }
      default ->
          throw chip.fault(base(), "XOSC CTRL: enable " + hex(enable.of(value)) + " is not known");
    }
  }

  private void start() {
    if (range.of(control) != RANGE_1_TO_15_MHZ) {
      throw chip.fault(base(), "XOSC is enabled without its range");
    }
    if (delay.of(startup) == 0) {
      throw chip.fault(base(), "XOSC is enabled without a start-up delay");
    }
    if (stableAt == Clocked.NEVER) {
      long periods = delay.of(startup) * 256L * (fourfold.isSet(startup) ? 4 : 1);
      stableAt = chip.now() + chip.cycles(Ratio.of(periods).over(HERTZ));
    }
  }

  private int status() {
    int value = field("STATUS", "FREQ_RANGE").at(0);
    if (stableAt != Clocked.NEVER) {
      value |= field("STATUS", "ENABLED").mask();
    }
    if (stable()) {
      value |= field("STATUS", "STABLE").mask();
    }
    return value;
  }
}
