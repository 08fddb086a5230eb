package lampwright.exporters.proof.rp2040;

/** Twelve channels that move data when its source or sink asks for it, one word in a cycle. */
final class Dma extends Block implements Clocked {
  static final int CHANNELS = 12;

  /** Requests: the maker's headers. PIO0 TX 0, RX 4, PIO1 TX 8, RX 12, PWM wraps 24. */
  private static final int PIO_REQUESTS = 16;

  private static final int PWM_REQUESTS = 24;
  private static final int ALWAYS = 63;

  private final DmaChannel[] channels = new DmaChannel[CHANNELS];
  private final int[] enabled = new int[2];
  private final int[] forced = new int[2];
  private int raised;
  private int turn;
  private long due = NEVER;

  Dma(Rp2040 chip) {
    super(chip, "DMA", Resets.DMA);
    for (int i = 0; i < CHANNELS; i++) {
      channels[i] = new DmaChannel(chip, this, i);
    }
    alias("CTRL_TRIG", "READ_ADDR", "WRITE_ADDR", "TRANS_COUNT", "CTRL_TRIG");
    alias("AL1", "AL1_READ_ADDR", "AL1_WRITE_ADDR", "AL1_TRANS_COUNT_TRIG", "AL1_CTRL");
    alias("AL2", "AL2_READ_ADDR", "AL2_WRITE_ADDR_TRIG", "AL2_TRANS_COUNT", "AL2_CTRL");
    alias("AL3", "AL3_READ_ADDR_TRIG", "AL3_WRITE_ADDR", "AL3_TRANS_COUNT", "AL3_CTRL");
    interrupts();
    writes(
        "MULTI_CHAN_TRIGGER",
        value -> {
          for (int i = 0; i < CHANNELS; i++) {
            if ((value >>> i & 1) != 0) {
              channels[i].trigger();
            }
          }
        });
    reads("N_CHANNELS", () -> CHANNELS);
  }

  private void alias(String set, String read, String write, String count, String control) {
    one(read, DmaChannel.Part.READ, false);
    one(write, DmaChannel.Part.WRITE, false);
    one(count, DmaChannel.Part.COUNT, false);
    one(control, DmaChannel.Part.CONTROL, set.equals(control));
    aliased("CH0_" + read, "CH0_" + write, "CH0_" + count, "CH0_" + control);
  }

  private void one(String name, DmaChannel.Part part, boolean last) {
    boolean triggers = last || name.endsWith("TRIG");
    readsEach("CH0_" + name, channel -> channels[channel].get(part));
    writesEach("CH0_" + name, (channel, value) -> channels[channel].set(part, value, triggers));
  }

  private void interrupts() {
    reads("INTR", () -> raised);
    writes("INTR", value -> raise(raised & ~value));
    for (int i = 0; i < 2; i++) {
      int line = i;
      reads("INTE" + i, () -> enabled[line]);
      writes("INTE" + i, value -> enable(enabled, line, value));
      reads("INTF" + i, () -> forced[line]);
      writes("INTF" + i, value -> enable(forced, line, value));
      reads("INTS" + i, () -> (raised & enabled[line]) | forced[line]);
      writes("INTS" + i, value -> raise(raised & ~value));
      aliased("INTE" + i, "INTF" + i);
    }
  }

  @Override
  void reset() {
    for (DmaChannel channel : channels) {
      channel.reset();
    }
    fill(enabled, 0);
    fill(forced, 0);
    raised = 0;
    due = NEVER;
    lines();
  }

  private void enable(int[] values, int line, int value) {
    values[line] = value;
    lines();
  }

  private void raise(int value) {
    raised = value;
    lines();
  }

  private void lines() {
    for (int i = 0; i < 2; i++) {
      chip.nvic().line(Nvic.DMA_0 + i, ((raised & enabled[i]) | forced[i]) != 0);
    }
  }

  void finished(int channel) {
    raise(raised | 1 << channel);
  }

  DmaChannel channel(int number) {
    return channels[number];
  }

  /** Something changed that a channel may wait for. */
  void look() {
    due = Math.min(due, chip.now() + 1);
  }

  /** Whether what a channel waits for asks for data. */
  boolean asked(int request) {
    if (request == ALWAYS) {
      return true;
    }
    if (request < PIO_REQUESTS) {
      Pio pio = chip.pio(request / 8);
      int machine = request % 4;
      return request % 8 < 4 ? pio.takes(machine) : pio.has(machine);
    }
    if (request >= PWM_REQUESTS && request < PWM_REQUESTS + Pwm.SLICES) {
      return chip.pwm().wrapAsked(request - PWM_REQUESTS);
    }
    throw chip.fault(base(), "DMA by request " + request + " is not modelled");
  }

  /** A request was served. */
  void served(int request) {
    if (request >= PWM_REQUESTS && request < PWM_REQUESTS + Pwm.SLICES) {
      chip.pwm().wrapServed(request - PWM_REQUESTS);
    }
  }

  @Override
  public long due() {
    return due;
  }

  @Override
  public void run(long cycle) {
    due = NEVER;
    DmaChannel chosen = null;
    int ready = 0;
    for (int i = 1; i <= CHANNELS; i++) {
      DmaChannel channel = channels[(turn + i) % CHANNELS];
      if (channel.ready()) {
        ready++;
        if (chosen == null || (channel.urgent() && !chosen.urgent())) {
          chosen = channel;
        }
      }
    }
    if (chosen != null) {
      turn = chosen.number();
      chosen.transfer();
      if (ready > 1 || chosen.ready()) {
        look();
      }
    }
  }
}
