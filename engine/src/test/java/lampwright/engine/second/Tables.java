package lampwright.engine.second;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** The tables that docs/rendering.md names, read from the pages. */
final class Tables {
  private static final Page NUMBERS = Page.of("numbers.md");

  /** Rows of nm, xbar, ybar, zbar. */
  private static final List<double[]> OBSERVER = observer();

  private static final Map<String, Chromaticity> SIGNALS = signals();
  private static final Map<Double, Chromaticity> TEMPERATURES = new ConcurrentHashMap<>();

  private Tables() {}

  private static List<double[]> observer() {
    return Page.of("rendering.md").section("## Observer table").rows().stream()
        .map(row -> row.stream().mapToDouble(Double::parseDouble).toArray())
        .toList();
  }

  static Chromaticity signal(String name) {
    return SIGNALS.get(name);
  }

  private static Map<String, Chromaticity> signals() {
    Map<String, Chromaticity> signals = new LinkedHashMap<>();
    for (List<String> row : NUMBERS.section("### signal colour").rows()) {
      String[] point = row.get(1).split(" ", -1);
      signals.put(
          row.get(0), new Chromaticity(Double.parseDouble(point[0]), Double.parseDouble(point[1])));
    }
    return signals;
  }

  /** Planck's law, summed over the observer. */
  static Chromaticity temperature(double kelvin) {
    return TEMPERATURES.computeIfAbsent(kelvin, Tables::summed);
  }

  private static Chromaticity summed(double kelvin) {
    double x = 0;
    double y = 0;
    double z = 0;
    for (double[] row : OBSERVER) {
      double nm = row[0];
      double m = nm / 1000;
      double q = m * m;
      double p = 1 / (StrictMath.exp((0.01438776877 * 1e9 / nm) / kelvin) - 1);
      x = x + (row[1] / (q * q * m)) * p;
      y = y + (row[2] / (q * q * m)) * p;
      z = z + (row[3] / (q * q * m)) * p;
    }
    return new Chromaticity(x / (x + y + z), y / (x + y + z));
  }

  /** The built-in pixel types by id. */
  static Map<String, PixelKind> pixelKinds() {
    Map<String, PixelKind> kinds = new LinkedHashMap<>();
    for (String heading : NUMBERS.headings("### `")) {
      Map<String, String> values = new LinkedHashMap<>();
      NUMBERS.section(heading).rows().forEach(row -> values.put(row.get(0), row.get(1)));
      if (values.containsKey("order")) {
        kinds.put(heading.substring(5, heading.length() - 1), kind(values));
      }
    }
    return kinds;
  }

  private static PixelKind kind(Map<String, String> values) {
    List<Emitter> emitters = new ArrayList<>();
    for (String letter : List.of("r", "g", "b")) {
      Chromaticity at =
          new Chromaticity(number(values, letter + ".x"), number(values, letter + ".y"));
      emitters.add(emitter(values, letter, at));
    }
    if (values.containsKey("w.kelvin")) {
      emitters.add(emitter(values, "w", temperature(number(values, "w.kelvin"))));
    }
    return new PixelKind(values.get("order"), number(values, "idleMilliamps"), emitters);
  }

  private static Emitter emitter(Map<String, String> values, String letter, Chromaticity at) {
    return new Emitter(at, number(values, letter + ".mcd"), number(values, letter + ".milliamps"));
  }

  private static double number(Map<String, String> values, String name) {
    return Double.parseDouble(values.get(name));
  }
}
