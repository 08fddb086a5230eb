package lampwright.exporters.proof.rp2040;

/** Interrupts and exceptions, and what else is in the core's own block of registers. */
final class Nvic extends Block {
  /** Interrupt numbers: the maker's headers; from memory. */
  static final int TIMER_0 = 0;

  static final int PWM_WRAP = 4;
  static final int PIO0_0 = 7;
  static final int DMA_0 = 11;

  static final int FIRST_INTERRUPT = 16;
  private static final int SUPERVISOR_CALL = 11;
  private static final int PENDABLE = 14;
  private static final int SYSTEM_TICK = 15;
  private static final int LOWEST = 4;
  private static final int KEY = 0x05FA;

  private final SystemTick systemTick;
  private final int[] priority = new int[8];
  private final BitField tableOffset = field("VTOR", "TBLOFF");
  private final BitField onExit = field("SCR", "SLEEPONEXIT");
  private final BitField onPending = field("SCR", "SEVONPEND");
  private final BitField deep = field("SCR", "SLEEPDEEP");

  private int lines;
  private int pending;
  private int enabled;
  private int active;
  private int vectors;
  private int sleep;
  private int handlers;
  private int handlerPriority2;
  private int handlerPriority3;
  private boolean attention;

  Nvic(Rp2040 chip) {
    super(chip, "PPB", RegisterTable.base("PPB") + 0xE000, -1);
    systemTick = new SystemTick(chip, this);
    systemTick.registers(this);
    reads("NVIC_ISER", () -> enabled);
    writes("NVIC_ISER", value -> change(() -> enabled |= value));
    reads("NVIC_ICER", () -> enabled);
    writes("NVIC_ICER", value -> change(() -> enabled &= ~value));
    reads("NVIC_ISPR", () -> pending);
    writes("NVIC_ISPR", value -> change(() -> pending |= value));
    reads("NVIC_ICPR", () -> pending);
    writes("NVIC_ICPR", value -> change(() -> pending = (pending & ~value) | lines));
    for (int i = 0; i < priority.length; i++) {
      int number = i;
      reads("NVIC_IPR" + i, () -> priority[number]);
      writes("NVIC_IPR" + i, value -> change(() -> priority[number] = value));
    }
    reads("CPUID", () -> resetValue("CPUID"));
    reads("VTOR", () -> vectors);
    writes("VTOR", value -> vectors = value & tableOffset.mask());
    reads("ICSR", this::state);
    writes("ICSR", this::state);
    reads("SCR", () -> sleep);
    writes("SCR", this::sleep);
    reads("SHPR2", () -> handlerPriority2);
    writes("SHPR2", value -> change(() -> handlerPriority2 = value));
    reads("SHPR3", () -> handlerPriority3);
    writes("SHPR3", value -> change(() -> handlerPriority3 = value));
    reads("AIRCR", () -> 0xFA05 << 16);
    writes("AIRCR", this::refuseReset);
  }

  @Override
  void reset() {
    fill(priority, 0);
    pending = 0;
    enabled = 0;
    active = 0;
    handlers = 0;
    vectors = 0;
    sleep = 0;
    systemTick.reset();
  }

  SystemTick systemTick() {
    return systemTick;
  }

  int vectors() {
    return vectors;
  }

  /** Where handlers are, as the boot ROM leaves it. */
  void vectors(int address) {
    vectors = address;
  }

  boolean sleepsOnExit() {
    return onExit.isSet(sleep);
  }

  /** A peripheral's interrupt goes up or down. */
  void line(int number, boolean high) {
    int bit = 1 << number;
    int was = lines;
    lines = high ? lines | bit : lines & ~bit;
    // While the line is up, the interrupt is pending; once its handler runs, it is so anew when
    // the handler ends with the line still up.
    if (high && (was & bit) == 0) {
      change(() -> pending |= bit);
    } else if (!high && (was & bit) != 0 && (active & bit) == 0) {
      pending &= ~bit;
    }
  }

  void pendSystemTick() {
    change(() -> handlers |= 1 << SYSTEM_TICK);
  }

  void pendSupervisorCall() {
    change(() -> handlers |= 1 << SUPERVISOR_CALL);
  }

  private void change(Runnable change) {
    int before = pending;
    change.run();
    attention = true;
    if (onPending.isSet(sleep) && (pending & ~before) != 0) {
      chip.cpu().signal();
    }
  }

