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
  private static final List<Controller> KNOWN =
      TableFile.rows("controllers.csv").stream().map(Controller::of).toList();

  /** All that are known, in the order in which they are listed to people. */
  public static List<Controller> all() {
    return KNOWN;
  }

  /** The controller with this id. */
  public static Optional<Controller> find(String id) {
    return KNOWN.stream().filter(c -> c.id().equals(id)).findFirst();
  }

  private static Controller of(List<String> row) {
    String flash = row.get(2);
    return new Controller(
        row.get(0),
        row.get(1),
        flash.isEmpty() ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(flash)),
        Integer.parseInt(row.get(3)),
        row.get(4) + ": " + row.get(5));
  }
}
