package lampwright.engine.second;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.fraction.BigFraction;
import tools.jackson.databind.JsonNode;

/**
 * What a pattern sees.
 *
 * @param pattern as in the project
 * @param cueMs length of the cue
 */
record Row(JsonNode pattern, BigFraction cueMs, List<LightPackage> packages, Colours colours) {
  private static final JsonNode WHITE = Json.read("\"#FFFFFF\"");

  Row {
    packages = List.copyOf(packages);
  }

  int n() {
    return packages.size();
  }

  JsonNode colour() {
    return Fields.child(pattern, "colour").orElse(WHITE);
  }

  double level() {
    return Fields.number(pattern, "level", 1);
  }

  double light() {
    return colours.curve(level());
  }

  BigFraction exact(String name, String otherwise) {
    return Exact.field(pattern, name, otherwise);
  }

  List<Mix> mixes() {
    return mixes(colour());
  }

  List<Mix> mixes(JsonNode colour) {
    List<Mix> mixes = new ArrayList<>();
    packages.forEach(on -> mixes.add(colours.mix(colour, on)));
    return mixes;
  }

  BigFraction place(BigFraction t, BigFraction period) {
    return Exact.mod(t.add(exact("phase", "0").multiply(period)), period);
  }

  double share(BigFraction t, BigFraction period) {
    return Exact.near(place(t, period).divide(period));
  }

  double[][] dark() {
    return new double[n()][4];
  }
}
