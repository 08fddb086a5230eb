package lampwright.engine.json;

import java.util.Collection;
import java.util.List;
import lampwright.engine.check.Fault;

/** What is known about the names that are in a file. */
interface References {
  References NONE = to(List.of());

  /** Whether a fault only follows from another that was reported. */
  boolean excuses(Fault fault);

  /** The names that may have been meant. */
  Collection<String> candidates(Fault fault);

  /** Where any of these names may have been meant, and nothing is excused. */
  static References to(Collection<String> names) {
    return new References() {
      @Override
      public boolean excuses(Fault fault) {
        return false;
      }

      @Override
      public Collection<String> candidates(Fault fault) {
        return names;
      }
    };
  }
}
