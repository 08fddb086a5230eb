package lampwright.exporters.proof.rp2040;

import java.util.Locale;

/** A block of four state machines with common instructions and pins. */
final class Pio extends Block implements Clocked {
  static final int MACHINES = 4;
  static final int INSTRUCTIONS = 32;

  /** Cycles that inputs take through their synchronisers: RP2040 datasheet, 3.5.6.3; memory. */
  static final int INPUT_DELAY = 2;

  private static final int NEVER_WRITTEN = -1;

  private final int number;
  private final StateMachine[] machines = new StateMachine[MACHINES];
  private final int[] program = new int[INSTRUCTIONS];
  private final int[] enabled = new int[2];
  private final int[] forced = new int[2];
  private final BitField enable = field("CTRL", "SM_ENABLE");
  private final BitField restart = field("CTRL", "SM_RESTART");
  private final BitField restartDivider = field("CTRL", "CLKDIV_RESTART");

  private int running;
  private int flags;
  private int debug;
  private int levels;
  private int directions;
  private boolean pinsTouched;
  private boolean anyLine;

  Pio(Rp2040 chip, int number) {
    super(
        chip,
        "PIO0",
        RegisterTable.base("PIO0") + number * 0x100000,
        number == 0 ? Resets.PIO0 : Resets.PIO1);
    this.number = number;
    for (int i = 0; i < MACHINES; i++) {
      machines[i] = new StateMachine(chip, this, i);
    }
    control();
    queues();
    interrupts();
    machineRegisters();
  }

  private void control() {
    reads("CTRL", () -> running);
    writes("CTRL", this::control);
    aliased("CTRL");
    reads("DBG_PADOUT", () -> levels);
    reads("DBG_PADOE", () -> directions);
    reads("INPUT_SYNC_BYPASS", () -> 0);
    writesEach("INSTR_MEM0", (at, value) -> program[at] = value);
  }

  private void queues() {
    reads("FSTAT", this::queueStates);
    reads("FLEVEL", this::queueLevels);
    reads("FDEBUG", this::debug);
    writes("FDEBUG", value -> debug &= ~value);
    for (int i = 0; i < MACHINES; i++) {
      StateMachine machine = machines[i];
      writes("TXF" + i, machine::send);
      reads("RXF" + i, machine::receive);
    }
  }

  private void interrupts() {
    reads("IRQ", () -> flags);
    writes("IRQ", value -> flags(flags & ~value));
    writes("IRQ_FORCE", value -> flags(flags | value));
    reads("INTR", this::raised);
    for (int i = 0; i < 2; i++) {
      int line = i;
      String name = "IRQ" + i;
      reads(name + "_INTE", () -> enabled[line]);
      writes(
          name + "_INTE",
          value -> {
            enabled[line] = value;
            lines();
          });
      reads(name + "_INTF", () -> forced[line]);
      writes(
          name + "_INTF",
          value -> {
            forced[line] = value;
            lines();
          });
      reads(name + "_INTS", () -> (raised() & enabled[line]) | forced[line]);
      aliased(name + "_INTE", name + "_INTF");
    }
  }

  private void machineRegisters() {
    for (String name : StateMachine.SETTINGS) {
      readsEach(name, machine -> machines[machine].setting(name));
      writesEach(name, (machine, value) -> machines[machine].set(name, value));
      aliased(name);
    }
    readsEach("SM0_ADDR", machine -> machines[machine].counter());
    readsEach("SM0_INSTR", machine -> machines[machine].instruction());
    writesEach("SM0_INSTR", (machine, value) -> force(machines[machine], value));
  }

  @Override
  void reset() {
    fill(program, NEVER_WRITTEN);
    fill(enabled, 0);
    fill(forced, 0);
    running = 0;
    flags = 0;
    debug = 0;
    levels = 0;
    directions = 0;
    for (StateMachine machine : machines) {
      machine.reset();
    }
    chip.gpio().put(Gpio.PIO0 + number, 0, 0);
    lines();
  }

  private void control(int value) {
    for (int i = 0; i < MACHINES; i++) {
      int bit = 1 << i;
      if ((restart.of(value) & bit) != 0) {
        machines[i].restart();
      }
      if ((restartDivider.of(value) & bit) != 0) {
        machines[i].restartDivider();
      }
      boolean on = (enable.of(value) & bit) != 0;
      if (on != ((running & bit) != 0)) {
        machines[i].enable(on);
      }
    }
    running = enable.of(value);
  }

