package lampwright.app.command;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.Locale;
import java.util.function.Consumer;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.PrettyPrinter;
import tools.jackson.core.json.JsonFactory;
import tools.jackson.core.util.DefaultPrettyPrinter;

/** JSON that people can read as well, written whole or not at all. */
final class PrettyJson {
  private PrettyJson() {}

  /** Prints what the writer writes. */
  static void print(PrintWriter out, Consumer<JsonGenerator> writer) {
    ObjectWriteContext pretty =
        new ObjectWriteContext.Base() {
          @Override
          public PrettyPrinter getPrettyPrinter() {
            return new DefaultPrettyPrinter();
          }
        };
    StringWriter text = new StringWriter();
    try (JsonGenerator json = new JsonFactory().createGenerator(pretty, text)) {
      writer.accept(json);
    }
    out.println(ascii(text.getBuffer()));
  }

  /**
   * The same JSON in ASCII: whatever the encoding of the terminal or the pipe, the names arrive as
   * they are, and nothing turns or hides what is beside it. Outside ASCII there are only characters
   * of texts, which may be escapes (RFC 8259, section 7).
   */
  private static String ascii(CharSequence json) {
    StringBuilder ascii = new StringBuilder(json.length());
    for (int i = 0; i < json.length(); i++) {
      char c = json.charAt(i);
      if (c > '~') {
        ascii.append(String.format(Locale.ROOT, "\\u%04x", (int) c));
      } else {
        ascii.append(c);
      }
    }
    return ascii.toString();
  }
}
