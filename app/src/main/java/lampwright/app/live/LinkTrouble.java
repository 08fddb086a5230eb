package lampwright.app.live;

import java.util.List;

/** Why there is no link. {@link LinkWords} has the words. */
public sealed interface LinkTrouble {
  /**
   * There is no such port.
   *
   * @param there the ports that there are
   */
  record NoSuchPort(String port, List<PortInfo> there) implements LinkTrouble {
    public NoSuchPort {
      there = List.copyOf(there);
    }
  }

  /** The user may not open it. */
  record NoPermission(String port) implements LinkTrouble {}

  /** Another program has it. */
  record Busy(String port) implements LinkTrouble {}

  /** What has this name is no serial port. */
  record NoSerialPort(String port) implements LinkTrouble {}

  /**
   * It did not open for another reason.
   *
   * @param code the system's number of it
   */
  record NotOpened(String port, int code) implements LinkTrouble {}

  /** It was there and is gone, or no longer works. */
  record PortLost(String port) implements LinkTrouble {}

  /**
   * Serial ports cannot be used on this system at all.
   *
   * @param why in the words of the library
   */
  record NoSerial(String why) implements LinkTrouble {}

  /** No controller answers at this rate. */
  record NoAnswer(String port, Baud baud) implements LinkTrouble {}

  /** The controller speaks another version of the protocol. */
  record OtherVersion(int version) implements LinkTrouble {}

  /**
   * The controller has the firmware of another rig.
   *
   * @param wanted of the rig at hand
   * @param found the controller's
   */
  record OtherRig(LinkIdentity wanted, LinkIdentity found) implements LinkTrouble {}

  /** A frame has more bytes than a packet can name. */
  record FrameTooLong(int bytes) implements LinkTrouble {}

  /** Whether it may pass by itself once the link worked: a plug that is pulled, a restart. */
  default boolean passing() {
    return this instanceof NoSuchPort
        || this instanceof Busy
        || this instanceof NotOpened
        || this instanceof PortLost
        || this instanceof NoAnswer;
  }
}
