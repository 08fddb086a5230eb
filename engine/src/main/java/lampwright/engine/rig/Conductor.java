package lampwright.engine.rig;

import java.util.OptionalDouble;
import java.util.OptionalInt;
import lampwright.engine.check.Checks;

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
  }

  /**
   * A conductor by its area.
   *
   * @param mm2 cross-section, 0.001 to 120 mm2
   */
  record Area(double mm2) implements Conductor {
    public static final double LEAST = 0.001;
    public static final double GREATEST = 120;
  }

  /** The gauge, if stated so. */
  default OptionalInt gauge() {
    return this instanceof Gauge gauge ? OptionalInt.of(gauge.awg) : OptionalInt.empty();
  }

  /** The area, if stated so. */
  default OptionalDouble area() {
    return this instanceof Area area ? OptionalDouble.of(area.mm2) : OptionalDouble.empty();
  }

  /** Checks it under the names that its record has for the two. */
  default void check(Checks checks, String awgField, String mm2Field) {
    if (this instanceof Gauge gauge) {
      checks.range(awgField, gauge.awg, Gauge.THICKEST, Gauge.THINNEST);
    } else if (this instanceof Area area) {
      checks.range(mm2Field, area.mm2, Area.LEAST, Area.GREATEST);
    }
  }
}
