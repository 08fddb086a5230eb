package lampwright.engine.rig;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A microcontroller that plays the exported data.
 *
 * @param id the word for it in project files: its part number in lower case
 * @param name its part number
 * @param flashBytes program memory; none if that is outside the chip
 * @param ramBytes working memory
 * @param source where the numbers come from
 */
public record Controller(
    String id, String name, OptionalInt flashBytes, int ramBytes, String source) {
  private static final String DATASHEET = "published: datasheet";

  private static final List<Controller> KNOWN =
      List.of(
          new Controller("atmega328p", "ATmega328P", OptionalInt.of(32768), 2048, DATASHEET),
          new Controller("atmega32u4", "ATmega32U4", OptionalInt.of(32768), 2560, DATASHEET),
          new Controller("attiny85", "ATtiny85", OptionalInt.of(8192), 512, DATASHEET),
          new Controller("rp2040", "RP2040", OptionalInt.empty(), 264 * 1024, DATASHEET));

  /** All that are known, in the order in which they are listed to people. */
  public static List<Controller> all() {
    return KNOWN;
  }

  /** The controller with this id. */
  public static Optional<Controller> find(String id) {
    return KNOWN.stream().filter(c -> c.id().equals(id)).findFirst();
  }
}
