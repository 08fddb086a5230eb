package lampwright.exporters.proof.rp2040;

/** Which peripherals are held in reset. What is let go is ready at once. */
final class Resets extends Block {
  static final int DMA = bit("DMA");
  static final int IO_BANK0 = bit("IO_BANK0");
  static final int PADS_BANK0 = bit("PADS_BANK0");
  static final int PIO0 = bit("PIO0");
  static final int PIO1 = bit("PIO1");
  static final int PLL_SYS = bit("PLL_SYS");
  static final int PLL_USB = bit("PLL_USB");
  static final int PWM = bit("PWM");
  static final int TIMER = bit("TIMER");

  private final int all;
  private int held;

  Resets(Rp2040 chip) {
    super(chip, "RESETS", -1);
    all = RegisterTable.get("RESETS", "RESET").known();
    reads("RESET", () -> held);
    writes("RESET", this::hold);
    aliased("RESET");
    reads("RESET_DONE", () -> ~held & all);
  }

  private static int bit(String name) {
    return RegisterTable.get("RESETS", "RESET").field(name).low();
  }

  boolean holds(int bit) {
    return (held >>> bit & 1) != 0;
  }

  /** Lets a peripheral go, as the boot ROM does. */
  void release(String name) {
    held &= ~field("RESET", name).mask();
  }

  private void hold(int value) {
    int changed = value ^ held;
    held = value;
    for (int bit = 0; bit < 32; bit++) {
      if ((changed >>> bit & 1) != 0) {
        chip.resetBlock(bit);
      }
    }
  }

  @Override
  void reset() {
    held = resetValue("RESET");
  }
}
