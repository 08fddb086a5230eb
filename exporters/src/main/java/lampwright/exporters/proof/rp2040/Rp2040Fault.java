package lampwright.exporters.proof.rp2040;

import java.util.Locale;

/** The firmware did what the controller does not allow, or what the model of it does not know. */
public final class Rp2040Fault extends RuntimeException {
  private static final long serialVersionUID = 1;

  private final int address;
  private final int pc;
  private final long cycle;
  private final String reason;

  Rp2040Fault(int address, int pc, long cycle, String reason) {
    super(
        String.format(
            Locale.ROOT, "%s (address 0x%08X, pc 0x%08X, cycle %d)", reason, address, pc, cycle));
    this.address = address;
    this.pc = pc;
    this.cycle = cycle;
    this.reason = reason;
  }

  /** What was accessed; the instruction itself if nothing was. */
  public int address() {
    return address;
  }

  /** The instruction that ran, or had run last. */
  public int pc() {
    return pc;
  }

  /** System clock cycles since power-up. */
  public long cycle() {
    return cycle;
  }

  /** What was wrong, without the places. */
  public String reason() {
    return reason;
  }
}
