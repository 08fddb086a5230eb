package lampwright.engine.light;

import lampwright.engine.check.Checks;
import lampwright.engine.facts.TradeNumbers;
import lampwright.engine.field.Field;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;

/** The map from a code value or level, 0 to 1, to linear light, 0 to 1. */
public sealed interface Curve {
  /** The curve of a rig that names none. */
  Curve DEFAULT = new Power(2.2);

  /**
   * Linear light for a code value or level.
   *
   * @param v 0 to 1
   * @return 0 to 1, rising with v; 0 at 0 and 1 at 1; the same on every machine
   */
  double light(double v);

  /**
   * {@code light = v ^ gamma}.
   *
   * @param gamma 1 to 4
   */
  record Power(double gamma) implements Curve {
    public static final Field<Power, Double> GAMMA =
        Field.usual("gamma", new NumberType(Unit.NONE, 1, 4), Power::gamma, 2.2).alwaysWritten();

    static final Shape<Power> SHAPE = Shape.of("power", Power.class, GAMMA);

    public Power {
      // Messages name what a builder knows: the curve.
      Checks checks = Checks.of("curve");
      GAMMA.type().check(GAMMA.name(), gamma, checks);
      checks.done();
    }

    @Override
    public double light(double v) {
      return UnitPower.pow(v, gamma);
    }
  }

  /** The decoding of sRGB, IEC 61966-2-1. */
  record Srgb() implements Curve {
    private static final double LINEAR_TO = TradeNumbers.number("sRGB", "linear up to");
    private static final double LINEAR_SLOPE = TradeNumbers.number("sRGB", "linear slope");
    private static final double OFFSET = TradeNumbers.number("sRGB", "offset");
    static final double EXPONENT = TradeNumbers.number("sRGB", "exponent");

    @Override
    public double light(double v) {
      return decode(v);
    }

    /** Linear light of an sRGB code value 0 to 1 (IEC 61966-2-1). */
    public static double decode(double v) {
      return isLinear(v) ? v / LINEAR_SLOPE : UnitPower.pow(base(v), EXPONENT);
    }

    /** Whether light is proportional to a code value. */
    static boolean isLinear(double v) {
      return v <= LINEAR_TO;
    }

    /** What is raised to the {@link #EXPONENT} elsewhere, to 1. */
    static double base(double v) {
      return (v + OFFSET) / (1 + OFFSET);
    }
  }

  /** CIE 1976 lightness inverted, {@code v = L* / 100} (CIE 15). */
  record CieLightness() implements Curve {
    private static final double LINEAR_TO =
        TradeNumbers.number("CIE 1976 lightness", "linear up to");
    private static final double OFFSET = TradeNumbers.number("CIE 1976 lightness", "offset");
    private static final double SCALE = TradeNumbers.number("CIE 1976 lightness", "scale");

    // The slope of the linear part, (29/3)^3: there the two parts meet.
    private static final double KAPPA = 24389.0 / 27.0;

    @Override
    public double light(double v) {
      double lightness = 100 * v;
      if (lightness <= LINEAR_TO) {
        return lightness / KAPPA;
      }
      double root = (lightness + OFFSET) / SCALE;
      return root * root * root;
    }
  }

  /** {@code light = v}. */
  record Linear() implements Curve {
    @Override
    public double light(double v) {
      return v;
    }
  }
}
