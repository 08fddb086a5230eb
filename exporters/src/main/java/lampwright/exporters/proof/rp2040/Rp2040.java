package lampwright.exporters.proof.rp2040;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import lampwright.engine.time.Ratio;

/**
 * The controller on a board with a 12 MHz crystal and flash, from power-up on. The second core
 * stays in the boot ROM. Time is counted in cycles of the system clock, whatever its source is.
 */
public final class Rp2040 {
  private final Bus bus;
  private final Cpu cpu;
  private final Nvic nvic;
  private final Resets resets;
  private final Clocks clocks;
  private final Timer timer;
  private final Gpio gpio;
  private final Outside outside;
  private final Dma dma;
  private final Pwm pwm;
  private final Pio[] pio;
  private final List<Block> blocks = new ArrayList<>();
  private final Clocked[] clocked;

  private long cycle;
  private long now;
  private long horizon;
  private long asleep;
  private long inputsReadAt = -1;

  /**
   * Powers up and lets the boot ROM run.
   *
   * @param flash what is in flash
   * @param pins is told of every change on a pin
   * @throws Rp2040Fault if the boot ROM finds nothing to run
   */
  public Rp2040(Flash flash, PinListener pins) {
    bus = new Bus(this, flash);
    cpu = new Cpu(this, bus);
    resets = add(new Resets(this));
    clocks = add(new Clocks(this));
    add(clocks.crystal());
    clocks.plls().forEach(this::add);
    nvic = add(new Nvic(this));
    timer = new Timer(this);
    add(timer.watchdog());
    add(timer);
    gpio = new Gpio(this, pins);
    add(gpio);
    add(gpio.pads());
    add(new Sio(this));
    dma = add(new Dma(this));
    pio = new Pio[] {add(new Pio(this, 0)), add(new Pio(this, 1))};
    pwm = add(new Pwm(this));
    add(new FlashInterface(this));
    add(new XipControl(this));
    outside = new Outside(gpio);
    clocked = new Clocked[] {outside, pio[0], pio[1], dma, pwm, timer, nvic.systemTick()};
    blocks.forEach(Block::reset);
    new BootRom(this, flash).run();
    reschedule();
  }

  private <B extends Block> B add(B block) {
    blocks.add(block);
    bus.add(block);
    return block;
  }

  /** Cycles of the system clock since power-up. */
  public long cycle() {
    return cycle;
  }

  /** Cycles of these in which the core waited for an interrupt or event. */
  public long cyclesAsleep() {
    return asleep;
  }

  /** Bytes of the deepest stack so far, of one that begins at the end of memory. */
  public int deepestStackBytes() {
    int lowest = cpu.lowestStack();
    return lowest == -1 ? 0 : Bus.RAM + Bus.RAM_BYTES - lowest;
  }

  /**
   * Bytes from the start of memory to the last that was written below the stack: the program, where
   * it runs in memory, and its variables.
   */
  public int staticRamBytes() {
    int lowest = cpu.lowestStack();
    return bus.ramUsedBelow(lowest == -1 ? Bus.RAM + Bus.RAM_BYTES : lowest);
  }

  /** The system clock as the firmware has set it up, Hz. */
  public Ratio systemHertz() {
    return clocks.system();
  }

  /** The cycle at which the system clock changed last; 0 if it never did. */
  public long clockChangedAt() {
    return clocks.changedAt();
  }

  /** Whether the core waits. */
  public boolean waits() {
    return cpu.waiting() != Cpu.Waiting.NOT;
  }

  /** Puts a level on a pin from outside. */
  public void drive(int pin, boolean high) {
    gpio.drive(pin, high);
    reschedule();
  }

  /** Puts a level on a pin from outside at a cycle, or at once if that is over. */
  public void drive(int pin, boolean high, long atCycle) {
    outside.add(pin, high, atCycle);
    reschedule();
  }

  /** The cycle at which the core read a level or a word of a state machine first; -1: never. */
  public long inputsReadAt() {
    return inputsReadAt;
  }

  /** The core reads what came in from outside. */
  void inputsRead() {
    if (inputsReadAt < 0) {
      inputsReadAt = now;
    }
  }

  /** Runs until something is so, or a cycle is reached. Returns whether it is so. */
  public boolean run(long endCycle, BooleanSupplier done) {
    while (cycle < endCycle) {
      if (done.getAsBoolean()) {
        return true;
      }
      turn(endCycle);
    }
    return done.getAsBoolean();
  }

  private void turn(long endCycle) {
    if (horizon <= cycle) {
      events();
    }
    if (waits()) {
      if (!nvic.wakes(cpu)) {
        sleep(endCycle);
        return;
      }
      cpu.wake();
    }
    int number = nvic.ready(cpu);
    if (number != 0) {
      now = cycle;
      nvic.enter(number);
      cycle += cpu.enter(number);
      return;
    }
    do {
      now = cycle;
      cycle += cpu.step();
    } while (cycle < horizon && cycle < endCycle && !cpu.takeAttention() && !nvic.takeAttention());
  }

  private void sleep(long endCycle) {
    long to = Math.min(horizon, endCycle);
    asleep += to - cycle;
    cycle = to;
    now = to;
  }

  private void events() {
    while (horizon <= cycle) {
      now = horizon;
      for (Clocked each : clocked) {
        if (each.due() <= now) {
          each.run(now);
        }
      }
      // Asked after all have run: one may have made work for another.
      reschedule();
    }
    now = cycle;
  }

  /** Finds anew when something is due. */
  void reschedule() {
    long next = Clocked.NEVER;
    for (Clocked each : clocked) {
      next = Math.min(next, each.due());
    }
    horizon = next;
  }

  /** The cycle of what is being done. */
  long now() {
    return now;
  }

  Rp2040Fault fault(int address, String reason) {
    return new Rp2040Fault(address, cpu.pc(), now, reason);
  }

  /** A peripheral goes into reset, or comes out of it. */
  void resetBlock(int bit) {
    for (Block block : blocks) {
      if (block.resetBit() == bit) {
        block.reset();
      }
    }
  }

  /** Cycles that something takes which is told in seconds, at the present system clock. */
  long cycles(Ratio seconds) {
    return clocks.system().times(seconds).ceiling();
  }

  Bus bus() {
    return bus;
  }

  Cpu cpu() {
    return cpu;
  }

  Nvic nvic() {
    return nvic;
  }

  Resets resets() {
    return resets;
  }

  Clocks clocks() {
    return clocks;
  }

  Timer timer() {
    return timer;
  }

  Gpio gpio() {
    return gpio;
  }

  Dma dma() {
    return dma;
  }

  Pwm pwm() {
    return pwm;
  }

  Pio pio(int number) {
    return pio[number];
  }
}
