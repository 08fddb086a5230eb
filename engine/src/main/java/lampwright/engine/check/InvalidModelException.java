package lampwright.engine.check;

import java.util.List;
import java.util.stream.Collectors;

/** Thrown where a record of the model is given values that it refuses; carries all of them. */
public final class InvalidModelException extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  private final transient List<Fault> faults;

  public InvalidModelException(String subject, List<Fault> faults) {
    super(
        faults.stream().map(Fault::toString).collect(Collectors.joining("; ", subject + ": ", "")));
    this.faults = List.copyOf(faults);
  }

  /** Every value that was refused, at least one. */
  public List<Fault> faults() {
    return faults;
  }
}
