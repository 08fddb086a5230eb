package lampwright.app.live;

/**
 * A serial port of this machine.
 *
 * @param name as it is opened by, such as {@code ttyUSB0} or {@code COM3}
 * @param description what the system says of it; may be empty. It may come from what is plugged in
 */
public record PortInfo(String name, String description) {}
