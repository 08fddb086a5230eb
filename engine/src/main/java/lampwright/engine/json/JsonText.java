package lampwright.engine.json;

import java.util.Locale;
import lampwright.engine.check.SafeText;

/** Text as JSON writes it. */
final class JsonText {
  private JsonText() {}

  /**
   * The text in quotation marks. Quotation marks, backslashes and what an editor would not show are
   * escaped; all else is left as it is.
   */
  static String quoted(String text) {
    StringBuilder json = new StringBuilder(text.length() + 2).append('"');
    for (int i = 0; i < text.length(); ) {
      int c = text.codePointAt(i);
      switch (c) {
        case '"' -> json.append("\\\"");
        case '\\' -> json.append("\\\\");
        case '\n' -> json.append("\\n");
        case '\r' -> json.append("\\r");
        case '\t' -> json.append("\\t");
        default -> {
          if (SafeText.plain(c)) {
            json.appendCodePoint(c);
          } else {
            for (char unit : Character.toChars(c)) {
              json.append(String.format(Locale.ROOT, "\\u%04x", (int) unit));
            }
          }
        }
      }
      i += Character.charCount(c);
    }
    return json.append('"').toString();
  }
}
