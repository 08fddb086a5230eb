package lampwright.exporters.proof.rp2040;

/** SysTick: counts system clock cycles down, 24 bits. */
final class SystemTick implements Clocked {
  private final Rp2040 chip;
  private final Nvic nvic;
  private final BitField enable;
  private final BitField interrupt;
  private final BitField source;
  private final BitField flag;

  private int control;
  private int reload;
  private long zeroAt;
  private int held;
  private boolean passed;

  SystemTick(Rp2040 chip, Nvic nvic) {
    this.chip = chip;
    this.nvic = nvic;
    this.enable = nvic.field("SYST_CSR", "ENABLE");
    this.interrupt = nvic.field("SYST_CSR", "TICKINT");
    this.source = nvic.field("SYST_CSR", "CLKSOURCE");
    this.flag = nvic.field("SYST_CSR", "COUNTFLAG");
  }

  void registers(Nvic block) {
    block.reads("SYST_CSR", this::control);
    block.writes("SYST_CSR", this::control);
    block.reads("SYST_RVR", () -> reload);
    block.writes("SYST_RVR", value -> reload = value);
    block.reads("SYST_CVR", this::current);
    block.writes("SYST_CVR", value -> clear());
  }

  void reset() {
    control = 0;
    reload = 0;
    held = 0;
    passed = false;
    zeroAt = NEVER;
  }

  private int control() {
    int value = control | (passed ? flag.mask() : 0);
    passed = false;
    return value;
  }

  private void control(int value) {
    boolean was = enable.isSet(control);
    held = current();
    control = value & ~flag.mask();
    if (enable.isSet(control)) {
      if (!source.isSet(control)) {
        throw chip.fault(nvic.base(), "SysTick by the reference clock is not modelled");
      }
      if (!was) {
        start(held == 0 ? reload + 1L : held);
      }
    } else {
      zeroAt = NEVER;
    }
  }

  private void start(long cycles) {
    zeroAt = reload == 0 ? NEVER : chip.now() + cycles;
  }

  private void clear() {
    held = 0;
    passed = false;
    if (enable.isSet(control)) {
      start(reload + 1L);
    }
  }

  private int current() {
    if (zeroAt == NEVER) {
      return held;
    }
    long left = zeroAt - chip.now();
    return left > reload ? 0 : (int) left;
  }

  @Override
  public long due() {
    return zeroAt;
  }

  @Override
  public void run(long cycle) {
    passed = true;
    zeroAt = reload == 0 ? NEVER : cycle + reload + 1;
    if (interrupt.isSet(control)) {
      nvic.pendSystemTick();
    }
  }
}
