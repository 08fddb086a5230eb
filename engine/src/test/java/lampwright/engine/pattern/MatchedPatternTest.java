package lampwright.engine.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.light.Colour;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.light.Curve;
import lampwright.engine.light.Emission;
import lampwright.engine.light.Emitter;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.light.FittedEmitter;
import lampwright.engine.light.Mixer;
import lampwright.engine.light.Mixers;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What patterns make of a matched colour, of which half the light is not half of each drive. */
class MatchedPatternTest {
  private static final BigDecimal NONE = BigDecimal.ZERO;
  private static final Curve HALVES = new Curve.Power(1);
  private static final Colour WHITE_4000 = new Colour.Kelvin(4000);

  // The pixel of which greatest-luminance mixes are tabled, 20 mA an emitter.
  private static final Map<EmitterKind, FittedEmitter> BENCH = new EnumMap<>(EmitterKind.class);

  static {
    BENCH.put(EmitterKind.RED, emitter(0.700, 0.299, 405));
    BENCH.put(EmitterKind.GREEN, emitter(0.170, 0.700, 690));
    BENCH.put(EmitterKind.BLUE, emitter(0.136, 0.050, 190));
    BENCH.put(EmitterKind.WHITE, emitter(0.3451, 0.3516, 2000));
  }

  private static FittedEmitter emitter(double x, double y, double millicandela) {
    return new FittedEmitter(new Emitter(new Chromaticity(x, y), millicandela), 20);
  }

  private static Painting paint(Pattern pattern, int pixels, Curve curve) {
    Mixer mixer = Mixers.forPixel(curve, ColourMatching.EMITTERS, false, BENCH);
    return new Painting(pattern, Collections.nCopies(pixels, mixer), curve, 1000);
  }

  private static Emission emission() {
    Map<EmitterKind, Emitter> light = new EnumMap<>(EmitterKind.class);
    BENCH.forEach((kind, emitter) -> light.put(kind, emitter.light()));
    return new Emission(light);
  }

