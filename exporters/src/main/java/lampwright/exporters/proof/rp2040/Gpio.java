package lampwright.exporters.proof.rp2040;

import java.util.Arrays;

/** The bank of pins: who drives each, and what comes in. */
final class Gpio extends Block {
  static final int PINS = 30;
  static final int ALL = (1 << PINS) - 1;

  /** Function numbers: RP2040 datasheet, table 279; from memory. */
  static final int PWM = 4;

  static final int SIO = 5;
  static final int PIO0 = 6;
  private static final int PIO1 = 7;
  private static final int NONE = 31;

  private static final int FUNCTIONS = 32;
  private static final int INVERT = 1;
  private static final int LOW = 2;
  private static final int HISTORY = 8;

  private final PinListener listener;
  private final Pads pads;
  private final BitField function = field("GPIO0_CTRL", "FUNCSEL");
  private final BitField outOver = field("GPIO0_CTRL", "OUTOVER");
  private final BitField oeOver = field("GPIO0_CTRL", "OEOVER");
  private final BitField inOver = field("GPIO0_CTRL", "INOVER");
  private final BitField irqOver = field("GPIO0_CTRL", "IRQOVER");
  private final int[] control = new int[PINS];

  /** By function: pins that have it, what it would put out, and where it would. */
  private final int[] has = new int[FUNCTIONS];

  private final int[] out = new int[FUNCTIONS];
  private final int[] drives = new int[FUNCTIONS];

  private int outInvert;
  private int outForce;
  private int outForced;
  private int oeInvert;
  private int oeForce;
  private int oeForced;
  private int level;
  private int driven;
  private int outside;
  private int outsideDriven;

  private final long[] changedAt = new long[HISTORY];
  private final int[] inputs = new int[HISTORY];
  private int newest;

  Gpio(Rp2040 chip, PinListener listener) {
    super(chip, "IO_BANK0", Resets.IO_BANK0);
    this.listener = listener;
    this.pads = new Pads(chip, this);
    // Before the first change it was always so.
    Arrays.fill(changedAt, Long.MIN_VALUE);
    readsEach("GPIO0_CTRL", pin -> control[pin]);
    writesEach("GPIO0_CTRL", this::control);
    aliased("GPIO0_CTRL");
  }

  Pads pads() {
    return pads;
  }

  @Override
  void reset() {
    fill(control, resetValue("GPIO0_CTRL"));
    select();
  }

  /** What a function puts on the pins: levels, and where it drives at all. */
  void put(int number, int levels, int where) {
    out[number] = levels;
    drives[number] = where;
    settle();
  }

  /** A level from outside. */
  void drive(int pin, boolean high) {
    outsideDriven |= 1 << pin;
    outside = high ? outside | 1 << pin : outside & ~(1 << pin);
    settle();
  }

  private void control(int pin, int value) {
    if (inOver.isSet(value) || irqOver.isSet(value)) {
      throw chip.fault(base(), "GPIO" + pin + "_CTRL: overrides of inputs are not modelled");
    }
    int chosen = function.of(value);
    if (chosen != PWM && chosen != SIO && chosen != PIO0 && chosen != PIO1 && chosen != NONE) {
      throw chip.fault(base(), "GPIO" + pin + "_CTRL: function " + chosen + " is not modelled");
    }
    control[pin] = value;
    select();
  }

  private void select() {
    fill(has, 0);
    outInvert = 0;
    outForce = 0;
    outForced = 0;
    oeInvert = 0;
    oeForce = 0;
    oeForced = 0;
    for (int pin = 0; pin < PINS; pin++) {
      int bit = 1 << pin;
      has[function.of(control[pin])] |= bit;
      int over = outOver.of(control[pin]);
      outInvert |= over == INVERT ? bit : 0;
      outForce |= over >= LOW ? bit : 0;
      outForced |= over > LOW ? bit : 0;
      int enable = oeOver.of(control[pin]);
      oeInvert |= enable == INVERT ? bit : 0;
      oeForce |= enable >= LOW ? bit : 0;
      oeForced |= enable > LOW ? bit : 0;
    }
    settle();
  }

  /** Works out the pins anew, and tells of those that changed. */
  void settle() {
    int levels = 0;
    int enables = 0;
    for (int f = PWM; f <= PIO1; f++) {
      levels |= out[f] & has[f];
      enables |= drives[f] & has[f];
    }
    levels = ((levels ^ outInvert) & ~outForce) | outForced;
    enables = (((enables ^ oeInvert) & ~oeForce) | oeForced) & ~pads.disabled();
    levels &= enables;
    int changed = ((levels ^ level) | (enables ^ driven)) & ALL;
    level = levels;
    driven = enables;
    for (int left = changed; left != 0; left &= left - 1) {
      int pin = Integer.numberOfTrailingZeros(left);
      listener.changed(pin, levelOf(pin), chip.now());
    }
    int in =
        ((levels & enables)
                | (~enables & ((outsideDriven & outside) | (~outsideDriven & pads.up()))))
            & pads.inputs();
    if (in != inputs[newest]) {
      // Of several changes in one cycle the last is what it is.
      if (changedAt[newest] != chip.now()) {
        newest = (newest + 1) % HISTORY;
      }
      inputs[newest] = in;
      changedAt[newest] = chip.now();
      chip.pio(0).inputsChanged();
      chip.pio(1).inputsChanged();
    }
  }

  private PinListener.Level levelOf(int pin) {
    if ((driven >>> pin & 1) == 0) {
      return PinListener.Level.OPEN;
    }
    return (level >>> pin & 1) != 0 ? PinListener.Level.HIGH : PinListener.Level.LOW;
  }

  /** What came in until a cycle. */
  int inputs(long cycle) {
    for (int back = 0; back < HISTORY - 1; back++) {
      int at = (newest + HISTORY - back) % HISTORY;
      if (changedAt[at] <= cycle) {
        return inputs[at];
      }
    }
    throw chip.fault(base(), "inputs change more often than the model follows");
  }
}
