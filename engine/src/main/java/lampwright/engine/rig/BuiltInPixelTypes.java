package lampwright.engine.rig;

import com.google.common.base.Splitter;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentMap;
import java.util.regex.Pattern;
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
  // Each is made when it is asked for: most projects name one.
  private static final ConcurrentMap<String, PixelType> MADE = new ConcurrentHashMap<>();

  private BuiltInPixelTypes() {}

  /**
   * What represents a type that can't be read: it has every emitter, so that it fits whatever a
   * chain asks for.
   */
  public static PixelType standIn() {
    for (String id : ids()) {
      if (NUMBERS.get(id, "order").value().length() == EmitterKind.values().length) {
        return find(id).orElseThrow();
      }
    }
    throw new IllegalStateException("no built-in pixel type has every emitter");
  }

  /** The ids of all of them, in the order in which they are listed to people. */
  public static List<String> ids() {
    return NUMBERS.subjects();
  }

  /** All of them, in the same order. */
  public static List<PixelType> all() {
    return ids().stream().map(id -> find(id).orElseThrow()).toList();
  }

  /** The type with this id. */
  public static Optional<PixelType> find(String id) {
    if (!ids().contains(id)) {
      return Optional.empty();
    }
    PixelType made = MADE.get(id);
    if (made == null) {
      // Two who ask at once may both make it; they get the same one.
      PixelType mine = type(id, NUMBERS.of(id));
      PixelType first = MADE.putIfAbsent(id, mine);
      made = first == null ? mine : first;
    }
    return Optional.of(made);
  }

  /** Whether this type is, as it is, a built-in one. */
  public static boolean has(PixelType type) {
    return find(type.id()).filter(type::isSame).isPresent();
  }

  /** The numbers of a built-in type with their sources; none for another type. */
  public static List<SourcedNumber> numbers(String id) {
    return NUMBERS.of(id);
  }

  private static PixelType type(String id, List<SourcedNumber> numbers) {
    Map<String, String> text = new HashMap<>();
    Map<String, Double> number = new HashMap<>();
    for (SourcedNumber each : numbers) {
      text.put(each.item(), each.value());
      if (NUMBER.matcher(each.value()).matches()) {
        number.put(each.item(), Double.valueOf(each.value()));
      }
    }
    EmitterOrder order = EmitterOrder.parse(text.get("order")).orElseThrow();
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
