package lampwright.exporters.proof;

import com.google.common.collect.ImmutableMap;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/** The figures of a proof by JSON pointer, as the prover of the AVR controllers reports them. */
final class Figures {
  private final Map<String, String> figures = new LinkedHashMap<>();

  void put(String pointer, String value) {
    figures.put(pointer, value);
  }

  void put(String pointer, long value) {
    figures.put(pointer, Long.toString(value));
  }

  void put(String pointer, double value) {
    figures.put(pointer, String.format(Locale.ROOT, "%.1f", value));
  }

  ImmutableMap<String, String> all() {
    return ImmutableMap.copyOf(figures);
  }
}
