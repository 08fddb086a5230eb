package lampwright.exporters.proof.rp2040;

import com.google.common.collect.ImmutableList;

/**
 * A PIO state machine, after the RP2040 datasheet, chapter 3; from memory. Between two of its
 * instructions nothing is done: delays and waiting for its queues pass in one step.
 */
final class StateMachine {
  static final ImmutableList<String> SETTINGS =
      ImmutableList.of("SM0_CLKDIV", "SM0_EXECCTRL", "SM0_SHIFTCTRL", "SM0_PINCTRL");

  private static final int NONE = -1;
  private static final int WORD = 32;

  private final Rp2040 chip;
  private final Pio pio;
  private final int number;
  private final int[] settings = new int[SETTINGS.size()];
  private final PioFifo tx = new PioFifo();
  private final PioFifo rx = new PioFifo();
  private final PioConfig config = new PioConfig();

  private boolean enabled;
  private boolean restarted;
  private int counter;
  private int x;
  private int y;
  private int isr;
  private int osr;
  private int shiftedIn;
  private int shiftedOut;

  /** An instruction that comes from a register instead of the program; none if negative. */
  private int given;

  private boolean stalled;
  private boolean starves;
  private boolean pushWaits;
  private boolean irqRaised;
  private boolean jumped;
  private boolean delays;

  /** An instruction waits for nothing but the next tick. */
  private boolean again;

  /** The divider's tick {@code n} is at {@code base + n x divider / 256}. */
  private long base;

  private long tick;
  private long due;
  private long refillAt;

  StateMachine(Rp2040 chip, Pio pio, int number) {
    this.chip = chip;
    this.pio = pio;
    this.number = number;
  }

  void reset() {
    for (int i = 0; i < settings.length; i++) {
      settings[i] = RegisterTable.get("PIO0", SETTINGS.get(i)).reset();
      config.read(SETTINGS.get(i), settings[i]);
    }
    enabled = false;
    restarted = false;
    counter = 0;
    x = 0;
    y = 0;
    osr = 0;
    tx.resize(PioFifo.WORDS);
    rx.resize(PioFifo.WORDS);
    clear();
    base = chip.now();
    due = Clocked.NEVER;
  }

  private void clear() {
    isr = 0;
    shiftedIn = 0;
    shiftedOut = WORD;
    given = NONE;
    stalled = false;
    starves = false;
    pushWaits = false;
    irqRaised = false;
    refillAt = Clocked.NEVER;
  }

  int number() {
    return number;
  }

  PioFifo tx() {
    return tx;
  }

  PioFifo rx() {
    return rx;
  }

  int counter() {
    return counter;
  }

  int instruction() {
    return given != NONE ? given : pio.program(counter);
  }

  /** Whether it waits for a word to send. */
  boolean starves() {
    return starves;
  }

  int setting(String name) {
    int value = settings[SETTINGS.indexOf(name)];
    if (name.equals("SM0_EXECCTRL")) {
      value |= PioConfig.EXEC_STALLED.at(given != NONE ? 1 : 0);
    }
    return value;
  }

  void set(String name, int value) {
    int kept = name.equals("SM0_EXECCTRL") ? value & ~PioConfig.EXEC_STALLED.mask() : value;
    int index = SETTINGS.indexOf(name);
    int was = settings[index];
    settings[index] = kept;
    boolean joins = config.joins();
    boolean joinsIn = config.joinsIn();
    String fault = config.read(name, kept);
    if (!fault.isEmpty()) {
      throw chip.fault(pio.base(), "PIO" + pio.number() + " " + name + ": " + fault);
    }
    if (joins != config.joins() || joinsIn != config.joinsIn()) {
      tx.resize(config.joins() ? 2 * PioFifo.WORDS : config.joinsIn() ? 0 : PioFifo.WORDS);
      rx.resize(config.joinsIn() ? 2 * PioFifo.WORDS : config.joins() ? 0 : PioFifo.WORDS);
      pio.lines();
      chip.dma().look();
    }
    if (name.equals("SM0_CLKDIV") && was != kept) {
      restartDivider();
    }
  }

