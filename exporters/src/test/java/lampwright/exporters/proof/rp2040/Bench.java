package lampwright.exporters.proof.rp2040;

import java.util.ArrayList;
import java.util.List;

/** A controller whose core does nothing, and whose registers a test reads and writes. */
final class Bench {
  /** Aliases of registers that set and clear bits: RP2040 datasheet, 2.1.2. */
  static final int SET = 0x2000;

  static final int CLEAR = 0x3000;

  static final int RESETS = 0x4000C000;
  static final int PIO0 = 0x50200000;
  static final int DMA = 0x50000000;
  static final int PWM = 0x40050000;

  /** DMA, IO_BANK0, PADS_BANK0, PIO0, PIO1, PWM, TIMER, PLL_SYS: the SVD file's RESETS. */
  static final int USUAL =
      1 << 2 | 1 << 5 | 1 << 8 | 1 << 10 | 1 << 11 | 1 << 14 | 1 << 21 | 1 << 12;

  final List<String> edges = new ArrayList<>();
  final Rp2040 chip;

  Bench() {
    chip =
        new Rp2040(
            TestImages.flash(new Thumb(TestImages.STAGE).b(TestImages.STAGE).bytes()),
            (pin, level, cycle) -> edges.add(cycle + " " + pin + " " + level));
    edges.clear();
  }

  /** One whose peripherals are out of reset. */
  static Bench released() {
    Bench bench = new Bench();
    bench.write(RESETS + CLEAR, USUAL);
    return bench;
  }

  void write(int address, int value) {
    chip.bus().write32(address, value);
  }

  int read(int address) {
    return chip.bus().read32(address);
  }

  void run(long cycles) {
    chip.run(chip.cycle() + cycles, () -> false);
  }

  /** A pin to a function: 4 PWM, 5 SIO, 6 PIO0. */
  void pin(int pin, int function) {
    write(0x40014004 + 8 * pin, function);
  }

  /** Sets up crystal, PLL and tick as firmware does, waiting for each. */
  void clocks() {
    crystal();
    run(20_000);
    write(0x40008030, 2);
    write(0x4005802C, 1 << 9 | 12);
    pll();
    run(20_000);
    write(0x4000803C + SET, 1);
  }

  void crystal() {
    write(0x4002400C, 47);
    write(0x40024000, 0xFAB << 12 | 0xAA0);
  }

  void pll() {
    write(0x40028000, 1);
    write(0x40028008, 125);
    write(0x40028004 + CLEAR, 1 | 1 << 5);
    write(0x4002800C, 6 << 16 | 2 << 12);
    write(0x40028004 + CLEAR, 1 << 3);
  }
}
