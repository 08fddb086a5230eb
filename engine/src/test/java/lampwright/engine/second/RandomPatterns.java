package lampwright.engine.second;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Random;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** Valid patterns and colours of every kind. */
final class RandomPatterns {
  private final Random chance;

  RandomPatterns(Random chance) {
    this.chance = chance;
  }

  @SafeVarargs
  final <T> T oneOf(T... choices) {
    return choices[chance.nextInt(choices.length)];
  }

  /** Whole, with some or with many decimals. */
  BigDecimal ms(int below) {
    BigDecimal value = BigDecimal.valueOf(chance.nextDouble() * below);
    return value.setScale(oneOf(0, 0, 1, 13), RoundingMode.DOWN);
  }

  private BigDecimal aboveZero(int below) {
    return ms(below).add(BigDecimal.ONE);
  }

  private BigDecimal share() {
    return oneOf(0, 1, 2, 2).equals(2)
        ? BigDecimal.valueOf(chance.nextDouble()).setScale(3, RoundingMode.DOWN)
        : new BigDecimal(oneOf("0", "1"));
  }

  BigDecimal kelvin() {
    return BigDecimal.valueOf(
        oneOf(1667, 25_000, 1667 + chance.nextInt(5000), 2000 + chance.nextInt(9000)));
  }

  private ObjectNode colour() {
    ObjectNode colour = Json.object();
    switch (chance.nextInt(5)) {
      case 0 ->
          colour.put(
              "srgb", oneOf("#FFFFFF", "#000000", "#%06X".formatted(chance.nextInt(1 << 24))));
      case 1 -> colour.put("hue", oneOf(0, 360, chance.nextInt(360))).put("saturation", share());
      case 2 -> colour.put("kelvin", kelvin());
      case 3 ->
          colour.put("signal", oneOf("amber", "red", "white", "blue", "green", "selective-yellow"));
      default -> {
        ObjectNode drive = colour.putObject("drive");
        drive.put("r", share()).put("g", share()).put("b", share()).put("w", share());
      }
    }
    return colour;
  }

  private String easing() {
    return oneOf(
        "linear",
        "hold",
        "smooth",
        "cubic-bezier(%s, %s, %s, %s)"
            .formatted(
                share(), chance.nextInt(30) / 10.0 - 1, share(), chance.nextInt(30) / 10.0 - 1));
  }

  ObjectNode pattern() {
    ObjectNode pattern = Json.object();
    if (chance.nextInt(4) > 0) {
      pattern.set("colour", colour());
    }
    if (chance.nextBoolean()) {
      pattern.put("level", share());
    }
    int kind = chance.nextInt(14);
    if (chance.nextBoolean() && kind != 0 && kind < 11) {
      pattern.put("phase", new BigDecimal(oneOf("0.25", "-0.3333333333333333333", "7.1", "-2")));
    }
    switch (kind) {
      case 0 -> pattern.put("kind", "steady");
      case 1 -> flash(pattern.put("kind", "flash"));
      case 2 ->
          pattern.put("kind", "indicator").put("perMinute", aboveZero(900)).put("onShare", share());
      case 3 -> beacon(pattern.put("kind", "rotating-beacon"));
      case 4 -> chase(pattern.put("kind", "chase"));
      case 5 -> fill(pattern.put("kind", "fill"));
      case 6 -> cycle(pattern.put("kind", "colour-cycle"));
      case 7 -> keyframes(pattern.put("kind", "keyframes"));
      case 8 ->
          pattern.put("kind", "breathe").put("periodMs", aboveZero(800)).put("lowLevel", share());
      case 9 -> pattern.put("kind", "test-walk").put("stepMs", aboveZero(50));
      case 10 -> character(pattern.put("kind", "light-character"));
      case 11 -> flicker(pattern.put("kind", "flicker"));
      case 12 -> tint(pattern.put("kind", "tint"));
      default -> fade(pattern.put("kind", "fade"));
    }
    return pattern;
  }

  private void flash(ObjectNode pattern) {
    pattern.put("onMs", aboveZero(200)).put("offMs", ms(200));
    pattern.put("flashes", 1 + chance.nextInt(4)).put("gapMs", ms(200));
  }

  private void beacon(ObjectNode pattern) {
    pattern
        .put("perMinute", aboveZero(400))
        .put("beamDegrees", oneOf(0.001, 40.5, 90.0, 180.0, 360.0));
    pattern.put("clockwise", chance.nextBoolean());
    if (chance.nextInt(3) == 0) {
      ArrayNode angles = pattern.putArray("angles");
      for (int i = 0; i < 1 + chance.nextInt(4); i++) {
        angles.add(chance.nextInt(721) - 360.0);
      }
    }
  }

  private void chase(ObjectNode pattern) {
    pattern.put("stepMs", aboveZero(120)).put("width", 1 + chance.nextInt(4));
    pattern.put("tail", chance.nextInt(6)).put("bounce", chance.nextBoolean());
  }

  private void fill(ObjectNode pattern) {
    pattern.put("overMs", ms(300)).put("holdMs", aboveZero(200)).put("offMs", ms(300));
  }

  private void cycle(ObjectNode pattern) {
    pattern.put("periodMs", aboveZero(900)).put("spread", chance.nextInt(40) / 10.0 - 2);
    pattern.put("saturation", share()).put("backwards", chance.nextBoolean());
  }

  private void keyframes(ObjectNode pattern) {
    pattern.put("repeat", chance.nextBoolean());
    ArrayNode frames = pattern.putArray("frames");
    BigDecimal at = ms(100);
    for (int i = 0; i < 1 + chance.nextInt(5); i++) {
      ObjectNode frame = frames.addObject().put("atMs", at).put("easing", easing());
      if (chance.nextInt(3) > 0) {
        frame.set("colour", colour());
      }
      if (chance.nextInt(3) > 0) {
        frame.put("level", share());
      }
      at = chance.nextInt(4) > 0 ? at.add(ms(300)) : at;
    }
  }

  private void character(ObjectNode pattern) {
    pattern.put(
        "character",
        oneOf(
            "F",
            " F 3s ",
            "Iso 1.25 s",
            "LFl 4.001s",
            "Fl 3s",
            "Fl(3) 7s",
            "Fl(2+1+4) 2.5s",
            "Oc 4s",
            "Oc(3)5s",
            "Oc(2+3) 9s",
            "Q",
            "VQ",
            "UQ",
            "Q(3) 6s",
            "VQ(6)+LFl 10s",
            "IQ 3s",
            "IVQ 1s",
            "IUQ 2.2s",
            "UQ(5) 1.5s",
            "Mo(A)",
            "Mo(K7) 20s",
            "Mo(JQZ0)"));
    pattern.put("unitMs", aboveZero(150));
  }

  private void flicker(ObjectNode pattern) {
    pattern.put("seed", oneOf(0L, 9_007_199_254_740_991L, (long) chance.nextInt(1000)));
    pattern.put("depth", share()).put("rateHz", aboveZero(30));
  }

  private void tint(ObjectNode pattern) {
    pattern.put("kelvin", kelvin());
    if (chance.nextInt(3) > 0) {
      pattern.put("toKelvin", kelvin());
    }
  }

  private void fade(ObjectNode pattern) {
    pattern.set("from", colour());
    if (chance.nextBoolean()) {
      pattern.set("to", colour());
    }
    pattern.put("fromLevel", share()).put("toLevel", share()).put("easing", easing());
  }
}
