package lampwright.exporters.target;

/**
 * The bits that an AVR sends to a chain, in cycles of its clock. Both kinds of bit have the same
 * length.
 *
 * @param way how it writes to the pin
 * @param t0h high time of a 0 bit
 * @param t1h high time of a 1 bit, longer than that
 * @param t1l low time of a 1 bit
 */
record AvrWave(Way way, int t0h, int t1h, int t1l) {
  /** How the pin is written to. */
  enum Way {
    /**
     * Writing a 1 to a bit of the PIN register flips that pin and no other, in two cycles, so an
     * interrupt routine may change other pins of the port at any time.
     */
    FLIPS_PIN,
    /**
     * Writing the whole port takes one cycle, for clocks at which flipping is too slow. What an
     * interrupt routine writes to other pins of the port meanwhile is undone.
     */
    WRITES_PORT
  }

  /** Length of a bit. */
  int bit() {
    return t1h + t1l;
  }

  /** Low time of a 0 bit. */
  int t0l() {
    return bit() - t0h;
  }

  /** The same as times. */
  SentTimes at(int hertz) {
    double nsPerCycle = 1e9 / hertz;
    return new SentTimes(t0h * nsPerCycle, t0l() * nsPerCycle, t1h * nsPerCycle, t1l * nsPerCycle);
  }
}
