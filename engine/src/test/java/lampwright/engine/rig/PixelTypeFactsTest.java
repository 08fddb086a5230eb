package lampwright.engine.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import lampwright.engine.facts.Source;
import lampwright.engine.facts.SourcedNumber;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.light.Spectrum;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Built-in pixel types against what their datasheets say, in a table of its own. */
class PixelTypeFactsTest {
  /** One line of the table. */
  record Fact(String type, String item, String value, String source, String document) {
    double least() {
      return Double.parseDouble(value.split("-", 2)[0]);
    }

    double greatest() {
      return Double.parseDouble(value.contains("-") ? value.split("-", 2)[1] : value);
    }

    double middle() {
      return (least() + greatest()) / 2;
    }
  }

  static Stream<Fact> facts() throws IOException {
    try (InputStream in = PixelTypeFactsTest.class.getResourceAsStream("pixel-type-facts.csv")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#"))
          .map(line -> line.split(",", 5))
          .map(cell -> new Fact(cell[0], cell[1], cell[2], cell[3], cell[4]));
    }
  }

  @ParameterizedTest
  @MethodSource("facts")
  void typeHasTheValueOfItsDatasheet(Fact fact) {
    PixelType type = BuiltInPixelTypes.find(fact.type()).orElseThrow();
    switch (fact.item()) {
      case "t0h" -> limits(fact, type.line().t0h());
      case "t0l" -> limits(fact, type.line().t0l());
      case "t1h" -> limits(fact, type.line().t1h());
      case "t1l" -> limits(fact, type.line().t1l());
      case "bit" -> limits(fact, type.line().bit().orElseThrow());
      // More than is asked for is in order.
      case "reset" -> assertThat(type.line().resetUs()).isBetween(fact.least(), 300.0);
      case "order" -> assertThat(type.order().letters()).isEqualTo(fact.value());
      case "idle" -> assertThat(type.idleMilliamps()).isEqualTo(fact.middle());
      case "milliamps" ->
          assertThat(type.emitters().values())
              .allSatisfy(e -> assertThat(e.milliamps()).isEqualTo(fact.middle()));
      case "failVolts" -> assertThat(type.needs().failVolts()).isEqualTo(fact.middle());
      case "minVolts" -> assertThat(type.needs().minVolts()).isEqualTo(fact.middle());
      case "maxVolts" -> assertThat(type.needs().maxVolts()).isEqualTo(fact.middle());
      case "inputHigh" ->
          assertThat(type.needs().inputHighVolts(5)).isCloseTo(fact.middle(), within(1e-9));
      case "inputMax" ->
          assertThat(type.needs().inputMaxVolts(5)).isCloseTo(fact.middle(), within(1e-9));
      default -> emitter(fact, type);
    }
  }

  private static void limits(Fact fact, LineTime time) {
    assertThat(time.leastNs()).isEqualTo(fact.least());
    assertThat(time.greatestNs()).isEqualTo(fact.greatest());
  }

  private static void emitter(Fact fact, PixelType type) {
    EmitterKind kind =
        Stream.of(EmitterKind.values())
            .filter(k -> fact.item().startsWith(k.key() + "."))
            .findFirst()
            .orElseThrow();
    var emitter = type.light().get(kind);
    if (fact.item().endsWith(".mcd")) {
      assertThat(emitter.millicandela()).isEqualTo(fact.middle());
    } else {
      assertThat(fact.item()).endsWith(".nm");
      assertThat(dominantNm(emitter.chromaticity())).isCloseTo(fact.middle(), within(0.2));
    }
  }

  /**
   * CIE 15: the dominant wavelength is where the line from the equal-energy point through a colour
   * meets the spectral locus. Found by trying every hundredth of a nanometre.
   */
  private static double dominantNm(Chromaticity point) {
    double best = 0;
    double least = Double.MAX_VALUE;
    for (int i = 44_000; i <= 64_000; i++) {
      Chromaticity locus = Spectrum.monochromatic(i / 100.0);
      double ax = point.x() - 1.0 / 3;
      double ay = point.y() - 1.0 / 3;
      double bx = locus.x() - 1.0 / 3;
      double by = locus.y() - 1.0 / 3;
      double angle = Math.abs(ax * by - ay * bx) / Math.hypot(bx, by);
      if (ax * bx + ay * by > 0 && angle < least) {
        least = angle;
        best = i / 100.0;
      }
    }
    return best;
  }

  // What the program calls published is in the facts, and what isn't is not called so.
  @Test
  void publishedNumbersAreThoseOfTheFacts() throws IOException {
    List<Fact> facts = facts().toList();
    List<String> unfounded = new ArrayList<>();
    for (PixelType type : BuiltInPixelTypes.all()) {
      for (SourcedNumber number : BuiltInPixelTypes.numbers(type.id())) {
        boolean published =
            facts.stream()
                .anyMatch(
                    f ->
                        f.type().equals(type.id())
                            && f.item().equals(factOf(number.item()))
                            && f.source().equals("published"));
        if (published != (number.source() == Source.PUBLISHED) && !isPartOf(number)) {
          unfounded.add(type.id() + " " + number);
        }
      }
    }
    assertThat(unfounded).isEmpty();
  }

  // Computed from a published number it stands beside one.
  private static boolean isPartOf(SourcedNumber number) {
    return number.source() == Source.COMPUTED;
  }

  @ParameterizedTest
  @MethodSource("facts")
  void sourceIsThatOfTheFact(Fact fact) {
    assertThat(
            BuiltInPixelTypes.numbers(fact.type()).stream()
                .filter(n -> factOf(n.item()).equals(fact.item())))
        .isNotEmpty()
        .allSatisfy(n -> assertThat(n.source().key()).isEqualTo(fact.source()));
  }

  private static String factOf(String item) {
    return switch (item) {
      case "t0hNs", "t0lNs", "t1hNs", "t1lNs" -> item.substring(0, 3);
      case "toleranceNs" -> "t0h";
      case "bitNs" -> "bit";
      case "resetUs" -> "reset";
      case "idleMilliamps" -> "idle";
      case "inputHighShare", "inputHighVolts" -> "inputHigh";
      case "inputMaxShare", "inputMaxVolts" -> "inputMax";
      case "r.milliamps", "g.milliamps", "b.milliamps", "w.milliamps" -> "milliamps";
      default -> item.replace("dominantNm", "nm");
    };
  }
}
