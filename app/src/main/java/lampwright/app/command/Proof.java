package lampwright.app.command;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import lampwright.engine.check.SafeText;
import lampwright.exporters.proof.ProofReport;
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
  /** Shown for a figure that the report has not. */
  static final String MISSING = "-";

  private static final String FAULTS = "/faults/";

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

  /** Takes the report of a proof on a model of ours. */
  static Proof of(ProofReport report) {
    Map<String, String> figures = new LinkedHashMap<>(report.figures());
    for (int i = 0; i < report.faults().size(); i++) {
      figures.put(FAULTS + i, report.faults().get(i));
    }
    return new Proof(figures);
  }

  boolean passed() {
    return figure("/passed").equals("true");
  }

  /** One figure; {@code -} where the report has none. */
  String figure(String pointer) {
    return figures.getOrDefault(pointer, MISSING);
  }

  /** What went wrong, in words. */
  List<String> faults() {
    List<String> faults = new ArrayList<>();
    figures.forEach(
        (pointer, text) -> {
          if (pointer.startsWith(FAULTS)) {
            faults.add(SafeText.text(text, SafeText.MAX_MESSAGE));
          }
        });
    return faults;
  }
}
