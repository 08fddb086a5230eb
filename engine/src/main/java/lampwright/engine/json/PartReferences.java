package lampwright.engine.json;

import java.util.Optional;
import lampwright.engine.check.Fault;

/** What is known about the parts that tracks and situations name. */
record PartReferences(Names lamps, Names inputs, Names scenes, Names situations)
    implements NamedReferences {
  @Override
  public Optional<Names> namesOf(Fault fault) {
    String field = fault.field();
    if (field.contains(".lamps[")) {
      return Optional.of(lamps);
    } else if (field.endsWith(".input")) {
      return Optional.of(inputs);
    } else if (field.endsWith(".scene")) {
      return Optional.of(scenes);
    }
    return field.endsWith(".situation") ? Optional.of(situations) : Optional.empty();
  }
}
