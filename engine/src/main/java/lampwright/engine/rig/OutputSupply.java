package lampwright.engine.rig;

/** What a driver output gives its LEDs. */
public enum OutputSupply {
  /** A constant current. */
  CURRENT("current"),
  /** The rig's supply voltage, so that a resistor in series has to set the current. */
  VOLTAGE("voltage");

  private final String key;

  OutputSupply(String key) {
    this.key = key;
  }

  /** The word for this in project files. */
  public String key() {
    return key;
  }
}
