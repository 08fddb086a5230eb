package lampwright.engine.json;

import java.util.Collection;
import java.util.List;
import lampwright.engine.check.Fault;

/** What is known about the lamps that tracks name. */
record LampReferences(Names lamps) implements References {
  @Override
  public boolean excuses(Fault fault) {
    return isLamp(fault) && lamps.excuses(fault.value());
  }

  @Override
  public Collection<String> candidates(Fault fault) {
    return isLamp(fault) ? lamps.good() : List.of();
  }

  private static boolean isLamp(Fault fault) {
    return fault.field().contains(".lamps[");
  }
}