  /** Whether something happened that asks to look at exceptions; asked once. */
  boolean takeAttention() {
    boolean was = attention;
    attention = false;
    return was;
  }

  /** The exception to serve now; 0 if none. */
  int ready(Cpu cpu) {
    return cpu.masked() ? 0 : above(level(cpu.exception()));
  }

  /** Whether a core that waits goes on. */
  boolean wakes(Cpu cpu) {
    if (cpu.waiting() == Cpu.Waiting.EVENT && cpu.signalled()) {
      return true;
    }
    // A masked interrupt ends the waiting, too, if it would be served without the mask.
    return above(level(cpu.exception())) != 0
        && (cpu.waiting() == Cpu.Waiting.INTERRUPT || !cpu.masked());
  }

  private int above(int level) {
    int ready = pending & enabled & ~active;
    if ((ready | handlers) == 0) {
      return 0;
    }
    int best = 0;
    int bestLevel = level;
    for (int number = SUPERVISOR_CALL; number <= SYSTEM_TICK; number++) {
      if ((handlers >>> number & 1) != 0 && level(number) < bestLevel) {
        best = number;
        bestLevel = level(number);
      }
    }
    for (int left = ready; left != 0; left &= left - 1) {
      int number = FIRST_INTERRUPT + Integer.numberOfTrailingZeros(left);
      if (level(number) < bestLevel) {
        best = number;
        bestLevel = level(number);
      }
    }
    return best;
  }

  private int level(int exception) {
    if (exception == 0) {
      return LOWEST;
    }
    if (exception >= FIRST_INTERRUPT) {
      int number = exception - FIRST_INTERRUPT;
      return priority[number / 4] >>> (8 * (number % 4) + 6) & 3;
    }
    return switch (exception) {
      case SUPERVISOR_CALL -> handlerPriority2 >>> 30;
      case PENDABLE -> handlerPriority3 >>> 22 & 3;
      case SYSTEM_TICK -> handlerPriority3 >>> 30;
      default -> -1;
    };
  }

  /** An exception's handler begins. */
  void enter(int exception) {
    if (exception >= FIRST_INTERRUPT) {
      int bit = 1 << (exception - FIRST_INTERRUPT);
      pending &= ~bit;
      active |= bit;
    } else {
      handlers &= ~(1 << exception);
    }
  }

  /** An exception's handler ends. */
  void leave(int exception) {
    if (exception >= FIRST_INTERRUPT) {
      int bit = 1 << (exception - FIRST_INTERRUPT);
      active &= ~bit;
      pending |= lines & bit;
    }
    attention = true;
  }

  private int state() {
    int ready = above(LOWEST);
    return field("ICSR", "VECTACTIVE").at(chip.cpu().exception())
        | field("ICSR", "VECTPENDING").at(ready)
        | ((pending & enabled) != 0 ? field("ICSR", "ISRPENDING").mask() : 0)
        | ((handlers >>> PENDABLE & 1) != 0 ? field("ICSR", "PENDSVSET").mask() : 0)
        | ((handlers >>> SYSTEM_TICK & 1) != 0 ? field("ICSR", "PENDSTSET").mask() : 0);
  }

  private void state(int value) {
    if (field("ICSR", "NMIPENDSET").isSet(value)) {
      throw chip.fault(base(), "non-maskable interrupts are not modelled");
    }
    change(
        () -> {
          if (field("ICSR", "PENDSVSET").isSet(value)) {
            handlers |= 1 << PENDABLE;
          }
          if (field("ICSR", "PENDSVCLR").isSet(value)) {
            handlers &= ~(1 << PENDABLE);
          }
          if (field("ICSR", "PENDSTSET").isSet(value)) {
            handlers |= 1 << SYSTEM_TICK;
          }
          if (field("ICSR", "PENDSTCLR").isSet(value)) {
            handlers &= ~(1 << SYSTEM_TICK);
          }
        });
  }

  private void sleep(int value) {
    if (deep.isSet(value)) {
      throw chip.fault(base(), "deep sleep is not modelled");
    }
    sleep = value;
  }

  private void refuseReset(int value) {
    if (value >>> 16 == KEY && value << 16 != 0) {
      throw chip.fault(base(), "the firmware resets the controller");
    }
  }
}
