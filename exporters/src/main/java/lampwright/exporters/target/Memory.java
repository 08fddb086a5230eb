package lampwright.exporters.target;

import java.util.OptionalInt;
import lampwright.engine.facts.SourcedNumber;

/**
 * The memory of a controller.
 *
 * @param flashBytes program memory; none if it is outside the chip, or not known
 * @param freeFlashBytes what a usual boot loader leaves of it
 * @param ramBytes working memory; none if not known
 * @param flashSource where the free flash comes from
 * @param ramSource where the working memory comes from
 */
public record Memory(
    OptionalInt flashBytes,
    OptionalInt freeFlashBytes,
    OptionalInt ramBytes,
    String flashSource,
    String ramSource) {
  static Memory of(TargetTable table) {
    return new Memory(
        number(table, "flashBytes"),
        number(table, "freeFlashBytes"),
        number(table, "ramBytes"),
        source(table, "freeFlashBytes"),
        source(table, "ramBytes"));
  }

  private static String source(TargetTable table, String name) {
    return table.find(name).map(SourcedNumber::citation).orElse("");
  }

  private static OptionalInt number(TargetTable table, String name) {
    return table.find(name).isPresent() ? OptionalInt.of(table.number(name)) : OptionalInt.empty();
  }
}
