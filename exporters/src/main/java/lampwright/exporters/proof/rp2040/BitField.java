package lampwright.exporters.proof.rp2040;

/**
 * A field of a register.
 *
 * @param high its highest bit
 * @param low its lowest bit
 */
record BitField(int high, int low) {
  BitField {
    if (low < 0 || high < low || high > 31) {
      throw new IllegalArgumentException("field [" + high + ":" + low + "]");
    }
  }

  /** Its bits, in place. */
  int mask() {
    return (-1 >>> (31 - high + low)) << low;
  }

  /** Its value in a register's value. */
  int of(int register) {
    return (register & mask()) >>> low;
  }

  boolean isSet(int register) {
    return (register & mask()) != 0;
  }

  /** A value of it, in place. */
  int at(int value) {
    return (value << low) & mask();
  }
}
