package lampwright.engine.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.light.Emitter;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.light.Gamut;
import lampwright.engine.light.Planck;
import lampwright.engine.light.Spectrum;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The data file of the built-in pixel types, read here by hand. */
class PixelTypeDataTest {
  private static final Set<String> SOURCES = Set.of("published", "memory", "practice", "computed");
  private static final List<String> LINE = List.of("t0hNs", "t0lNs", "t1hNs", "t1lNs", "resetUs");

  private static final Map<String, Map<String, String>> TYPES = read();

  static Set<String> types() {
    return TYPES.keySet();
  }

  private static List<String> lines(String file) {
    try (InputStream in = PixelTypeDataTest.class.getResourceAsStream(file)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#"))
          .skip(1)
          .toList();
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static Map<String, Map<String, String>> read() {
    Map<String, Map<String, String>> types = new LinkedHashMap<>();
    for (String line : lines("pixel-types.csv")) {
      String[] cell = line.split(",", -1);
      assertThat(cell).as(line).hasSize(5);
      assertThat(SOURCES).as(line).contains(cell[3]);
      assertThat(cell[4]).as(line).isNotBlank();
      String before =
          types.computeIfAbsent(cell[0], key -> new LinkedHashMap<>()).put(cell[1], cell[2]);
      assertThat(before).as("twice: " + line).isNull();
    }
    return types;
  }

  private static double number(String type, String item) {
    return Double.parseDouble(TYPES.get(type).get(item));
  }

  @Test
  void everyPromisedTypeIsThere() {
    assertThat(types()).contains("ws2812b", "sk6812-rgb", "sk6812-rgbw", "ws2813");
    assertThat(TYPES.get("ws2812b")).containsEntry("order", "GRB");
    assertThat(TYPES.get("sk6812-rgbw")).containsEntry("order", "GRBW");
  }

  @ParameterizedTest
  @MethodSource("types")
  void typeIsWholeAndPlausible(String type) {
    assertThat(TYPES.get(type)).containsKeys(LINE.toArray(String[]::new));
    assertThat(number(type, "minVolts")).isLessThan(number(type, "volts"));
    assertThat(number(type, "maxVolts")).isGreaterThan(number(type, "volts"));
    assertThat(number(type, "idleMilliamps")).isBetween(0.1, 5.0);
    assertThat(TYPES.get(type).containsKey("inputHighShare"))
        .isNotEqualTo(TYPES.get(type).containsKey("inputHighVolts"));
    // A 0 and a 1 must stay apart at the ends of their tolerance.
    LineTiming line = BuiltInPixelTypes.find(type).orElseThrow().line();
    assertThat(line.t1h().leastNs()).isGreaterThanOrEqualTo(line.t0h().greatestNs());
    assertThat(number(type, "resetUs")).isGreaterThanOrEqualTo(50);
  }

  // The chromaticities come from the dominant wavelengths by a Gaussian spectrum.
  @ParameterizedTest
  @MethodSource("types")
  void chromaticityIsThatOfItsSpectrum(String type) {
    for (String key : List.of("r", "g", "b")) {
      double fwhm = number(type, key + ".fwhmNm");
      double peak = Spectrum.peakOfDominant(number(type, key + ".dominantNm"), fwhm);
      Chromaticity point = Spectrum.gaussian(peak, fwhm);
      assertThat(number(type, key + ".x")).isCloseTo(point.x(), within(0.00006));
      assertThat(number(type, key + ".y")).isCloseTo(point.y(), within(0.00006));
    }
  }

  @ParameterizedTest
  @MethodSource("types")
  void emittersMixDaylight(String type) {
    Map<EmitterKind, Emitter> emitters = new EnumMap<>(EmitterKind.class);
    for (EmitterKind kind : EmitterKind.values()) {
      String key = kind.key();
      if (TYPES.get(type).containsKey(key + ".mcd")) {
        Chromaticity point =
            kind == EmitterKind.WHITE
                ? Planck.chromaticity(number(type, "w.kelvin"))
                : new Chromaticity(number(type, key + ".x"), number(type, key + ".y"));
        emitters.put(kind, new Emitter(point, number(type, key + ".mcd")));
        assertThat(number(type, key + ".milliamps")).isBetween(1.0, 60.0);
      }
    }

    assertThat(emitters).hasSize(TYPES.get(type).get("order").length());
    assertThat(new Gamut(emitters).contains(Chromaticity.D65)).isTrue();
  }

  // WS2812B datasheet: a bit lasts 1.25 us, and a chain of 1,024 pixels at 30 frames a second is
  // served.
  @Test
  void ws2812bServesTheChainOfItsDatasheet() {
    double bitNs = number("ws2812b", "t1hNs") + number("ws2812b", "t1lNs");
    assertThat(bitNs).isEqualTo(1250);
    assertThat(number("ws2812b", "t0hNs") + number("ws2812b", "t0lNs")).isEqualTo(1250);
    double frameMs = (1024 * 24 * bitNs / 1000 + number("ws2812b", "resetUs")) / 1000;
    assertThat(frameMs).isLessThan(1000.0 / 30);
  }

  // Datasheets (from memory but for AVR): these have 3.3 V; AVR pins drive to their supply.
  @ParameterizedTest
  @CsvSource({
    "atmega328p, 5, 5.0, 5.5",
    "atmega32u4, 5, 5.0, 5.5",
    "attiny85, 3.7, 3.7, 5.5",
    "rp2040, 5, 3.3, none",
    "esp32, 5, 3.3, none",
    "stm32, 5, 3.3, none",
    "samd21, 5, 3.3, none"
  })
  void controllersHaveTheLevelOfTheirPins(
      String id, double supplyVolts, double pinVolts, String maxSupplyVolts) {
    Controller controller = Controller.find(id).orElseThrow();

    assertThat(controller.pinVolts(supplyVolts)).isEqualTo(pinVolts);
    assertThat(controller.maxSupplyVolts().isPresent()).isEqualTo(!maxSupplyVolts.equals("none"));
    controller
        .maxSupplyVolts()
        .ifPresent(max -> assertThat(max).isEqualTo(Double.parseDouble(maxSupplyVolts)));
  }
}