  void restart() {
    clear();
    restarted = true;
    if (enabled) {
      due = tickAfter(chip.now());
    }
  }

  void restartDivider() {
    base = chip.now() + 1;
    tick = 0;
    if (enabled && !stalled) {
      due = base;
    }
  }

  void enable(boolean on) {
    enabled = on;
    if (!on) {
      due = Clocked.NEVER;
      refillAt = Clocked.NEVER;
      return;
    }
    if (!restarted) {
      throw chip.fault(
          pio.base(),
          "PIO"
              + pio.number()
              + ": state machine "
              + number
              + " is enabled without having been restarted since its reset");
    }
    due = tickAfter(chip.now());
  }

  private long tickAfter(long cycle) {
    // The first n with base + floor(n x divider / 256) > cycle.
    long wanted = Math.max(0, cycle + 1 - base) * 256;
    tick = (wanted + config.divider() - 1) / config.divider();
    return atTick();
  }

  private long nextTick() {
    tick++;
    return atTick();
  }

  private long atTick() {
    return base + tick * config.divider() / 256;
  }

  /** Writes a word to its queue; a full one loses it. */
  void send(int word) {
    if (tx.isFull()) {
      pio.debugFlag("TXOVER", number);
      return;
    }
    tx.push(word);
    poke(0);
    if (enabled && !stalled && config.autopull() && shiftedOut >= config.pullThreshold()) {
      long wasTick = tick;
      refillAt = tickAfter(chip.now());
      tick = wasTick;
      if (refillAt >= due) {
        refillAt = Clocked.NEVER;
      }
    }
    pio.lines();
  }

  int receive() {
    chip.inputsRead();
    if (rx.isEmpty()) {
      throw chip.fault(
          pio.base(), "PIO" + pio.number() + " RXF" + number + " is read while it is empty");
    }
    int word = rx.pop();
    poke(0);
    pio.lines();
    // A read, unlike a write, lets nobody look: there may be room now for what waits to push.
    chip.reschedule();
    return word;
  }

  /** Something that it may wait for changed, and is seen some cycles later. */
  void poke(int later) {
    if (stalled && (enabled || given != NONE)) {
      long at = chip.now() + Math.max(0, later - 1);
      due = enabled ? tickAfter(at) : at + 1;
    }
  }

  long due() {
    return Math.min(due, refillAt);
  }

  /** Runs an instruction that is written to its register. */
  void force(int instruction) {
    if (config.delay(instruction) != 0) {
      throw chip.fault(
          pio.base(), "PIO: the delay of an instruction that is forced is not modelled");
    }
    given = NONE;
    again = false;
    boolean wasStalled = stalled;
    jumped = false;
    if (execute(instruction)) {
      stalled = wasStalled;
      starves = starves && wasStalled;
      if (jumped && enabled) {
        stalled = false;
        starves = false;
        due = tickAfter(chip.now());
      }
    } else {
      given = instruction;
      stalled = true;
      due = again ? tickAfter(chip.now()) : Clocked.NEVER;
    }
    config.sideSet(pio, instruction);
  }

  void run(long cycle) {
    if (refillAt <= cycle) {
      refillAt = Clocked.NEVER;
      refill();
    }
    if (due > cycle) {
      return;
    }
    int instruction = instruction();
    boolean fromProgram = given == NONE;
    int before = given;
    given = NONE;
    jumped = false;
    delays = true;
    starves = false;
    again = false;
    boolean out = instruction >>> 13 == 3;
    if (!out) {
      refill();
    }
    boolean done = execute(instruction);
    config.sideSet(pio, instruction);
    if (!done) {
      stalled = true;
      given = before;
      due = again ? nextTick() : Clocked.NEVER;
      return;
    }
    stalled = false;
    if (fromProgram && !jumped) {
      counter = counter == config.wrapTop() ? config.wrapBottom() : counter + 1 & 31;
    }
    tick += 1 + (delays ? config.delay(instruction) : 0);
    due = enabled ? atTick() : Clocked.NEVER;
  }

