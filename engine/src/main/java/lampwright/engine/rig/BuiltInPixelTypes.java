package lampwright.engine.rig;

import com.google.common.base.Splitter;
import com.google.common.collect.ImmutableMap;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import lampwright.engine.facts.NumberTable;
import lampwright.engine.facts.SourcedNumber;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.light.Emitter;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.light.FittedEmitter;
import lampwright.engine.light.Planck;

/** The pixel types that every project knows, by part number; from the table pixel-types.csv. */
public final class BuiltInPixelTypes {
  private static final Pattern NUMBER = Pattern.compile("[0-9.]+");
  private static final NumberTable NUMBERS =
      NumberTable.read(
          Objects.requireNonNull(BuiltInPixelTypes.class.getResourceAsStream("pixel-types.csv")));
  private static final ImmutableMap<String, PixelType> TYPES =
      NUMBERS.subjects().stream()
          .collect(ImmutableMap.toImmutableMap(id -> id, id -> type(id, NUMBERS.of(id))));

  private BuiltInPixelTypes() {}

  /**
   * What represents a type that can't be read: it has every emitter, so that it fits whatever a
   * chain asks for.
   */
  public static PixelType standIn() {
    return all().stream().filter(type -> type.order().size() == 4).findFirst().orElseThrow();
  }

  /** All of them, in the order in which they are listed to people. */
  public static List<PixelType> all() {
    return TYPES.values().asList();
  }

  /** The type with this id. */
  public static Optional<PixelType> find(String id) {
    return Optional.ofNullable(TYPES.get(id));
  }

  /** The numbers of a built-in type with their sources; none for another type. */
  public static List<SourcedNumber> numbers(String id) {
    return NUMBERS.of(id);
  }

  private static PixelType type(String id, List<SourcedNumber> numbers) {
    Map<String, String> text =
        numbers.stream().collect(Collectors.toMap(SourcedNumber::item, SourcedNumber::value));
    EmitterOrder order = EmitterOrder.parse(text.get("order")).orElseThrow();
    Map<String, Double> number =
        numbers.stream()
            .filter(n -> NUMBER.matcher(n.value()).matches())
            .collect(Collectors.toMap(SourcedNumber::item, n -> Double.valueOf(n.value())));
    Map<EmitterKind, FittedEmitter> emitters = new EnumMap<>(EmitterKind.class);
    for (EmitterKind kind : order.emitters()) {
      emitters.put(kind, emitter(kind, number));
    }
    return new PixelType(
        id,
        order,
        number.get("idleMilliamps"),
        number.get("volts"),
        emitters,
        line(text, number.get("resetUs")),
        needs(number));
  }

  private static SupplyNeeds needs(Map<String, Double> number) {
    double minVolts = number.get("minVolts");
    return new SupplyNeeds(
        number.getOrDefault("failVolts", minVolts),
        minVolts,
        number.get("maxVolts"),
        level(number, "inputHigh"),
        level(number, "inputMax"));
  }

  private static InputLevel level(Map<String, Double> number, String item) {
    return new InputLevel(
        number.getOrDefault(item + "Share", 0.0), number.getOrDefault(item + "Volts", 0.0));
  }

  private static LineTiming line(Map<String, String> text, double resetUs) {
    return new LineTiming(
        time(text, "t0hNs"),
        time(text, "t0lNs"),
        time(text, "t1hNs"),
        time(text, "t1lNs"),
        Optional.ofNullable(text.get("bitNs")).map(BuiltInPixelTypes::range),
        resetUs);
  }

  // A number, or a range such as 300-450.
  private static LineTime time(Map<String, String> text, String item) {
    String value = text.get(item);
    return NUMBER.matcher(value).matches()
        ? new LineTime.Nominal(
            Double.parseDouble(value), Double.parseDouble(text.get("toleranceNs")))
        : range(value);
  }

  private static LineTime.Range range(String value) {
    List<String> ends = Splitter.on('-').splitToList(value);
    return new LineTime.Range(Double.parseDouble(ends.get(0)), Double.parseDouble(ends.get(1)));
  }

  private static FittedEmitter emitter(EmitterKind kind, Map<String, Double> number) {
    String item = kind.key() + ".";
    Chromaticity chromaticity =
        kind == EmitterKind.WHITE
            ? Planck.chromaticity(number.get(item + "kelvin"))
            : new Chromaticity(number.get(item + "x"), number.get(item + "y"));
    return new FittedEmitter(
        new Emitter(chromaticity, number.get(item + "mcd")), number.get(item + "milliamps"));
  }
}
