package lampwright.exporters.proof.rp2040;

import java.math.BigDecimal;
import lampwright.engine.time.Ratio;

/** A phase-locked loop on the crystal. Its limits: RP2040 datasheet 2.18.2; from memory. */
final class Pll extends Block {
  /** PLL_USB's registers are as PLL_SYS's, here. */
  static final int USB_BASE = 0x4002C000;

  private static final Ratio LEAST_REFERENCE = Ratio.of(5_000_000);
  private static final Ratio LEAST_OSCILLATOR = Ratio.of(750_000_000);
  private static final Ratio GREATEST_OSCILLATOR = Ratio.of(1_600_000_000);
  private static final int LEAST_FEEDBACK = 16;
  private static final int GREATEST_FEEDBACK = 320;

  /** Ours: long enough that firmware which does not wait for the lock is found. */
  private static final Ratio LOCKS_IN = Ratio.of(new BigDecimal("0.00005"));

  private final Crystal crystal;
  private final BitField divider = field("CS", "REFDIV");
  private final BitField lock = field("CS", "LOCK");
  private final BitField bypass = field("CS", "BYPASS");
  private final int corePower = field("PWR", "PD").mask() | field("PWR", "VCOPD").mask();
  private final BitField outputPower = field("PWR", "POSTDIVPD");
  private final BitField first = field("PRIM", "POSTDIV1");
  private final BitField second = field("PRIM", "POSTDIV2");

  private int control;
  private int power;
  private int feedback;
  private int dividers;
  private long lockedAt;

  Pll(Rp2040 chip, Crystal crystal, int base, int resetBit) {
    super(chip, "PLL_SYS", base, resetBit);
    this.crystal = crystal;
    reads("CS", () -> control | (locked() ? lock.mask() : 0));
    writes("CS", value -> change(() -> control = value & ~lock.mask()));
    reads("PWR", () -> power);
    writes("PWR", value -> change(() -> power = value));
    reads("FBDIV_INT", () -> feedback);
    writes("FBDIV_INT", value -> change(() -> feedback = value));
    reads("PRIM", () -> dividers);
    writes("PRIM", value -> change(() -> dividers = value));
    aliased("CS", "PWR", "FBDIV_INT", "PRIM");
  }

  @Override
  void reset() {
    if (chip.clocks().uses(this)) {
      throw chip.fault(base(), "a PLL is reset while a clock uses it");
    }
    control = resetValue("CS");
    power = resetValue("PWR");
    feedback = resetValue("FBDIV_INT");
    dividers = resetValue("PRIM");
    lockedAt = Clocked.NEVER;
  }

  private void change(Runnable change) {
    int before = power & corePower;
    int wasFeedback = feedback;
    int wasDivider = divider.of(control);
    int wasDividers = dividers;
    change.run();
    if (bypass.isSet(control)) {
      throw chip.fault(base(), "a PLL that is bypassed is not modelled");
    }
    if (wasDividers != dividers && chip.clocks().uses(this)) {
      throw chip.fault(base(), "a PLL's dividers change while a clock uses it");
    }
    if ((power & corePower) != 0) {
      lockedAt = Clocked.NEVER;
    } else if (before != 0 || wasFeedback != feedback || wasDivider != divider.of(control)) {
      begin();
    }
    if (lockedAt == Clocked.NEVER && chip.clocks().uses(this)) {
      throw chip.fault(base(), "a PLL is switched off while a clock uses it");
    }
  }

  private void begin() {
    if (!crystal.stable()) {
      throw chip.fault(base(), "a PLL is started before the crystal is stable");
    }
    if (divider.of(control) == 0 || feedback < LEAST_FEEDBACK || feedback > GREATEST_FEEDBACK) {
      throw chip.fault(base(), "a PLL is started with a feedback of " + feedback);
    }
    if (reference().compareTo(LEAST_REFERENCE) < 0
        || oscillator().compareTo(LEAST_OSCILLATOR) < 0
        || oscillator().compareTo(GREATEST_OSCILLATOR) > 0) {
      throw chip.fault(
          base(), "a PLL's oscillator is out of its range: " + Clocks.megahertz(oscillator()));
    }
    lockedAt = chip.now() + chip.cycles(LOCKS_IN);
  }

  private Ratio reference() {
    return Crystal.HERTZ.over(Ratio.of(divider.of(control)));
  }

  private Ratio oscillator() {
    return reference().times(feedback);
  }

  boolean locked() {
    return chip.now() >= lockedAt;
  }

  /** What comes out. */
  Ratio hertz() {
    if (!locked()) {
      throw chip.fault(base(), "a PLL is used before it has locked");
    }
    if (outputPower.isSet(power) || first.of(dividers) == 0 || second.of(dividers) == 0) {
      throw chip.fault(base(), "a PLL is used whose dividers are off");
    }
    return oscillator().over(Ratio.of((long) first.of(dividers) * second.of(dividers)));
  }
}
