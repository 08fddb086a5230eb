package lampwright.engine.second;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.IntStream;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Valid projects that use all of the rules of docs/formats.md that concern the light. */
final class RandomProject {
  private static final List<String> BUILT_IN = List.copyOf(Tables.pixelKinds().keySet());

  private final Random chance;
  private final RandomPatterns patterns;
  private final List<String> lamps = new ArrayList<>();

  private RandomProject(Random chance) {
    this.chance = chance;
    patterns = new RandomPatterns(chance);
  }

  /** The same seed gives the same text. */
  static String text(long seed) {
    return new RandomProject(new Random(seed)).project().toString();
  }

  private ObjectNode project() {
    ObjectNode project = Json.object().put("lampwright", 1);
    ArrayNode types = project.putArray("pixelTypes");
    types.add(pixelType("own-rgb", "BGR"));
    types.add(pixelType("own-rgbw", "WRGB"));
    rig(project.putObject("rig"));
    ArrayNode scenes = project.putArray("scenes");
    for (int i = 0; i < 2; i++) {
      scenes.add(scene("scene-" + i));
    }
    return project;
  }

  private ObjectNode pixelType(String id, String order) {
    ObjectNode type = Json.object().put("id", id).put("order", order);
    type.put("idleMilliamps", chance.nextInt(20) / 10.0);
    ObjectNode emitters = type.putObject("emitters");
    double[][] near = {{0.62, 0.31}, {0.15, 0.72}, {0.14, 0.05}, {0.33, 0.34}};
    for (int i = 0; i < order.length(); i++) {
      char letter = order.charAt(i);
      double[] at = near["RGBW".indexOf(letter)];
      ObjectNode emitter = emitters.putObject(("" + letter).toLowerCase(Locale.ROOT));
      emitter.put("x", decimal(at[0] + (chance.nextDouble() - 0.5) * 0.06, 4));
      emitter.put("y", decimal(at[1] + (chance.nextDouble() - 0.5) * 0.06, 4));
      emitter.put("mcd", 100 + chance.nextInt(2000));
      emitter.put("milliamps", 5 + chance.nextInt(30));
    }
    return type;
  }

  private static BigDecimal decimal(double value, int places) {
    return BigDecimal.valueOf(Math.max(0.001, value)).setScale(places, RoundingMode.UP);
  }

  private void rig(ObjectNode rig) {
    rig.put("supplyLimitMilliamps", 20 + chance.nextInt(400));
    rig.put("currentCap", patterns.oneOf("off", "off", "scene", "frame"));
    rig.put("brightnessCap", patterns.oneOf(1.0, 1.0, 0.3, 0.777));
    rig.put("colourMatching", patterns.oneOf("direct", "emitters"));
    rig.put("whiteFromRgb", chance.nextBoolean());
    ObjectNode curve = rig.putObject("curve");
    curve.put("kind", patterns.oneOf("power", "srgb", "cie-lightness", "linear"));
    if (curve.get("kind").stringValue().equals("power")) {
      curve.put("gamma", patterns.oneOf(1.0, 2.0, 2.2, 2.8));
    }
    ArrayNode chains = rig.putArray("chains");
    ArrayNode outputs = rig.putArray("outputs");
    ArrayNode lampList = rig.putArray("lamps");
    for (int i = 0; i < 2; i++) {
      chain(chains.addObject().put("id", "chain-" + i), lampList);
      output(outputs.addObject().put("id", "output-" + i), lampList);
    }
    chain(chains.addObject().put("id", "chain-2"), lampList);
  }

  private void chain(ObjectNode chain, ArrayNode lampList) {
    String id = chain.get("id").stringValue();
    List<String> types = new ArrayList<>(BUILT_IN);
    for (int i = 0; i < 4; i++) {
      types.addAll(List.of("own-rgb", "own-rgbw", "sk6812-rgbw"));
    }
    String type = types.get(chance.nextInt(types.size()));
    chain.put("pixelType", type).put("pixels", 7);
    if (type.endsWith("rgbw") && chance.nextBoolean()) {
      chain.put("whiteKelvin", patterns.kelvin());
      chain.put("order", "RGBW");
    }
    ObjectNode backwards = lamp(lampList, id + "-a");
    ArrayNode runs = backwards.putArray("pixels");
    runs.addObject().put("chain", id).put("from", 5).put("count", 2);
    runs.addObject().put("chain", id).put("from", 1);
    lamp(lampList, id + "-b")
        .putArray("pixels")
        .addObject()
        .put("chain", id)
        .put("from", 2)
        .put("count", 3);
  }

  private void output(ObjectNode output, ArrayNode lampList) {
    output.put("milliamps", chance.nextInt(50) / 2.0);
    lamp(lampList, output.get("id").stringValue() + "-lamp")
        .put("output", output.get("id").stringValue());
  }

  private ObjectNode lamp(ArrayNode list, String id) {
    ObjectNode lamp = list.addObject().put("id", id);
    lamps.add(id);
    if (chance.nextInt(3) == 0) {
      lamp.putObject("feel")
          .put("riseMs", chance.nextInt(3) * 60.5)
          .put("fallMs", chance.nextInt(3) * 90);
    }
    return lamp;
  }

  private ObjectNode scene(String id) {
    int lengthMs = 400 + chance.nextInt(600);
    ObjectNode scene = Json.object().put("id", id).put("lengthMs", lengthMs);
    scene.put(
        "framesPerSecond",
        new BigDecimal(patterns.oneOf("50", "29.97", "30", "24", "61.3333333333333333333333")));
    scene.put("loop", chance.nextBoolean());
    scene.put("dither", patterns.oneOf("off", "temporal"));
    ArrayNode tracks = scene.putArray("tracks");
    IntStream.range(0, 5).forEach(i -> track(tracks.addObject(), lengthMs));
    return scene;
  }

  private void track(ObjectNode track, int lengthMs) {
    List<String> some = new ArrayList<>(lamps);
    Collections.shuffle(some, chance);
    ArrayNode names = track.putArray("lamps");
    some.subList(0, 1 + chance.nextInt(some.size())).forEach(names::add);
    track.put("span", patterns.oneOf("each", "joined"));
    ArrayNode cues = track.putArray("cues");
    for (int i = 0; i < 3; i++) {
      ObjectNode cue = cues.addObject();
      cue.put("startMs", patterns.ms(lengthMs));
      cue.put("lengthMs", patterns.ms(lengthMs).add(BigDecimal.ONE));
      cue.put("fadeInMs", patterns.ms(1 + chance.nextInt(200)));
      cue.put("fadeOutMs", patterns.ms(1 + chance.nextInt(200)));
      cue.put("blend", patterns.oneOf("cover", "add", "brighter", "scale"));
      cue.set("pattern", patterns.pattern());
    }
  }
}
