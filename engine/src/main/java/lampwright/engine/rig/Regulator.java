package lampwright.engine.rig;

import java.util.OptionalDouble;
import lampwright.engine.facts.TradeNumbers;

/** What is between a battery pack and the rig. */
public enum Regulator {
  /** Nothing: the rig is fed with the pack's own voltage. */
  NONE("none", OptionalDouble.empty()),
  /** A linear regulator: it takes from the pack the current that it gives. */
  LINEAR("linear", OptionalDouble.empty()),
  /** A switching regulator that lowers the voltage. */
  BUCK("buck", OptionalDouble.of(TradeNumbers.number("regulator", "buck efficiency"))),
  /** A switching regulator that raises the voltage. */
  BOOST("boost", OptionalDouble.of(TradeNumbers.number("regulator", "boost efficiency")));

  private final String key;
  private final OptionalDouble usualEfficiency;

  Regulator(String key, OptionalDouble usualEfficiency) {
    this.key = key;
    this.usualEfficiency = usualEfficiency;
  }

  /** The word for this in project files. */
  public String key() {
    return key;
  }

  /** The power given as a share of the power taken, 0 to 1; none if it does not switch. */
  public OptionalDouble usualEfficiency() {
    return usualEfficiency;
  }

  /** Whether it trades voltage for current. */
  public boolean switching() {
    return usualEfficiency.isPresent();
  }
}
