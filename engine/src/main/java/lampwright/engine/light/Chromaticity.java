package lampwright.engine.light;

import java.util.List;
import lampwright.engine.check.Checks;
import lampwright.engine.facts.TradeNumbers;
import lampwright.engine.field.Field;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;

/**
 * A point of the CIE 1931 chromaticity diagram.
 *
 * @param x 0 to 1
 * @param y above 0, to 1, with x + y at most 1
 */
public record Chromaticity(double x, double y) {
  /** CIE standard illuminant D65 (CIE 15; IEC 61966-2-1). */
  public static final Chromaticity D65 = of(TradeNumbers.get("D65", "chromaticity").numbers());

  public static final Field<Chromaticity, Double> X =
      Field.required("x", new NumberType(Unit.COORDINATE, 0, 1), Chromaticity::x, 0.3);
  public static final Field<Chromaticity, Double> Y =
      Field.required("y", NumberType.above0(Unit.COORDINATE, 1), Chromaticity::y, 0.3);

  /** Its coordinates. The constructor checks them itself: it is called for every mix of light. */
  public static final Shape<Chromaticity> SHAPE =
      Shape.of("chromaticity", Chromaticity.class, X, Y);

  public Chromaticity {
    Checks checks = Checks.of("chromaticity").range("x", x, 0, 1).above0("y", y, 1);
    if (checks.faults().isEmpty() && x + y > 1 + 1e-9) {
      checks.add("y", Checks.plain(x) + " + " + Checks.plain(y), "x + y must be at most 1");
    }
    checks.done();
  }

  private static Chromaticity of(List<Double> xy) {
    return new Chromaticity(xy.get(0), xy.get(1));
  }

  /** CIE 1976 u' of this point (CIE 15). */
  public double uPrime() {
    return 4 * x / (-2 * x + 12 * y + 3);
  }

  /** CIE 1976 v' of this point (CIE 15). */
  public double vPrime() {
    return 9 * y / (-2 * x + 12 * y + 3);
  }

  /** CIE X, Y and Z of light of this colour, whose Y is given. */
  public double[] xyz(double luminance) {
    double sum = luminance / y;
    return new double[] {sum * x, luminance, sum * Math.max(0, 1 - x - y)};
  }

  /** Distance to another point in the CIE 1976 u'v' diagram. */
  public double distanceTo(Chromaticity other) {
    double du = uPrime() - other.uPrime();
    double dv = vPrime() - other.vPrime();
    // Root and product are exact to the last bit everywhere; hypot is not.
    return Math.sqrt(du * du + dv * dv);
  }
}
