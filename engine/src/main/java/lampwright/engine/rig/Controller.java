package lampwright.engine.rig;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A microcontroller that plays the exported data.
 *
 * @param id the word for it in project files: its part number in lower case
 * @param name its part number
 * @param flashBytes program memory; none if that is outside the chip
 * @param ramBytes working memory
 * @param pinVolts high level of its pins on the usual boards, V
 * @param maxSupplyVolts the greatest supply at which its pins have the level of that supply, V;
 *     none if they always have the same
 * @param source where the numbers come from
 * @param pinSource where those of the level come from
 */
public record Controller(
    String id,
    String name,
    OptionalInt flashBytes,
    int ramBytes,
    double pinVolts,
    OptionalDouble maxSupplyVolts,
    String source,
    String pinSource) {
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

  /**
   * High level of its pins in a rig, V: that of the supply where it can be fed from it, else that
   * of the usual boards, which have a regulator.
   */
  public double pinVolts(double supplyVolts) {
    return supplyVolts <= maxSupplyVolts.orElse(0) ? supplyVolts : pinVolts;
  }

  private static Controller of(List<String> row) {
    String flash = row.get(2);
    return new Controller(
        row.get(0),
        row.get(1),
        flash.isEmpty() ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(flash)),
        Integer.parseInt(row.get(3)),
        Double.parseDouble(row.get(4)),
        row.get(5).isEmpty()
            ? OptionalDouble.empty()
            : OptionalDouble.of(Double.parseDouble(row.get(5))),
        row.get(6) + ": " + row.get(7),
        row.get(8) + ": " + row.get(9));
  }
}
