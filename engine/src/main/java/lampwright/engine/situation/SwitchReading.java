package lampwright.engine.situation;

/** Reads a contact: believes what two frames in a row agree on. */
final class SwitchReading implements InputReading {
  private final boolean activeLow;
  // At rest before its first reading, whatever the level of that is.
  private boolean sample;
  private boolean before;
  private boolean on;

  SwitchReading(boolean activeLow) {
    this.activeLow = activeLow;
  }

  @Override
  public void take(int level) {
    sample = (level != 0) != activeLow;
  }

  @Override
  public void frame() {
    if (sample == before) {
      on = sample;
    }
    before = sample;
  }

  @Override
  public boolean lost() {
    return false;
  }

  @Override
  public int value() {
    return on ? 1 : 0;
  }
}
