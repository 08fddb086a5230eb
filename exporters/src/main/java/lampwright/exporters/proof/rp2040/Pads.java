package lampwright.exporters.proof.rp2040;

/** The pads of the pins: what of them is let out and in. */
final class Pads extends Block {
  private final Gpio gpio;
  private final BitField noOutput = field("GPIO0", "OD");
  private final BitField input = field("GPIO0", "IE");
  private final BitField pullUp = field("GPIO0", "PUE");
  private final int[] control = new int[Gpio.PINS];

  private int disabled;
  private int inputs;
  private int up;

  Pads(Rp2040 chip, Gpio gpio) {
    super(chip, "PADS_BANK0", Resets.PADS_BANK0);
    this.gpio = gpio;
    readsEach("GPIO0", pin -> control[pin]);
    writesEach(
        "GPIO0",
        (pin, value) -> {
          control[pin] = value;
          gather();
        });
    aliased("GPIO0");
  }

  @Override
  void reset() {
    fill(control, resetValue("GPIO0"));
    gather();
  }

  private void gather() {
    disabled = 0;
    inputs = 0;
    up = 0;
    for (int pin = 0; pin < Gpio.PINS; pin++) {
      disabled |= noOutput.of(control[pin]) << pin;
      inputs |= input.of(control[pin]) << pin;
      up |= pullUp.of(control[pin]) << pin;
    }
    gpio.settle();
  }

  /** Pins that put nothing out. */
  int disabled() {
    return disabled;
  }

  /** Pins whose level comes in. */
  int inputs() {
    return inputs;
  }

  /** Pins that are pulled up. */
  int up() {
    return up;
  }
}
