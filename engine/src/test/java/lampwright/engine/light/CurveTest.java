package lampwright.engine.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.github.ajalt.colormath.model.HSV;
import com.github.ajalt.colormath.model.LUV;
import com.github.ajalt.colormath.model.RGB;
import com.github.ajalt.colormath.model.XYZ;
import com.github.ajalt.colormath.model.XYZColorSpaces;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CurveTest {
  // CIE 15: L* = 50 is 0.18419 of white, L* = 8 is 0.0088565; 100 and 0 by definition.
  @ParameterizedTest
  @CsvSource({"0.5, 0.18419, 0.000005", "0.08, 0.0088565, 0.00000005", "1, 1, 0", "0, 0, 0"})
  void lightnessIsInverted(double v, double light, double tolerance) {
    assertThat(new Curve.CieLightness().light(v)).isCloseTo(light, within(tolerance));
  }

  // IEC 61966-2-1: the linear part ends at 0.04045.
  @ParameterizedTest
  @CsvSource({"0.5019607843137255, 0.21586", "0.04045, 0.0031308", "1, 1", "0, 0"})
  void srgbIsDecoded(double v, double light) {
    assertThat(new Curve.Srgb().light(v)).isCloseTo(light, within(0.000005));
  }

  @Property(tries = 300, seed = "61")
  void lightnessAgreesWithALibrary(@ForAll @Scale(5) @DoubleRange(min = 0, max = 1) double v) {
    double light = new Curve.CieLightness().light(v);
    XYZ grey =
        new XYZ(
            (float) (0.95047 * light),
            (float) light,
            (float) (1.08883 * light),
            1f,
            XYZColorSpaces.INSTANCE.getXYZ65());

    assertThat((double) grey.toLAB().getL()).isCloseTo(100 * v, within(0.001));
  }

  @Property(tries = 300, seed = "62")
  void srgbToXyzAgreesWithALibrary(
      @ForAll @Scale(5) @DoubleRange(min = 0, max = 360) double hue,
      @ForAll @Scale(5) @DoubleRange(min = 0, max = 1) double saturation,
      @ForAll @Scale(5) @DoubleRange(min = 0, max = 1) double value) {
    RGB rgb = new HSV((float) hue, (float) saturation, (float) value, 1f).toSRGB();
    XYZ expected = rgb.toXYZ();
    double r = Curve.Srgb.decode(rgb.getR());
    double g = Curve.Srgb.decode(rgb.getG());
    double b = Curve.Srgb.decode(rgb.getB());

    // The standard's matrix has four digits, the library's more.
    assertThat(SrgbSpace.x(r, g, b)).isCloseTo(expected.getX(), within(0.0002));
    assertThat(SrgbSpace.y(r, g, b)).isCloseTo(expected.getY(), within(0.0002));
    assertThat(SrgbSpace.z(r, g, b)).isCloseTo(expected.getZ(), within(0.0002));
    double[] back = new double[3];
    SrgbSpace.fromXyz(expected.getX(), expected.getY(), expected.getZ(), back, 0);
    assertThat(back).containsExactly(new double[] {r, g, b}, within(0.001));
  }

  // CIE 15: u* = 13 L* (u' - u'n), so that u'v' can be had back from the library's L*u*v*.
  @Property(tries = 300, seed = "63")
  void uniformDiagramAgreesWithALibrary(
      @ForAll @Scale(5) @DoubleRange(min = 0.05, max = 0.6) double x,
      @ForAll @Scale(5) @DoubleRange(min = 0.1, max = 0.39) double y) {
    Chromaticity point = new Chromaticity(x, y);
    LUV luv =
        new XYZ(
                (float) (x / y * 0.5),
                0.5f,
                (float) ((1 - x - y) / y * 0.5),
                1f,
                XYZColorSpaces.INSTANCE.getXYZ65())
            .toLUV();

    double uOfD65 = 0.19783;
    double vOfD65 = 0.46834;
    assertThat(luv.getU() / (13 * luv.getL()) + uOfD65).isCloseTo(point.uPrime(), within(0.0001));
    assertThat(luv.getV() / (13 * luv.getL()) + vOfD65).isCloseTo(point.vPrime(), within(0.0001));
  }

  @Provide
  Arbitrary<Curve> curves() {
    return Arbitraries.of(
        new Curve.Power(1),
        new Curve.Power(2.2),
        new Curve.Power(4),
        new Curve.Srgb(),
        new Curve.CieLightness(),
        new Curve.Linear());
  }

  @Property(tries = 500, seed = "64")
  void curveRises(
      @ForAll("curves") Curve curve,
      @ForAll @Scale(5) @DoubleRange(min = 0, max = 1) double one,
      @ForAll @Scale(5) @DoubleRange(min = 0, max = 1) double other) {
    double low = curve.light(Math.min(one, other));
    double high = curve.light(Math.max(one, other));

    assertThat(low).isBetween(0.0, high);
    assertThat(high).isLessThanOrEqualTo(1);
    assertThat(curve.light(0)).isZero();
    assertThat(curve.light(1)).isEqualTo(1);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.99, 4.01, Double.NaN})
  void gammaOutOfRangeIsRefused(double gamma) {
    assertThatThrownBy(() -> new Curve.Power(gamma))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageEndingWith("must be between 1 and 4");
  }

  @Test
  void darkEmissionHasNoChromaticity() {
    assertThat(new Emission(Packages.bench()).chromaticity(new double[4], 0)).isEmpty();
  }
}
