package lampwright.exporters.proof.rp2040;

import java.util.List;
import java.util.Locale;
import lampwright.engine.time.Ratio;
import org.jspecify.annotations.Nullable;

/** The clock tree, as far as core, peripherals and timer use it. */
final class Clocks extends Block {
  /** Of the ring oscillator, typically; it is good for starting up alone. RP2040 datasheet 2.17. */
  private static final Ratio RING_HERTZ = Ratio.of(6_500_000);

  /** RP2040 datasheet, 2.15.1: greatest system clock. */
  private static final Ratio GREATEST = Ratio.of(133_000_000);

  private static final int FROM_REFERENCE = 0;
  private static final int RING = 0;
  private static final int XTAL = 2;
  private static final int AUX_PLL_SYS = 0;
  private static final int AUX_PLL_USB = 1;
  private static final int AUX_RING = 2;
  private static final int AUX_XTAL = 3;

  private final Crystal crystal;
  private final Pll pllSys;
  private final Pll pllUsb;
  private final BitField referenceSource = field("CLK_REF_CTRL", "SRC");
  private final BitField referenceDivider = field("CLK_REF_DIV", "INT");
  private final BitField systemSource = field("CLK_SYS_CTRL", "SRC");
  private final BitField systemAux = field("CLK_SYS_CTRL", "AUXSRC");
  private final BitField systemWhole = field("CLK_SYS_DIV", "INT");
  private final BitField systemPart = field("CLK_SYS_DIV", "FRAC");
  private final int[] peripheral = new int[1];
  private final int[] resuscitation = new int[1];

  private int referenceControl;
  private int referenceDiv;
  private int systemControl;
  private int systemDiv;
  private Ratio reference = RING_HERTZ;
  private Ratio system = RING_HERTZ;
  private long changedAt;

  Clocks(Rp2040 chip) {
    super(chip, "CLOCKS", -1);
    crystal = new Crystal(chip);
    pllSys = new Pll(chip, crystal, RegisterTable.base("PLL_SYS"), Resets.PLL_SYS);
    pllUsb = new Pll(chip, crystal, Pll.USB_BASE, Resets.PLL_USB);
    reads("CLK_REF_CTRL", () -> referenceControl);
    writes("CLK_REF_CTRL", value -> change(() -> referenceControl = value));
    reads("CLK_REF_DIV", () -> referenceDiv);
    writes("CLK_REF_DIV", value -> change(() -> referenceDiv = value));
    reads("CLK_REF_SELECTED", () -> 1 << referenceSource.of(referenceControl));
    reads("CLK_SYS_CTRL", () -> systemControl);
    writes("CLK_SYS_CTRL", value -> change(() -> selectSystem(value)));
    reads("CLK_SYS_DIV", () -> systemDiv);
    writes("CLK_SYS_DIV", value -> change(() -> systemDiv = value));
    reads("CLK_SYS_SELECTED", () -> 1 << systemSource.of(systemControl));
    aliased("CLK_REF_CTRL", "CLK_REF_DIV", "CLK_SYS_CTRL", "CLK_SYS_DIV");
    keeps("CLK_PERI_CTRL", peripheral, -1);
    keeps("CLK_SYS_RESUS_CTRL", resuscitation, field("CLK_SYS_RESUS_CTRL", "TIMEOUT").mask());
  }

  @Override
  void reset() {
    referenceControl = resetValue("CLK_REF_CTRL");
    referenceDiv = resetValue("CLK_REF_DIV");
    systemControl = resetValue("CLK_SYS_CTRL");
    systemDiv = resetValue("CLK_SYS_DIV");
    peripheral[0] = 0;
    resuscitation[0] = resetValue("CLK_SYS_RESUS_CTRL");
  }

  Crystal crystal() {
    return crystal;
  }

  List<Pll> plls() {
    return List.of(pllSys, pllUsb);
  }

  /** The system clock, Hz. */
  Ratio system() {
    return system;
  }

  /** The reference clock, Hz. */
  Ratio reference() {
    return reference;
  }

  long changedAt() {
    return changedAt;
  }

  boolean uses(Pll pll) {
    return pll == usedPll();
  }

  boolean usesCrystal() {
    return referenceSource.of(referenceControl) == XTAL
        || (systemSource.of(systemControl) != FROM_REFERENCE
            && systemAux.of(systemControl) != AUX_RING);
  }

  private @Nullable Pll usedPll() {
    if (systemSource.of(systemControl) == FROM_REFERENCE) {
      return null;
    }
    return switch (systemAux.of(systemControl)) {
      case AUX_PLL_SYS -> pllSys;
      case AUX_PLL_USB -> pllUsb;
      default -> null;
    };
  }

  private void selectSystem(int value) {
    boolean aux = systemSource.of(value) != FROM_REFERENCE;
    if (aux && systemAux.of(value) != systemAux.of(systemControl)) {
      throw chip.fault(
          base(), "CLK_SYS_CTRL: the auxiliary source changes while it is, or becomes, the clock");
    }
    systemControl = value;
  }

  private void change(Runnable change) {
    chip.timer().holdTime();
    change.run();
    Ratio was = system;
    reference = source().over(Ratio.of(whole(referenceDivider.of(referenceDiv), 4)));
    Ratio divider =
        Ratio.of(whole(systemWhole.of(systemDiv), 1 << 24) * 256L + systemPart.of(systemDiv))
            .over(Ratio.of(256));
    system = auxiliary().over(divider);
    if (system.compareTo(GREATEST) > 0) {
      throw chip.fault(base(), "the system clock would be " + megahertz(system));
    }
    if (!was.equals(system)) {
      changedAt = chip.now();
    }
    chip.timer().resumeTime();
  }

  /** A frequency in words. */
  static String megahertz(Ratio hertz) {
    return String.format(Locale.ROOT, "%.3f MHz", hertz.doubleValue() / 1_000_000);
  }

  private static long whole(int value, long forZero) {
    return value == 0 ? forZero : value;
  }

  private Ratio source() {
    return switch (referenceSource.of(referenceControl)) {
      case RING -> RING_HERTZ;
      case XTAL -> crystalHertz();
      default -> throw chip.fault(base(), "CLK_REF_CTRL: this source is not modelled");
    };
  }

  private Ratio auxiliary() {
    if (systemSource.of(systemControl) == FROM_REFERENCE) {
      return reference;
    }
    return switch (systemAux.of(systemControl)) {
      case AUX_PLL_SYS -> pllSys.hertz();
      case AUX_PLL_USB -> pllUsb.hertz();
      case AUX_RING -> RING_HERTZ;
      case AUX_XTAL -> crystalHertz();
      default -> throw chip.fault(base(), "CLK_SYS_CTRL: this source is not modelled");
    };
  }

  private Ratio crystalHertz() {
    if (!crystal.stable()) {
      throw chip.fault(base(), "a clock is taken from the crystal before it is stable");
    }
    return Crystal.HERTZ;
  }
}
