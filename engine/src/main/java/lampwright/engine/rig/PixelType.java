package lampwright.engine.rig;

import com.google.common.collect.ImmutableMap;
import java.util.Map;
import java.util.stream.Collectors;
import lampwright.engine.check.Checks;
import lampwright.engine.field.ChoiceType;
import lampwright.engine.field.Field;
import lampwright.engine.field.Group;
import lampwright.engine.field.IdType;
import lampwright.engine.field.KeyedType;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.RecordType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;
import lampwright.engine.light.Emitter;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.light.FittedEmitter;
import lampwright.engine.light.Gamut;

/**
 * One addressable package.
 *
 * @param id its part number in lower case
 * @param order the order in which it takes its bytes
 * @param idleMilliamps what it draws when dark, 0 to 1,000 mA
 * @param volts its nominal supply, 1 to 60 V
 * @param emitters one for each letter of the order
 * @param line the times of its data line
 * @param needs the supply and data levels at which it works; the nominal supply is between the
 *     least and the greatest
 */
public record PixelType(
    String id,
    EmitterOrder order,
    double idleMilliamps,
    double volts,
    Map<EmitterKind, FittedEmitter> emitters,
    LineTiming line,
    SupplyNeeds needs) {
  public static final double DEFAULT_VOLTS = 5;
  private static final double MIN_VOLTS = 1;
  private static final double MAX_VOLTS = 60;

  public static final Field<PixelType, String> ID =
      Field.required("id", new IdType(), PixelType::id, "");
  public static final Field<PixelType, EmitterOrder> ORDER =
      Field.required(
          "order", EmitterOrder.TYPE, PixelType::order, EmitterOrder.parse("GRBW").orElseThrow());
  public static final Field<PixelType, Double> IDLE_MILLIAMPS =
      Field.usual(
          "idleMilliamps", new NumberType(Unit.MILLIAMPS, 0, 1000), PixelType::idleMilliamps, 1.0);
  public static final Field<PixelType, Double> VOLTS =
      Field.usual(
          "volts",
          new NumberType(Unit.VOLTS, MIN_VOLTS, MAX_VOLTS),
          PixelType::volts,
          DEFAULT_VOLTS);
  public static final Group<PixelType, SupplyNeeds> NEEDS =
      Group.derived(
          "needs",
          PixelType::needs,
          SupplyNeeds.SHAPE,
          type -> usualNeeds(type.get(PixelType.VOLTS)),
          SupplyNeeds::given);
  public static final Field<PixelType, Map<EmitterKind, FittedEmitter>> EMITTERS =
      Field.required(
          "emitters",
          new KeyedType<>(
              ChoiceType.of("emitter", EmitterKind.class, EmitterKind::key),
              RecordType.of(FittedEmitter.SHAPE)),
          PixelType::emitters,
          Map.of());
  public static final Field<PixelType, LineTiming> LINE =
      Field.usual("line", RecordType.of(LineTiming.SHAPE), PixelType::line, LineTiming.DEFAULT);

  public static final Shape<PixelType> SHAPE =
      Shape.of(
          "pixel-type", PixelType.class, ID, ORDER, IDLE_MILLIAMPS, VOLTS, NEEDS, EMITTERS, LINE);

  public PixelType {
    // In the order of EmitterKind, so that equal types are written alike.
    emitters = ImmutableMap.copyOf(new java.util.TreeMap<>(emitters));
    boolean match =
        emitters.size() == order.size() && emitters.keySet().containsAll(order.emitters());
    Checks checks =
        SHAPE
            .check(id, order, idleMilliamps, volts, emitters, line, needs)
            .that(
                match,
                "emitters",
                emitters.keySet().stream().map(EmitterKind::key).collect(Collectors.joining(", ")),
                "must have one entry for each letter of the order " + order.letters());
    if (match) {
      mixable(emitters, checks);
    }
    checks.done();
  }

  /** A type of which no more than its nominal supply is known. */
  public PixelType(
      String id,
      EmitterOrder order,
      double idleMilliamps,
      double volts,
      Map<EmitterKind, FittedEmitter> emitters,
      LineTiming line) {
    this(id, order, idleMilliamps, volts, emitters, line, usualNeeds(volts));
  }

  /** The needs of a type of which no more than its nominal supply is known. */
  public static SupplyNeeds usualNeeds(double volts) {
    // A wrong voltage is refused for itself; its needs must not be in the way.
    return SupplyNeeds.around(volts >= MIN_VOLTS && volts <= MAX_VOLTS ? volts : DEFAULT_VOLTS);
  }

  /**
   * Whether another type is equal. Most often it is this very one; then nothing has to be linked to
   * find out, which takes a short command some twentieth of its time.
   */
  @SuppressWarnings("ReferenceEquality")
  public boolean isSame(PixelType other) {
    return this == other || equals(other);
  }

  // Emitters in a line or at one point mix nothing.
  private static void mixable(Map<EmitterKind, FittedEmitter> emitters, Checks checks) {
    try {
      new Gamut(FittedEmitter.light(emitters));
    } catch (IllegalArgumentException unmixable) {
      String points =
          emitters.values().stream()
              .map(e -> e.light().chromaticity())
              .map(c -> "(" + Checks.plain(c.x()) + ", " + Checks.plain(c.y()) + ")")
              .collect(Collectors.joining(" "));
      checks.add(
          "emitters",
          points,
          "must span a triangle in the xy diagram, each with y of at least 0.001");
    }
  }

  /** What it is in plain words, its supply and its emitters: {@code 5 V RGBW}. */
  public String family() {
    return Checks.plain(volts) + "\u00a0V " + (order.size() == 4 ? "RGBW" : "RGB");
  }

  /** What it is, and which part: {@code 5 V RGBW (sk6812-rgbw)}. */
  public String title() {
    return family() + " (" + id + ")";
  }

  /** The light of each emitter at full drive. */
  public Map<EmitterKind, Emitter> light() {
    return FittedEmitter.light(emitters);
  }
}
