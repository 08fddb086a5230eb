package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Pattern;

/** Numbers as people type them: with a point or a comma before the decimals. */
public final class NumberText {
  private static final Pattern FORM =
      Pattern.compile("[-+]?(\\d{1,12}([.,]\\d{0,30})?|[.,]\\d{1,30})");

  private NumberText() {}

  /** The number that a text says; empty if it says none. */
  public static Optional<BigDecimal> parse(String text) {
    String trimmed = text.strip();
    return FORM.matcher(trimmed).matches()
        ? Optional.of(new BigDecimal(trimmed.replace(',', '.')))
        : Optional.empty();
  }

  /** A number without exponent and needless zeros, with a point. */
  public static String of(BigDecimal value) {
    return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
  }
}
