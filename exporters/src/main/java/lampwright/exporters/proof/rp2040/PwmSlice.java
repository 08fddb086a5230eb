package lampwright.exporters.proof.rp2040;

/**
 * One slice: counts to its top and begins anew, and its outputs are up while the count is below
 * their compare values. Those and the top are taken over when the count begins anew, or at once
 * while it is stopped (RP2040 datasheet, 4.5; from memory). It goes from change to change in one
 * step.
 */
final class PwmSlice {
  private static final BitField ENABLE = field("CH0_CSR", "EN");
  private static final BitField MODE = field("CH0_CSR", "DIVMODE");
  private static final BitField CENTRED = field("CH0_CSR", "PH_CORRECT");
  private static final BitField A_INVERTED = field("CH0_CSR", "A_INV");
  private static final BitField B_INVERTED = field("CH0_CSR", "B_INV");
  private static final BitField ADVANCE = field("CH0_CSR", "PH_ADV");
  private static final BitField RETARD = field("CH0_CSR", "PH_RET");
  private static final BitField COMPARE_A = field("CH0_CC", "A");
  private static final BitField COMPARE_B = field("CH0_CC", "B");
  private static final BitField WHOLE = field("CH0_DIV", "INT");
  private static final BitField PART = field("CH0_DIV", "FRAC");

  private final Rp2040 chip;
  private final Pwm pwm;
  private final int number;

  private int control;
  private int divider;
  private int compare;
  private int top;
  private int usedCompare;
  private int usedTop;

  /** The count was {@code from} at cycle {@code since}; a count takes {@code step} / 16 cycles. */
  private int from;

  private long since;
  private long step;
  private long due;

  /** Parts of 16 of a cycle by which the count began later than since. */
  private int carry;

  PwmSlice(Rp2040 chip, Pwm pwm, int number) {
    this.chip = chip;
    this.pwm = pwm;
    this.number = number;
  }

  private static BitField field(String register, String name) {
    return RegisterTable.get("PWM", register).field(name);
  }

  void reset() {
    control = 0;
    divider = RegisterTable.get("PWM", "CH0_DIV").reset();
    compare = 0;
    top = RegisterTable.get("PWM", "CH0_TOP").reset();
    from = 0;
    since = chip.now();
    carry = 0;
    divided();
    takeOver();
  }

  boolean runs() {
    return ENABLE.isSet(control);
  }

  int control() {
    return control;
  }

  void control(int value) {
    if (MODE.of(value) != 0
        || CENTRED.isSet(value)
        || ADVANCE.isSet(value)
        || RETARD.isSet(value)) {
      throw chip.fault(
          pwm.base(), "PWM slice " + number + ": " + Block.hex(value) + " is not modelled");
    }
    hold();
    control = value;
    changed();
  }

  void run(boolean on) {
    if (on != runs()) {
      control((control & ~ENABLE.mask()) | (on ? ENABLE.mask() : 0));
    }
  }

  int divider() {
    return divider;
  }

  void divider(int value) {
    hold();
    divider = value;
    divided();
    changed();
  }

  private void divided() {
    int whole = WHOLE.of(divider);
    step = (whole == 0 ? 256 : whole) * 16L + PART.of(divider);
  }

  int counter() {
    return runs() ? from + (int) Math.max(0, ((chip.now() - since) * 16 - carry) / step) : from;
  }

  void counter(int value) {
    from = value;
    since = chip.now();
    carry = 0;
    changed();
  }

  int compare() {
    return compare;
  }

  void compare(int value) {
    compare = value;
    changed();
  }

  int top() {
    return top;
  }

  void top(int value) {
    top = value;
    changed();
  }

  private void hold() {
    from = counter();
    since = chip.now();
    carry = 0;
  }

  private void changed() {
    if (!runs()) {
      takeOver();
    }
    show();
  }

  private void takeOver() {
    usedCompare = compare;
    usedTop = top;
    show();
  }

  private void show() {
    int count = counter();
    int a = count < COMPARE_A.of(usedCompare) ? 1 : 0;
    int b = count < COMPARE_B.of(usedCompare) ? 1 : 0;
    pwm.levels(number, (a ^ A_INVERTED.of(control)) | (b ^ B_INVERTED.of(control)) << 1);
    plan(count);
  }

  private void plan(int count) {
    if (!runs()) {
      due = Clocked.NEVER;
      return;
    }
    int next = usedTop + 1;
    next = earlier(next, COMPARE_A.of(usedCompare), count);
    next = earlier(next, COMPARE_B.of(usedCompare), count);
    if (next <= count) {
      // Set beyond its top: it counts on to its end.
      next = 0x10000;
    }
    due = since + (carry + (next - from) * step + 15) / 16;
  }

  private static int earlier(int next, int compare, int count) {
    return compare > count && compare < next ? compare : next;
  }

  long due() {
    return due;
  }

  /** Goes to the next change. */
  void step() {
    int count = counter();
    if (count > usedTop) {
      // The fraction of a cycle that has gone by goes on counting.
      long wrapped = carry + (count - from) * step;
      since += wrapped / 16;
      carry = (int) (wrapped % 16);
      from = 0;
      takeOver();
      pwm.wrapped(number);
    } else {
      show();
    }
  }
}
