package lampwright.engine.second;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import tools.jackson.databind.JsonNode;

/** What is fitted to a model. */
final class Rig {
  /** All of a frame, in its order. */
  final List<LightPackage> packages = new ArrayList<>();

  final Map<String, Lamp> lamps = new LinkedHashMap<>();
  final Colours colours;
  final double idle;
  final double limit;
  final double brightnessCap;
  final String currentCap;

  /** A lamp: numbers of its packages. */
  record Lamp(List<Integer> packages, Optional<JsonNode> feel) {}

  Rig(JsonNode project) {
    JsonNode rig = project.get("rig");
    colours = new Colours(rig);
    limit = Fields.number(rig, "supplyLimitMilliamps", 2000);
    brightnessCap = Fields.number(rig, "brightnessCap", 1);
    currentCap = Fields.text(rig, "currentCap", "off");
    Map<String, PixelKind> kinds = Tables.pixelKinds();
    project.path("pixelTypes").forEach(type -> kinds.put(type.get("id").stringValue(), own(type)));
    Map<String, Integer> firsts = new LinkedHashMap<>();
    double pixelsIdle = 0;
    for (JsonNode chain : rig.path("chains")) {
      firsts.put("chain " + chain.get("id").stringValue(), packages.size());
      PixelKind kind = fitted(chain, kinds.get(chain.get("pixelType").stringValue()));
      LightPackage pixel = LightPackage.pixel(kind, new Gamut(kind.emitters()));
      int pixels = Fields.whole(chain, "pixels", 0);
      Stream.generate(() -> pixel).limit(pixels).forEach(packages::add);
      pixelsIdle = pixelsIdle + pixels * kind.idleMilliamps();
    }
    idle = pixelsIdle;
    for (JsonNode output : rig.path("outputs")) {
      firsts.put("output " + output.get("id").stringValue(), packages.size());
      packages.add(LightPackage.output(Fields.number(output, "milliamps", 20)));
    }
    rig.path("lamps").forEach(lamp -> lamps.put(lamp.get("id").stringValue(), lamp(lamp, firsts)));
  }

  private static PixelKind own(JsonNode type) {
    List<Emitter> emitters = new ArrayList<>();
    for (String letter : List.of("r", "g", "b", "w")) {
      Fields.child(type.get("emitters"), letter).map(Rig::emitter).ifPresent(emitters::add);
    }
    String order = type.get("order").stringValue();
    return new PixelKind(order, Fields.number(type, "idleMilliamps", 1), emitters);
  }

  private static Emitter emitter(JsonNode node) {
    return new Emitter(
        new Chromaticity(node.get("x").doubleValue(), node.get("y").doubleValue()),
        node.get("mcd").doubleValue(),
        Fields.number(node, "milliamps", 20));
  }

  private static PixelKind fitted(JsonNode chain, PixelKind type) {
    PixelKind kind = type.withOrder(Fields.text(chain, "order", type.order()));
    return Fields.child(chain, "whiteKelvin")
        .map(kelvin -> kind.withWhite(Tables.temperature(kelvin.doubleValue())))
        .orElse(kind);
  }

  private static Lamp lamp(JsonNode lamp, Map<String, Integer> firsts) {
    List<Integer> numbers = new ArrayList<>();
    if (lamp.has("output")) {
      numbers.add(firsts.get("output " + lamp.get("output").stringValue()));
    }
    for (JsonNode run : lamp.path("pixels")) {
      int from =
          firsts.get("chain " + run.get("chain").stringValue()) + Fields.whole(run, "from", 0);
      for (int i = 0; i < Fields.whole(run, "count", 1); i++) {
        numbers.add(from + i);
      }
    }
    return new Lamp(List.copyOf(numbers), Fields.child(lamp, "feel"));
  }

  int frameBytes() {
    return packages.stream().mapToInt(LightPackage::emitters).sum();
  }
}
