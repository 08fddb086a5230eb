package lampwright.engine.review;

import java.util.Arrays;
import java.util.List;
import lampwright.engine.facts.SourcedNumber;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.PixelType;

/** Where a number of a pixel type comes from, for people. */
final class PartSource {
  private PartSource() {}

  /**
   * The document behind one of the type's numbers.
   *
   * @param items the names that it may have in the table of built-in types; the first found counts
   */
  static String of(PixelType type, String... items) {
    List<SourcedNumber> numbers =
        BuiltInPixelTypes.has(type) ? BuiltInPixelTypes.numbers(type.id()) : List.of();
    return Arrays.stream(items)
        .flatMap(item -> numbers.stream().filter(number -> number.item().equals(item)))
        .findFirst()
        .map(SourcedNumber::citation)
        .orElse("pixel type " + type.id());
  }
}