  private void refill() {
    if (config.autopull() && shiftedOut >= config.pullThreshold() && !tx.isEmpty()) {
      osr = pop();
      shiftedOut = 0;
    }
  }

  private int pop() {
    int word = tx.pop();
    chip.dma().look();
    pio.lines();
    return word;
  }

  /** Returns whether it is done; otherwise it waits. */
  private boolean execute(int op) {
    int argument = op >>> 5 & 7;
    int number5 = op & 31;
    return switch (op >>> 13) {
      case 0 -> jump(argument, number5);
      case 1 -> waitFor(op);
      case 2 -> in(argument, number5 == 0 ? WORD : number5);
      case 3 -> out(argument, number5 == 0 ? WORD : number5);
      case 4 -> (op & 0x80) == 0 ? push(op) : pull(op);
      case 5 -> move(argument, op >>> 3 & 3, op & 7);
      case 6 -> irq(op);
      default -> set(argument, number5);
    };
  }

  private boolean jump(int condition, int target) {
    boolean taken =
        switch (condition) {
          case 0 -> true;
          case 1 -> x == 0;
          case 2 -> x-- != 0;
          case 3 -> y == 0;
          case 4 -> y-- != 0;
          case 5 -> x != y;
          case 6 -> (pio.inputs() >>> config.jumpPin() & 1) != 0;
          default -> shiftedOut < config.pullThreshold();
        };
    if (taken) {
      goTo(target);
    }
    return true;
  }

  private void goTo(int target) {
    counter = target & 31;
    jumped = true;
  }

  private boolean waitFor(int op) {
    boolean wanted = (op & 0x80) != 0;
    int index = op & 31;
    switch (op >>> 5 & 3) {
      case 0 -> {
        return (pio.inputs() >>> index & 1) != 0 == wanted;
      }
      case 1 -> {
        return (pio.inputs() >>> (config.inBase() + index & 31) & 1) != 0 == wanted;
      }
      case 2 -> {
        int flag = 1 << flag(index);
        boolean is = (pio.flags() & flag) != 0;
        if (is == wanted && wanted) {
          pio.flags(pio.flags() & ~flag);
        }
        return is == wanted;
      }
      default -> throw unknown("WAIT", op);
    }
  }

  private int flag(int index) {
    if ((index & 8) != 0) {
      throw unknown("IRQ", index);
    }
    return (index & 16) == 0 ? index & 7 : (index & 4) | (index + number & 3);
  }

  private boolean in(int source, int bits) {
    if (!pushWaits) {
      int value =
          switch (source) {
            case 0 -> Integer.rotateRight(pio.inputs(), config.inBase());
            case 1 -> x;
            case 2 -> y;
            case 3 -> 0;
            case 6 -> isr;
            case 7 -> osr;
            default -> throw unknown("IN", source);
          };
      isr = config.inRight() ? shiftRight(isr, value, bits) : shiftLeft(isr, value, bits);
      shiftedIn = Math.min(WORD, shiftedIn + bits);
    }
    pushWaits = config.autopush() && shiftedIn >= config.pushThreshold() && !pushed();
    return !pushWaits;
  }

  private static int shiftRight(int register, int value, int bits) {
    return bits == WORD ? value : register >>> bits | value << (WORD - bits);
  }

  private static int shiftLeft(int register, int value, int bits) {
    return bits == WORD ? value : register << bits | (value & (1 << bits) - 1);
  }

  private boolean pushed() {
    if (rx.isFull()) {
      pio.debugFlag("RXSTALL", number);
      return false;
    }
    rx.push(isr);
    isr = 0;
    shiftedIn = 0;
    chip.dma().look();
    pio.lines();
    return true;
  }

