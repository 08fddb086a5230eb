package lampwright.engine.rig;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import lampwright.engine.check.Checks;
import lampwright.engine.field.Draft;
import lampwright.engine.field.Field;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;
import lampwright.engine.field.WholeType;

/** Each of the two conductors of a feed, plus and minus, as a builder states it. */
public sealed interface Conductor {
  /**
   * A wire by its gauge.
   *
   * @param awg American wire gauge (ASTM B258), 0 to 40
   */
  record Gauge(int awg) implements Conductor {
    public static final int THICKEST = 0;
    public static final int THINNEST = 40;
    public static final WholeType<Integer> RANGE = WholeType.ofInt(Unit.GAUGE, THICKEST, THINNEST);
  }

  /**
   * A conductor by its area.
   *
   * @param mm2 cross-section, 0.001 to 120 mm2
   */
  record Area(double mm2) implements Conductor {
    public static final NumberType RANGE = new NumberType(Unit.SQUARE_MILLIMETRES, 0.001, 120);
  }

  /** The gauge, if stated so. */
  default OptionalInt gauge() {
    return this instanceof Gauge gauge ? OptionalInt.of(gauge.awg) : OptionalInt.empty();
  }

  /** The area, if stated so. */
  default OptionalDouble area() {
    return this instanceof Area area ? OptionalDouble.of(area.mm2) : OptionalDouble.empty();
  }

  /**
   * How a file has it: as one of two fields.
   *
   * @param usual what it is where neither is given; none if one must be
   */
  static Shape<Conductor> shape(String awgField, String mm2Field, Optional<Conductor> usual) {
    Field<Conductor, OptionalInt> awg =
        Field.optional(awgField, OptionalType.ofInt(Gauge.RANGE), Conductor::gauge);
    Field<Conductor, OptionalDouble> mm2 =
        Field.optional(mm2Field, OptionalType.ofNumber(Area.RANGE), Conductor::area);
    return Shape.custom(
        "conductor", Conductor.class, draft -> one(draft, awg, mm2, usual), awg, mm2);
  }

  private static Conductor one(
      Draft<Conductor> draft,
      Field<Conductor, OptionalInt> awg,
      Field<Conductor, OptionalDouble> mm2,
      Optional<Conductor> usual) {
    OptionalInt gauge = draft.get(awg);
    OptionalDouble area = draft.get(mm2);
    boolean both = gauge.isPresent() && area.isPresent();
    boolean none = gauge.isEmpty() && area.isEmpty();
    Checks.of("conductor")
        .that(
            !both && !(none && usual.isEmpty()),
            awg.name(),
            both ? awg + " and " + mm2 : "missing",
            "must be one of " + awg + " and " + mm2)
        .done();
    if (none) {
      return usual.orElseThrow();
    }
    return gauge.isPresent() ? new Gauge(gauge.getAsInt()) : new Area(area.getAsDouble());
  }
}
