package lampwright.exporters.target;

import com.google.common.base.Strings;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import lampwright.engine.rig.Pin;

/**
 * The names of a family's pins, as its makers write them. Immutable.
 *
 * @param ranges in the order in which they are listed to people
 */
record PinNames(List<Range> ranges) {
  private static final Pattern RANGE = Pattern.compile("(P[A-L]|GP|GPIO|)([0-9]+)-([0-9]+)");

  PinNames {
    ranges = List.copyOf(ranges);
  }

  /**
   * Names that only differ by their number.
   *
   * @param stem what is before the number, such as {@code PA}; empty where boards number the pins
   * @param digits as many at least, with zeros before
   * @param first number
   * @param last number
   */
  record Range(String stem, int digits, int first, int last) {
    static Range of(String text) {
      Matcher parts = RANGE.matcher(text);
      if (!parts.matches()) {
        throw new IllegalArgumentException(text + ": must be a range of pins such as PA0-15");
      }
      String first = parts.group(2);
      int last = Integer.parseInt(parts.group(3));
      return new Range(parts.group(1), first.length(), Integer.parseInt(first), last);
    }

    private String name(int number) {
      return stem + Strings.padStart(Integer.toString(number), digits, '0');
    }

    private Optional<Pin> find(Pin pin) {
      return Optional.of(new Pin(name(pin.number())))
          .filter(own -> own.equals(pin) && pin.number() >= first && pin.number() <= last);
    }

    private String words() {
      return name(first) + " to " + name(last) + (stem.isEmpty() ? " (numbers of the board)" : "");
    }
  }

  /** The names in ranges such as {@code PA0-15}. */
  static PinNames of(List<String> texts) {
    return new PinNames(texts.stream().map(Range::of).toList());
  }

  /** A pin as its makers write it; none if no member of the family can have it. */
  Optional<Pin> find(Pin pin) {
    return ranges.stream().flatMap(range -> range.find(pin).stream()).findFirst();
  }

  /** {@code PA0 to PA15, PB0 to PB15}. */
  String words() {
    return ranges.stream().map(Range::words).collect(Collectors.joining(", "));
  }
}
