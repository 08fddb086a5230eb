package lampwright.app.command;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lampwright.engine.check.SafeText;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.json.JsonFactory;

/**
 * What the prover found out.
 *
 * @param figures every figure of its report, by JSON pointer
 */
record Proof(Map<String, String> figures) {
  /** Reads the prover's report. */
  static Proof of(String json) {
    Map<String, String> figures = new LinkedHashMap<>();
    try (JsonParser parser = new JsonFactory().createParser(ObjectReadContext.empty(), json)) {
      for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
        if (token.isScalarValue()) {
          figures.put(parser.streamReadContext().pathAsPointer().toString(), parser.getString());
        }
      }
    }
    return new Proof(figures);
  }

  boolean passed() {
    return figure("/passed").equals("true");
  }

  /** One figure; {@code -} where the report has none. */
  String figure(String pointer) {
    return figures.getOrDefault(pointer, "-");
  }

  /** What went wrong, in words. */
  List<String> faults() {
    List<String> faults = new ArrayList<>();
    figures.forEach(
        (pointer, text) -> {
          if (pointer.startsWith("/faults/")) {
            faults.add(SafeText.text(text, SafeText.MAX_MESSAGE));
          }
        });
    return faults;
  }
}