  private boolean out(int target, int bits) {
    if (config.autopull() && shiftedOut >= config.pullThreshold()) {
      if (tx.isEmpty()) {
        starve();
      } else {
        // The word is there a tick later.
        refill();
        again = true;
      }
      return false;
    }
    int value;
    if (bits == WORD) {
      value = osr;
      osr = 0;
    } else if (config.outRight()) {
      value = osr & (1 << bits) - 1;
      osr >>>= bits;
    } else {
      value = osr >>> (WORD - bits);
      osr <<= bits;
    }
    shiftedOut = Math.min(WORD, shiftedOut + bits);
    deliver(target, value, bits);
    refill();
    return true;
  }

  private void starve() {
    starves = true;
    pio.debugFlag("TXSTALL", number);
  }

  private void deliver(int target, int value, int bits) {
    switch (target) {
      case 0 -> config.outPins(pio, value);
      case 1 -> x = value;
      case 2 -> y = value;
      case 3 -> {
        // thrown away
      }
      case 4 -> config.outDirections(pio, value);
      case 5 -> goTo(value);
      case 6 -> {
        isr = value;
        shiftedIn = bits;
      }
      default -> give(value);
    }
  }

  private void give(int instruction) {
    given = instruction & 0xFFFF;
    delays = false;
  }

  private boolean push(int op) {
    if ((op & 0x40) != 0 && shiftedIn < config.pushThreshold()) {
      return true;
    }
    if (rx.isFull() && (op & 0x20) == 0) {
      pio.debugFlag("RXSTALL", number);
      isr = 0;
      shiftedIn = 0;
      return true;
    }
    return pushed();
  }

  private boolean pull(int op) {
    if ((op & 0x40) != 0 && shiftedOut < config.pullThreshold()) {
      return true;
    }
    if (config.autopull() && shiftedOut < config.pullThreshold()) {
      if (shiftedOut != 0) {
        throw unknown("PULL with autopull of a word that is partly sent", op);
      }
      return true;
    }
    if (tx.isEmpty()) {
      if ((op & 0x20) != 0) {
        starve();
        return false;
      }
      osr = x;
    } else {
      osr = pop();
    }
    shiftedOut = 0;
    return true;
  }

  private boolean move(int target, int operation, int source) {
    int value =
        switch (source) {
          case 0 -> Integer.rotateRight(pio.inputs(), config.inBase());
          case 1 -> x;
          case 2 -> y;
          case 3 -> 0;
          case 5 -> (config.statusOfRx() ? rx : tx).count() < config.statusLevel() ? -1 : 0;
          case 6 -> isr;
          case 7 -> osr;
          default -> throw unknown("MOV from", source);
        };
    value =
        switch (operation) {
          case 0 -> value;
          case 1 -> ~value;
          case 2 -> Integer.reverse(value);
          default -> throw unknown("MOV operation", operation);
        };
    switch (target) {
      case 0 -> config.outPins(pio, value);
      case 1 -> x = value;
      case 2 -> y = value;
      case 4 -> give(value);
      case 5 -> goTo(value);
      case 6 -> {
        isr = value;
        shiftedIn = 0;
      }
      case 7 -> {
        osr = value;
        shiftedOut = 0;
      }
      default -> throw unknown("MOV to", target);
    }
    return true;
  }

  private boolean irq(int op) {
    if ((op & 0x80) != 0) {
      throw unknown("IRQ", op);
    }
    int flag = 1 << flag(op & 31);
    if ((op & 0x40) != 0) {
      pio.flags(pio.flags() & ~flag);
      return true;
    }
    boolean waits = (op & 0x20) != 0;
    if (!irqRaised) {
      irqRaised = waits;
      // Raised before it waits, so that raising does not wake it.
      stalled = false;
      pio.flags(pio.flags() | flag);
      return !waits;
    }
    irqRaised = (pio.flags() & flag) != 0;
    return !irqRaised;
  }

  private boolean set(int target, int value) {
    switch (target) {
      case 0 -> config.setPins(pio, value);
      case 1 -> x = value;
      case 2 -> y = value;
      case 4 -> config.setDirections(pio, value);
      default -> throw unknown("SET to", target);
    }
    return true;
  }

  private Rp2040Fault unknown(String what, int value) {
    return chip.fault(
        pio.base(), "PIO" + pio.number() + ": " + what + " " + value + " is not known");
  }
}
