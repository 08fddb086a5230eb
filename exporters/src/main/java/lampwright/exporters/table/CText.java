package lampwright.exporters.table;

import java.util.Locale;
import java.util.Set;

/**
 * Makes text of a project fit for C source.
 *
 * <p>Ids hold lower-case letters, digits and hyphens. In C names they keep their letters and
 * digits; a hyphen becomes {@code _}, or {@code H} where {@code _} would begin or end the id or
 * follow another {@code _}. Both represent a hyphen and nothing else does, so different ids have
 * different names whatever other ids there are. The words that we put around ids are in capital
 * letters and are never made of H alone, so a name of several parts can be read in one way only;
 * and our prefix keeps names from being keywords or reserved, or beginning with a digit.
 */
public final class CText {
  private static final Set<String> PARTED = Set.of("*/", "/*", "??");

  private CText() {}

  /**
   * An id as part of a C name.
   *
   * @throws IllegalArgumentException if it holds anything but lower-case letters, digits, hyphens
   */
  public static String name(String id) {
    StringBuilder name = new StringBuilder(id.length());
    for (int i = 0; i < id.length(); i++) {
      char c = id.charAt(i);
      if (c == '-') {
        boolean edge = i == 0 || i == id.length() - 1;
        name.append(edge || name.charAt(i - 1) == '_' ? 'H' : '_');
      } else if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) {
        name.append(c);
      } else {
        throw new IllegalArgumentException(
            "id: " + id + ": must have lower-case letters, digits or hyphens only");
      }
    }
    return name.toString();
  }

  /**
   * Text of people as part of a block comment. Printable ASCII stays; every other character, and
   * the backslash, is written as its code point, {@code <U+00FC>}. A space parts the pairs that
   * begin or end a comment or a trigraph.
   */
  public static String comment(String text) {
    StringBuilder safe = new StringBuilder(text.length() + 16);
    text.codePoints()
        .forEach(
            c -> {
              if (c < ' ' || c > '~' || c == '\\') {
                safe.append("<U+");
                String digits = Integer.toHexString(c).toUpperCase(Locale.ROOT);
                safe.append("0".repeat(Math.max(0, 4 - digits.length()))).append(digits);
                safe.append('>');
                return;
              }
              char last = safe.isEmpty() ? ' ' : safe.charAt(safe.length() - 1);
              if (PARTED.contains("" + last + (char) c)) {
                safe.append(' ');
              }
              safe.append((char) c);
            });
    return safe.toString();
  }

  /** A number of 32 bits, as C writes it. */
  static String number32(long number) {
    return String.format(Locale.ROOT, "0x%08XUL", number);
  }
}
