package lampwright.exporters.proof.rp2040;

import java.util.function.IntBinaryOperator;

/** The core's own port to the pins, and its divider. */
final class Sio extends Block {
  private static final int DIVIDER_CYCLES = 8;

  private int out;
  private int enable;
  private int dividend;
  private int divisor;
  private boolean signed;
  private int quotient;
  private int remainder;
  private boolean dirty;
  private long readyAt;

  Sio(Rp2040 chip) {
    super(chip, "SIO", -1);
    reads("CPUID", () -> 0);
    reads("GPIO_IN", this::levels);
    reads("GPIO_OUT", () -> out);
    reads("GPIO_OE", () -> enable);
    port("", (old, value) -> value);
    port("_SET", (old, value) -> old | value);
    port("_CLR", (old, value) -> old & ~value);
    port("_XOR", (old, value) -> old ^ value);
    divider();
  }

  @Override
  void reset() {
    out = 0;
    enable = 0;
    chip.gpio().put(Gpio.SIO, out, enable);
  }

  private int levels() {
    chip.inputsRead();
    return chip.gpio().inputs(chip.now() - Pio.INPUT_DELAY);
  }

  private void port(String suffix, IntBinaryOperator change) {
    writes(
        "GPIO_OUT" + suffix,
        value -> {
          out = change.applyAsInt(out, value);
          chip.gpio().put(Gpio.SIO, out, enable);
        });
    writes(
        "GPIO_OE" + suffix,
        value -> {
          enable = change.applyAsInt(enable, value);
          chip.gpio().put(Gpio.SIO, out, enable);
        });
  }

  private void divider() {
    reads("DIV_UDIVIDEND", () -> dividend);
    reads("DIV_SDIVIDEND", () -> dividend);
    reads("DIV_UDIVISOR", () -> divisor);
    reads("DIV_SDIVISOR", () -> divisor);
    writes("DIV_UDIVIDEND", value -> divide(value, divisor, false));
    writes("DIV_SDIVIDEND", value -> divide(value, divisor, true));
    writes("DIV_UDIVISOR", value -> divide(dividend, value, false));
    writes("DIV_SDIVISOR", value -> divide(dividend, value, true));
    reads("DIV_QUOTIENT", () -> divided(quotient));
    reads("DIV_REMAINDER", () -> divided(remainder));
    reads(
        "DIV_CSR",
        () ->
            field("DIV_CSR", "READY").at(chip.now() >= readyAt ? 1 : 0)
                | field("DIV_CSR", "DIRTY").at(dirty ? 1 : 0));
  }

  private int divided(int value) {
    if (chip.now() < readyAt) {
      throw chip.fault(base(), "the divider is read before it is ready");
    }
    dirty = false;
    return value;
  }

  private void divide(int newDividend, int newDivisor, boolean asSigned) {
    dividend = newDividend;
    divisor = newDivisor;
    signed = asSigned;
    dirty = true;
    readyAt = chip.now() + DIVIDER_CYCLES;
    if (divisor == 0) {
      quotient = signed && dividend < 0 ? 1 : -1;
      remainder = dividend;
    } else if (signed) {
      quotient = dividend / divisor;
      remainder = dividend % divisor;
    } else {
      quotient = Integer.divideUnsigned(dividend, divisor);
      remainder = Integer.remainderUnsigned(dividend, divisor);
    }
  }
}
