package lampwright.engine.rig;

/** What a driver output's LEDs are switched by. */
public enum OutputDrive {
  /** A pin of the controller itself, which is rated for little current. */
  PIN("pin"),
  /** A transistor or LED driver on the rig's supply, which the pin only signals to. */
  DRIVER("driver");

  private final String key;

  OutputDrive(String key) {
    this.key = key;
  }

  /** The word for this in project files. */
  public String key() {
    return key;
  }
}
