package lampwright.exporters.packed.encode;

import lampwright.engine.check.Fault;

/** Thrown where scenes can't become packed data that can be played. */
public final class PackRefusedException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final transient Fault fault;

  PackRefusedException(Fault fault) {
    super(fault.toString());
    this.fault = fault;
  }

  /** What is too much, and what is allowed. */
  public Fault fault() {
    return fault;
  }
}
