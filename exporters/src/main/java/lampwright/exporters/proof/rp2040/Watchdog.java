package lampwright.exporters.proof.rp2040;

/** Of the watchdog, its tick alone: it counts reference clock cycles to what the timer counts. */
final class Watchdog extends Block {
  private final Timer timer;
  private final BitField cycles = field("TICK", "CYCLES");
  private final BitField enable = field("TICK", "ENABLE");
  private final BitField running = field("TICK", "RUNNING");
  private int tick;

  Watchdog(Rp2040 chip, Timer timer) {
    super(chip, "WATCHDOG", -1);
    this.timer = timer;
    reads("TICK", () -> tick | (cycles() > 0 ? running.mask() : 0));
    writes("TICK", this::tick);
  }

  @Override
  void reset() {
    tick = resetValue("TICK");
  }

  /** Reference clock cycles a tick; 0 while there are none. */
  int cycles() {
    return enable.isSet(tick) ? cycles.of(tick) : 0;
  }

  private void tick(int value) {
    timer.holdTime();
    tick = value & (cycles.mask() | enable.mask());
    timer.resumeTime();
  }
}
