package lampwright.engine.json;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import lampwright.engine.check.Fault;

/** References of several kinds, each with names of its own. */
interface NamedReferences extends References {
  /** The names of which a fault's value should have been one; none if it names nothing. */
  Optional<Names> namesOf(Fault fault);

  @Override
  default boolean excuses(Fault fault) {
    return namesOf(fault).map(names -> names.excuses(fault.value())).orElse(false);
  }

  @Override
  default Collection<String> candidates(Fault fault) {
    return namesOf(fault).map(Names::good).orElse(List.of());
  }
}
