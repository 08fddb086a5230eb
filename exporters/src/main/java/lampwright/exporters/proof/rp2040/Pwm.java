package lampwright.exporters.proof.rp2040;

/** Eight slices that put out two pulse widths each. */
final class Pwm extends Block implements Clocked {
  static final int SLICES = 8;

  private final PwmSlice[] slices = new PwmSlice[SLICES];
  private final int[] asked = new int[SLICES];
  private int raised;
  private int enabled;
  private int forced;
  private int levels;
  private boolean changed;
  private long due = NEVER;

  Pwm(Rp2040 chip) {
    super(chip, "PWM", Resets.PWM);
    for (int i = 0; i < SLICES; i++) {
      slices[i] = new PwmSlice(chip, this, i);
    }
    readsEach("CH0_CSR", slice -> slices[slice].control());
    writesEach("CH0_CSR", (slice, value) -> write(() -> slices[slice].control(value)));
    readsEach("CH0_DIV", slice -> slices[slice].divider());
    writesEach("CH0_DIV", (slice, value) -> write(() -> slices[slice].divider(value)));
    readsEach("CH0_CTR", slice -> slices[slice].counter());
    writesEach("CH0_CTR", (slice, value) -> write(() -> slices[slice].counter(value)));
    readsEach("CH0_CC", slice -> slices[slice].compare());
    writesEach("CH0_CC", (slice, value) -> write(() -> slices[slice].compare(value)));
    readsEach("CH0_TOP", slice -> slices[slice].top());
    writesEach("CH0_TOP", (slice, value) -> write(() -> slices[slice].top(value)));
    reads("EN", this::running);
    writes("EN", value -> write(() -> running(value)));
    aliased("CH0_CSR", "CH0_DIV", "CH0_CC", "CH0_TOP", "EN");
    interrupts();
  }

  private void interrupts() {
    reads("INTR", () -> raised);
    writes("INTR", value -> raise(raised & ~value));
    reads("INTE", () -> enabled);
    writes(
        "INTE",
        value -> {
          enabled = value;
          raise(raised);
        });
    reads("INTF", () -> forced);
    writes(
        "INTF",
        value -> {
          forced = value;
          raise(raised);
        });
    reads("INTS", () -> (raised & enabled) | forced);
    aliased("INTE", "INTF");
  }

  @Override
  void reset() {
    for (PwmSlice slice : slices) {
      slice.reset();
    }
    fill(asked, 0);
    enabled = 0;
    forced = 0;
    raise(0);
    levels = 0;
    plan();
    put();
  }

  private void write(Runnable change) {
    change.run();
    plan();
    put();
  }

  private int running() {
    int value = 0;
    for (int i = 0; i < SLICES; i++) {
      value |= slices[i].runs() ? 1 << i : 0;
    }
    return value;
  }

  private void running(int value) {
    for (int i = 0; i < SLICES; i++) {
      slices[i].run((value >>> i & 1) != 0);
    }
  }

  private void raise(int value) {
    raised = value;
    chip.nvic().line(Nvic.PWM_WRAP, ((raised & enabled) | forced) != 0);
  }

  /** A slice begins anew. */
  void wrapped(int slice) {
    if ((raised >>> slice & 1) == 0) {
      raise(raised | 1 << slice);
    }
    asked[slice] = 1;
    chip.dma().look();
  }

  boolean wrapAsked(int slice) {
    return asked[slice] > 0;
  }

  void wrapServed(int slice) {
    asked[slice] = 0;
  }

  /** Levels of a slice's two outputs: of pins 2n and 2n + 1, and of those 16 further on. */
  void levels(int slice, int two) {
    int shift = 2 * slice;
    int next = (levels & ~(0x30003 << shift)) | (two * 0x10001) << shift;
    changed |= next != levels;
    levels = next;
  }

  private void put() {
    changed = false;
    chip.gpio().put(Gpio.PWM, levels, -1);
  }

  /** Finds anew which slice changes next. */
  private void plan() {
    due = NEVER;
    for (PwmSlice slice : slices) {
      due = Math.min(due, slice.due());
    }
  }

  @Override
  public long due() {
    return due;
  }

  @Override
  public void run(long cycle) {
    for (PwmSlice slice : slices) {
      if (slice.due() <= cycle) {
        slice.step();
      }
    }
    plan();
    if (changed) {
      put();
    }
  }
}
