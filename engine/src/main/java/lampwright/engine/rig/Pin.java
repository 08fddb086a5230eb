package lampwright.engine.rig;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lampwright.engine.check.Checks;
import lampwright.engine.field.FormType;

/**
 * A pin of a controller as its datasheet names it: {@code PD6} where pins are on ports, {@code
 * GP15} or {@code GPIO15} where they are numbered, {@code 15} where boards number them. Which pins
 * there are, and how its makers write them, is the controller's matter: names of one port and
 * number, such as {@code PA2} and {@code PA02}, are the same pin and equal.
 *
 * @param name P, a port letter from A to L and a bit up to 31; or a number up to 99, alone or after
 *     GP or GPIO
 */
public record Pin(String name) {
  /** What a name must be, as the end of a message. */
  public static final String ALLOWED =
      "must be a pin as named in the datasheet, such as PD6 or GPIO18";

  private static final Pattern NAME =
      Pattern.compile("P([A-L])(0[0-9]|[1-2]?[0-9]|3[01])|(?:GP|GPIO)?([0-9]|[1-9][0-9])");

  /** How project files write it. */
  public static final FormType<Pin> TYPE =
      new FormType<>(
          "pin",
          ALLOWED,
          "^(" + NAME.pattern() + ")$",
          List.of("PD6", "PB0", "GP15", "GPIO18", "PA02", "7"),
          6,
          Pin::find,
          Pin::name);

  public Pin {
    Checks.of("pin").that(NAME.matcher(name).matches(), "pin", name, ALLOWED).done();
  }

  /** The pin of that name; empty if no controller could have one. */
  public static Optional<Pin> find(String name) {
    return NAME.matcher(name).matches() ? Optional.of(new Pin(name)) : Optional.empty();
  }

  /** The letter of its port; none of a pin that only has a number. */
  public Optional<String> port() {
    return Optional.ofNullable(parts().group(1));
  }

  /** Its bit in the port, or its number. */
  public int number() {
    Matcher parts = parts();
    return Integer.parseInt(parts.group(1) == null ? parts.group(3) : parts.group(2));
  }

  private Matcher parts() {
    Matcher parts = NAME.matcher(name);
    if (!parts.matches()) {
      throw new IllegalStateException(name);
    }
    return parts;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Pin pin && port().equals(pin.port()) && number() == pin.number();
  }

  @Override
  public int hashCode() {
    return Objects.hash(port(), number());
  }

  @Override
  public String toString() {
    return name;
  }
}
