package lampwright.exporters.proof.rp2040;

/** One channel: where from, where to, how often, and what starts it. */
final class DmaChannel {
  private static final BitField ENABLE = field("EN");
  private static final BitField URGENT = field("HIGH_PRIORITY");
  private static final BitField SIZE = field("DATA_SIZE");
  private static final BitField READ_ON = field("INCR_READ");
  private static final BitField WRITE_ON = field("INCR_WRITE");
  private static final BitField RING_SIZE = field("RING_SIZE");
  private static final BitField RING_WRITES = field("RING_SEL");
  private static final BitField CHAIN = field("CHAIN_TO");
  private static final BitField REQUEST = field("TREQ_SEL");
  private static final BitField QUIET = field("IRQ_QUIET");
  private static final BitField SWAP = field("BSWAP");
  private static final BitField SNIFF = field("SNIFF_EN");
  private static final BitField BUSY = field("BUSY");

  private final Rp2040 chip;
  private final Dma dma;
  private final int number;

  private int read;
  private int write;
  private int reload;
  private int left;
  private int control;
  private boolean busy;

  /** What of a channel a register holds. */
  enum Part {
    READ,
    WRITE,
    COUNT,
    CONTROL
  }

  DmaChannel(Rp2040 chip, Dma dma, int number) {
    this.chip = chip;
    this.dma = dma;
    this.number = number;
  }

  private static BitField field(String name) {
    return RegisterTable.get("DMA", "CH0_CTRL_TRIG").field(name);
  }

  int number() {
    return number;
  }

  void reset() {
    read = 0;
    write = 0;
    reload = 0;
    left = 0;
    control = CHAIN.at(number);
    busy = false;
  }

  int get(Part part) {
    return switch (part) {
      case READ -> read;
      case WRITE -> write;
      case COUNT -> left;
      case CONTROL -> control | (busy ? BUSY.mask() : 0);
    };
  }

  void set(Part part, int value, boolean triggers) {
    switch (part) {
      case READ -> read = value;
      case WRITE -> write = value;
      case COUNT -> reload = value;
      case CONTROL -> control(value & ~BUSY.mask());
    }
    if (triggers) {
      if (value != 0) {
        trigger();
      } else if (QUIET.isSet(control)) {
        dma.finished(number);
      }
    }
    // Being enabled again lets a channel go on.
    dma.look();
  }

  private void control(int value) {
    if (SNIFF.isSet(value)) {
      throw chip.fault(dma.base(), "DMA with checksums is not modelled");
    }
    if (SIZE.of(value) == 3 || CHAIN.of(value) >= Dma.CHANNELS) {
      throw chip.fault(dma.base(), "DMA channel " + number + ": " + Block.hex(value));
    }
    control = value;
  }

  void trigger() {
    if (busy || !ENABLE.isSet(control)) {
      return;
    }
    left = reload;
    busy = left != 0;
    if (!busy) {
      throw chip.fault(dma.base(), "DMA channel " + number + " is started to move nothing");
    }
    dma.look();
  }

  boolean urgent() {
    return URGENT.isSet(control);
  }

  boolean ready() {
    return busy && ENABLE.isSet(control) && dma.asked(REQUEST.of(control));
  }

  /** Moves one item. */
  void transfer() {
    Bus bus = chip.bus();
    dma.served(REQUEST.of(control));
    int size = SIZE.of(control);
    switch (size) {
      case 0 -> bus.write8(write, bus.read8(read));
      case 1 -> bus.write16(write, SWAP.isSet(control) ? swapped(16) : bus.read16(read));
      default -> bus.write32(write, SWAP.isSet(control) ? swapped(0) : bus.read32(read));
    }
    if (READ_ON.isSet(control)) {
      read = next(read, 1 << size, !RING_WRITES.isSet(control));
    }
    if (WRITE_ON.isSet(control)) {
      write = next(write, 1 << size, RING_WRITES.isSet(control));
    }
    left--;
    if (left == 0) {
      finish();
    }
  }

  private int swapped(int by) {
    int value = by == 0 ? chip.bus().read32(read) : chip.bus().read16(read);
    return Integer.reverseBytes(value) >>> by;
  }

  private int next(int address, int step, boolean ring) {
    int bits = RING_SIZE.of(control);
    if (!ring || bits == 0) {
      return address + step;
    }
    int mask = (1 << bits) - 1;
    return (address & ~mask) | (address + step & mask);
  }

  private void finish() {
    busy = false;
    if (!QUIET.isSet(control)) {
      dma.finished(number);
    }
    int chained = CHAIN.of(control);
    if (chained != number) {
      dma.channel(chained).trigger();
    }
  }
}
