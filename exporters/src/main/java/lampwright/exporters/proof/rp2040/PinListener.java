package lampwright.exporters.proof.rp2040;

/** Is told of every change on the controller's pins. */
@FunctionalInterface
public interface PinListener {
  /**
   * A pin changed.
   *
   * @param gpio number of the pin, 0 to 29
   * @param level what it is now
   * @param cycle system clock cycles since power-up
   */
  void changed(int gpio, Level level, long cycle);

  /** What a pin is. */
  enum Level {
    LOW,
    HIGH,
    /** Not driven by the controller. */
    OPEN
  }
}
