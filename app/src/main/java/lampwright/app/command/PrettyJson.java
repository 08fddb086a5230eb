package lampwright.app.command;

import java.io.PrintWriter;
import java.io.StringWriter;
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
    out.println(text);
  }
}