  private void force(StateMachine machine, int instruction) {
    machine.force(instruction);
    pins();
  }

  /** An instruction of the program. */
  int program(int at) {
    int instruction = program[at];
    if (instruction == NEVER_WRITTEN) {
      throw chip.fault(
          base(),
          String.format(
              Locale.ROOT, "PIO%d runs at %d, where no instruction was written", number, at));
    }
    return instruction;
  }

  int number() {
    return number;
  }

  int flags() {
    return flags;
  }

  void flags(int value) {
    if (value != flags) {
      flags = value;
      for (StateMachine machine : machines) {
        machine.poke(0);
      }
      lines();
    }
  }

  void inputsChanged() {
    for (StateMachine machine : machines) {
      machine.poke(INPUT_DELAY);
    }
  }

  int inputs() {
    return chip.gpio().inputs(chip.now() - INPUT_DELAY);
  }

  void levels(int mask, int value) {
    levels = (levels & ~mask) | (value & mask);
    pinsTouched = true;
  }

  void directions(int mask, int value) {
    directions = (directions & ~mask) | (value & mask);
    pinsTouched = true;
  }

  private void pins() {
    if (pinsTouched) {
      pinsTouched = false;
      chip.gpio().put(Gpio.PIO0 + number, levels, directions);
    }
  }

  void debugFlag(String name, int machine) {
    debug |= 1 << (field("FDEBUG", name).low() + machine);
  }

  private int debug() {
    int value = debug;
    for (StateMachine machine : machines) {
      if (machine.starves()) {
        value |= 1 << (field("FDEBUG", "TXSTALL").low() + machine.number());
      }
    }
    return value;
  }

  private int queueStates() {
    int value = 0;
    for (StateMachine machine : machines) {
      int n = machine.number();
      value |= machine.tx().isEmpty() ? 1 << (field("FSTAT", "TXEMPTY").low() + n) : 0;
      value |= machine.tx().isFull() ? 1 << (field("FSTAT", "TXFULL").low() + n) : 0;
      value |= machine.rx().isEmpty() ? 1 << (field("FSTAT", "RXEMPTY").low() + n) : 0;
      value |= machine.rx().isFull() ? 1 << (field("FSTAT", "RXFULL").low() + n) : 0;
    }
    return value;
  }

  private int queueLevels() {
    int value = 0;
    for (StateMachine machine : machines) {
      value |= field("FLEVEL", "TX" + machine.number()).at(machine.tx().count());
      value |= field("FLEVEL", "RX" + machine.number()).at(machine.rx().count());
    }
    return value;
  }

  private int raised() {
    int value = (flags & 15) << field("INTR", "SM0").low();
    for (StateMachine machine : machines) {
      int n = machine.number();
      value |= machine.rx().isEmpty() ? 0 : 1 << (field("INTR", "SM0_RXNEMPTY").low() + n);
      value |= machine.tx().isFull() ? 0 : 1 << (field("INTR", "SM0_TXNFULL").low() + n);
    }
    return value;
  }

  /** The queues or flags changed: so may the interrupts. */
  void lines() {
    if ((enabled[0] | enabled[1] | forced[0] | forced[1]) == 0 && !anyLine) {
      return;
    }
    anyLine = false;
    int raised = raised();
    for (int i = 0; i < 2; i++) {
      boolean high = ((raised & enabled[i]) | forced[i]) != 0;
      anyLine |= high;
      chip.nvic().line(Nvic.PIO0_0 + 2 * number + i, high);
    }
  }

  /** Whether a word can be written to a machine's queue. */
  boolean takes(int machine) {
    return !machines[machine].tx().isFull();
  }

  /** Whether a word can be read from a machine's queue. */
  boolean has(int machine) {
    return !machines[machine].rx().isEmpty();
  }

  @Override
  public long due() {
    long due = machines[0].due();
    due = Math.min(due, machines[1].due());
    due = Math.min(due, machines[2].due());
    return Math.min(due, machines[3].due());
  }

  @Override
  public void run(long cycle) {
    for (StateMachine machine : machines) {
      if (machine.due() <= cycle) {
        machine.run(cycle);
      }
    }
    pins();
  }
}
