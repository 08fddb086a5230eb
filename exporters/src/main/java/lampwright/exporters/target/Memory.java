package lampwright.exporters.target;

import java.util.OptionalInt;
import lampwright.engine.facts.SourcedNumber;

/**
 * The memory of a controller.
 *
 * @param flashBytes program memory; none if it is outside the chip, or not known
 * @param freeFlashBytes what a usual boot loader leaves of it
 * @param ramBytes working memory; none if not known
 * @param source where these numbers come from
 */
public record Memory(
    OptionalInt flashBytes, OptionalInt freeFlashBytes, OptionalInt ramBytes, String source) {
  static Memory of(TargetTable table) {
    return new Memory(
        number(table, "flashBytes"),
        number(table, "freeFlashBytes"),
        number(table, "ramBytes"),
        table
            .find("freeFlashBytes")
            .or(() -> table.find("ramBytes"))
            .map(SourcedNumber::citation)
            .orElse(""));
  }

  private static OptionalInt number(TargetTable table, String name) {
    return table.find(name).isPresent() ? OptionalInt.of(table.number(name)) : OptionalInt.empty();
  }
}
