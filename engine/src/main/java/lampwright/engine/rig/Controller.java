package lampwright.engine.rig;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import lampwright.engine.light.Checks;

/**
 * A microcontroller that plays the exported data, as it is fitted. What its pins, timers and memory
 * are the exporters know.
 *
 * @param id the word for it in project files: its part number in lower case
 * @param name its part number
 * @param clockMegahertz the clock that it runs at, if stated; 1 to 1,000 MHz
 */
public record Controller(String id, String name, OptionalInt clockMegahertz) {
  public static final int MIN_MEGAHERTZ = 1;
  public static final int MAX_MEGAHERTZ = 1000;

  private static final List<Controller> KNOWN =
      TableFile.rows("controllers.csv").stream().map(Controller::of).toList();

  public Controller {
    Checks.of("controller")
        .range("clockMegahertz", clockMegahertz.orElse(MIN_MEGAHERTZ), MIN_MEGAHERTZ, MAX_MEGAHERTZ)
        .done();
  }

  /** All that are known, in the order in which they are listed to people. */
  public static List<Controller> all() {
    return KNOWN;
  }

  /** The controller with this id, of which no clock is stated. */
  public static Optional<Controller> find(String id) {
    return KNOWN.stream().filter(c -> c.id().equals(id)).findFirst();
  }

  /** The same at a clock, or at one that is not stated. */
  public Controller withClock(OptionalInt megahertz) {
    return new Controller(id, name, megahertz);
  }

  private static Controller of(List<String> row) {
    return new Controller(row.get(0), row.get(1), OptionalInt.empty());
  }
}
