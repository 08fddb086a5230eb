package lampwright.engine.facts;

import com.google.common.base.Splitter;
import java.util.List;

/**
 * A number of the trade, or several that belong together, and where it comes from.
 *
 * @param item what it is, such as {@code r.mcd}
 * @param value as the table has it
 * @param unit its unit; empty where the item names it
 * @param source how surely it is known
 * @param document the document, or how it was found
 */
public record SourcedNumber(
    String item, String value, String unit, Source source, String document) {
  /** The one number that the value is. */
  public double number() {
    return Double.parseDouble(value);
  }

  /** The numbers of a value with spaces between them. */
  public List<Double> numbers() {
    return numbers(value);
  }

  /** The points of a value such as {@code 0.545 0.425; 0.560 0.440}. */
  public List<List<Double>> points() {
    return parts().stream().map(SourcedNumber::numbers).toList();
  }

  /** The parts of a value with semicolons between them. */
  public List<String> parts() {
    return Splitter.on("; ").splitToList(value);
  }

  /** Where it comes from, for lists: {@code published: WS2812B datasheet}. */
  public String origin() {
    return switch (source) {
      case MEMORY -> source.words() + " after " + document;
      case PUBLISHED, PRACTICE, OURS, COMPUTED -> source.words() + ": " + document;
    };
  }

  /** Where it comes from, for a limit that quotes it: of a document that holds it, that alone. */
  public String citation() {
    return source == Source.PUBLISHED ? document : origin();
  }

  private static List<Double> numbers(String text) {
    return Splitter.on(' ').splitToStream(text).map(Double::valueOf).toList();
  }
}
