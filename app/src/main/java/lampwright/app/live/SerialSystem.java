package lampwright.app.live;

import java.util.List;

/** The serial ports of a machine. */
public interface SerialSystem {
  /**
   * Those that there are now.
   *
   * @throws LinkException if serial ports cannot be used
   */
  List<PortInfo> ports() throws LinkException;

  /**
   * Opens one, with eight data bits, no parity and one stop bit.
   *
   * @throws LinkException if it does not open
   */
  Transport open(String port, Baud baud) throws LinkException;
}
