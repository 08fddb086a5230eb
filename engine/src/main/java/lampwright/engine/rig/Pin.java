package lampwright.engine.rig;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import lampwright.engine.check.Checks;
import lampwright.engine.field.FormType;

/**
 * A pin of a controller as its datasheet names it: {@code PD6} where pins are on ports, {@code
 * GP15} where they are numbered. Which pins there are is the controller's matter.
 *
 * @param name P, a port letter and a bit, or GP and a number up to 99
 */
public record Pin(String name) {
  /** What a name must be, as the end of a message. */
  public static final String ALLOWED = "must be a pin as named in the datasheet, such as PD6";

  private static final Pattern NAME = Pattern.compile("P[A-L][0-7]|GP[0-9]|GP[1-9][0-9]");

  /** A number alone is that of a GP pin. */
  private static final Pattern NUMBER = Pattern.compile("[0-9]|[1-9][0-9]");

  /** How project files write it. */
  public static final FormType<Pin> TYPE =
      new FormType<>(
          "pin",
          ALLOWED,
          "^(" + NAME.pattern() + "|" + NUMBER.pattern() + ")$",
          List.of("PD6", "PB0", "GP15"),
          4,
          Pin::find,
          Pin::name);

  public Pin {
    Checks.of("pin").that(NAME.matcher(name).matches(), "pin", name, ALLOWED).done();
  }

  /** The pin of that name or GP number; empty if no controller could have one. */
  public static Optional<Pin> find(String name) {
    String whole = NUMBER.matcher(name).matches() ? "GP" + name : name;
    return NAME.matcher(whole).matches() ? Optional.of(new Pin(whole)) : Optional.empty();
  }

  @Override
  public String toString() {
    return name;
  }
}
