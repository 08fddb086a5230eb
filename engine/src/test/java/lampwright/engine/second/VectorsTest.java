package lampwright.engine.second;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import java.util.regex.Pattern;
import org.apache.commons.math3.fraction.BigFraction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The numbers on the way of docs/rendering.md, to the last digit, by the second renderer. */
class VectorsTest {
  private static final List<List<String>> ROWS =
      Page.of("rendering.md").section("### Numbers on the way").rows();
  private static final Pattern DECIMAL = Pattern.compile("[0-9]+(\\.[0-9]+)?");
  private static final Gamut WS2812B = new Gamut(Tables.pixelKinds().get("ws2812b").emitters());

  @ParameterizedTest
  @CsvSource({
    "'chromaticity of 1,667 K', 1667",
    "'of 3,000 K', 3000",
    "'of 6,500 K', 6500",
    "'of 25,000 K', 25000"
  })
  void temperaturesHaveTheChromaticitiesOfThePage(String what, double kelvin) {
    Chromaticity at = Tables.temperature(kelvin);
    assertThat(List.of(at.x(), at.y())).isEqualTo(decimals(what));
  }

  @Test
  void greatestLuminancesAreThoseOfThePage() {
    Gamut.Point d65 = WS2812B.point(new Chromaticity(0.3127, 0.3290));
    assertThat(List.of(d65.greatestLuminance()))
        .isEqualTo(decimals("G(D65) of `ws2812b`").subList(0, 1));
    Gamut.Point blue = WS2812B.point(Tables.signal("blue"));
    assertThat(List.of(blue.greatestLuminance()))
        .isEqualTo(decimals("G of signal blue on a `ws2812b`, which it mixes").subList(0, 1));
  }

  @Test
  void nearestToSignalRedIsThatOfThePage() {
    Gamut.Point red = WS2812B.point(Tables.signal("red"));
    assertThat(List.of(red.chromaticity().x(), red.chromaticity().y()))
        .isEqualTo(decimals("nearest to signal red that a `ws2812b` mixes"));
    double[] drives = WS2812B.drives(red.atLuminance(red.greatestLuminance()), 1);
    assertThat(List.of(drives[0], drives[1], drives[2]))
        .isEqualTo(decimals("its drives at full light"));
  }

  @Test
  void bezierIsThatOfThePage() {
    DoubleUnaryOperator ease = Easing.of("cubic-bezier(0.25, 0.1, 0.25, 1)");
    assertThat(List.of(ease.applyAsDouble(0.25), ease.applyAsDouble(0.5), ease.applyAsDouble(0.75)))
        .isEqualTo(decimals("cubic-bezier(0.25, 0.1, 0.25, 1) at 0.25, 0.5, 0.75"));
  }

  @Test
  void noiseIsThatOfThePage() {
    assertThat(List.of(Noise.noise(1, 0, 0), Noise.noise(1, 0, 1), Noise.noise(1, 0, 2)))
        .isEqualTo(decimals("noise of seed 1, package 0, turns 0, 1, 2"));
    assertThat(List.of(Noise.noise(1, 1, 0), Noise.noise(1, 1, 1), Noise.noise(1, 1, 2)))
        .isEqualTo(decimals("of package 1"));
    String seeds = "%016x, %016x".formatted(Noise.seed(1, 0), Noise.seed(1, 1));
    assertThat(seeds.toUpperCase(Locale.ROOT)).isEqualTo(value("seed(0), seed(1) of seed 1"));
  }

  /** The row of the page gives what is lit, in whole seconds. */
  @ParameterizedTest
  @CsvSource({"Fl(2+1) 15s", "Oc(2) 8s"})
  void lightCharactersAreLitAsOnThePage(String text) {
    List<Double> lit = decimals("`" + text + "`, lit");
    LightCharacter character = LightCharacter.of(text, BigFraction.ONE);
    for (int tenth = 0; tenth < character.period().intValue() / 100; tenth++) {
      double second = tenth / 10.0;
      boolean expected = false;
      for (int i = 0; i < lit.size(); i += 2) {
        expected |= lit.get(i) <= second && second < lit.get(i + 1);
      }
      assertThat(character.isLit(new BigFraction(100 * tenth)))
          .as("%s at %s s", text, second)
          .isEqualTo(expected);
    }
  }

  private static String value(String what) {
    return ROWS.stream()
        .filter(row -> row.get(0).replace("`", "").equals(what.replace("`", "")))
        .map(row -> row.get(1))
        .findFirst()
        .orElseThrow();
  }

  private static List<Double> decimals(String what) {
    return DECIMAL
        .matcher(value(what).replaceAll("ws2812b", ""))
        .results()
        .map(match -> Double.valueOf(match.group()))
        .toList();
  }
}