  private static double[] array(List<Double> drives) {
    return drives.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /**
   * Full light is that of FACTS.md's table (SciPy linprog). The mixes are those of the least
   * current among all vertices of the linear programme, enumerated by a program of its own in
   * another language.
   */
  @ParameterizedTest
  @CsvSource({
    "2700, 0.2176, 0.1604, 0.0000, 0.0383",
    "4000, 0.1906, 0.1690, 0.0000, 0.2360",
    "5000, 0.0001, 0.0002, 0.0000, 0.3319",
    "6500, 0.0000, 0.0601, 0.0673, 0.3005",
    "10000, 0.0000, 0.1136, 0.1591, 0.2723"
  })
  void halfLevelDrawsTheLeast(double kelvin, double r, double g, double b, double w) {
    Steady steady = new Steady(new Look(new Colour.Kelvin(kelvin), 0.5));

    assertThat(array(paint(steady, 1, new Curve.Power(2.2)).emittersAt("0")))
        .containsExactly(new double[] {r, g, b, w}, within(0.00006));
  }

  /** The design's example: 4,000 K at half level took 13.0 mA, and takes 11.9. */
  @Test
  void halfLevelOf4000KelvinSavesCurrent() {
    Curve curve = new Curve.Power(2.2);
    double[] full = array(paint(new Steady(new Look(WHITE_4000, 1)), 1, curve).emittersAt("0"));
    double[] half = array(paint(new Steady(new Look(WHITE_4000, 0.5)), 1, curve).emittersAt("0"));
    double evenly = 0;
    double least = 0;
    for (int i = 0; i < Mixer.SLOTS; i++) {
      evenly += 20 * full[i] * Math.pow(0.5, 2.2);
      least += 20 * half[i];
    }
    assertThat(evenly).isCloseTo(12.96, within(0.01));
    assertThat(least).isCloseTo(11.91, within(0.01));
  }

  @Property(tries = 200, seed = "71")
  void tintKeepsItsLuminanceAndIsAsBrightAsBothEndsCanBe(
      @ForAll @Scale(0) @DoubleRange(min = 1700, max = 20000) double from,
      @ForAll @Scale(0) @DoubleRange(min = 1700, max = 20000) double to) {
    Tint tint = new Tint(Look.DEFAULT, from, OptionalDouble.of(to));
    Painting painting = paint(tint, 1, HALVES);
    double ends = Math.min(steadyLight(from), steadyLight(to));
    for (int ms = 0; ms < 1000; ms += 50) {
      double light = emission().luminance(array(painting.emittersAt(String.valueOf(ms))), 0);
      // On the way a white may be out of reach of that light; it is then as bright as it can be.
      double mired = 1e6 / from + (1e6 / to - 1e6 / from) * ms / 1000;
      double due = Math.min(ends, steadyLight(1e6 / mired));
      assertThat(light).isCloseTo(due, within(1e-6 * due));
    }
  }

  private static double steadyLight(double kelvin) {
    Steady steady = new Steady(new Look(new Colour.Kelvin(kelvin), 1));
    return emission().luminance(array(paint(steady, 1, HALVES).emittersAt("0")), 0);
  }

  /** FACTS.md: 2,700 K can be 1,265.0, 6,500 K 3,010.7. */
  @Test
  void tintFromWarmToColdStaysAtTheLightOfWarm() {
    Tint tint = new Tint(new Look(Colour.WHITE, 0.5), 2700, OptionalDouble.of(6500));
    Painting painting = paint(tint, 1, HALVES);

    for (String ms : new String[] {"0", "250", "500", "999"}) {
      assertThat(emission().luminance(array(painting.emittersAt(ms)), 0))
          .isCloseTo(0.5 * 1265.0, within(0.1));
    }
  }

  /**
   * A light that is exactly half is exactly half of a drive that is full: 127.5, so byte 128. At
   * 2,700 K red is full, and with three emitters one always is.
   */
  @ParameterizedTest
  @CsvSource({"4, 2700", "4, 2000", "3, 2700", "3, 4000", "3, 6504.3", "3, 12345.6"})
  void halfOfAFullDriveIsExactlyHalf(int emitters, double kelvin) {
    Map<EmitterKind, FittedEmitter> some = new EnumMap<>(BENCH);
    if (emitters == 3) {
      some.remove(EmitterKind.WHITE);
    }
    RotatingBeacon beacon =
        new RotatingBeacon(
            new Look(new Colour.Kelvin(kelvin), 1),
            NONE,
            new BigDecimal("60"),
            120,
            true,
            List.of(30.0));
    Mixer mixer = Mixers.forPixel(HALVES, ColourMatching.EMITTERS, false, some);

    // 30 of 60 degrees from the beam: (1 + cos 90) / 2.
    assertThat(new Painting(beacon, List.of(mixer), HALVES, 1000).emittersAt("0")).contains(0.5);
  }

  /** However a pattern dims a colour, it keeps its chromaticity. */
  @Property(tries = 50, seed = "72")
  void flickerKeepsTheChromaticity(
      @ForAll @Scale(0) @DoubleRange(min = 1700, max = 20000) double kelvin) {
    Flicker flicker = new Flicker(new Look(new Colour.Kelvin(kelvin), 1), 3, 0.9, BigDecimal.TEN);
    Painting painting = paint(flicker, 1, HALVES);
    Chromaticity due =
        emission().chromaticity(level(new Colour.Kelvin(kelvin), 1), 0).orElseThrow();
    for (int ms = 0; ms < 1000; ms += 70) {
      double[] drives = array(painting.emittersAt(String.valueOf(ms)));
      Chromaticity shown = emission().chromaticity(drives, 0).orElseThrow();
      assertThat(shown.x()).isCloseTo(due.x(), within(1e-9));
      assertThat(shown.y()).isCloseTo(due.y(), within(1e-9));
    }
  }

  private static double[] level(Colour colour, double level) {
    return array(paint(new Steady(new Look(colour, level)), 1, HALVES).emittersAt("0"));
  }
}
