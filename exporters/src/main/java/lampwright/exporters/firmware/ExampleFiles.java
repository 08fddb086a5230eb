package lampwright.exporters.firmware;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;
import lampwright.exporters.target.ChainLimits;
import lampwright.exporters.target.SentTimes;
import lampwright.exporters.target.SpiBits;
import lampwright.exporters.target.Target;

/** The examples for a hobby IDE: made so that they run on the controller and its free pins. */
final class ExampleFiles {
  private static final List<String> SKETCHES = List.of("PlayScene", "OwnLoop");
  private static final String PLAY_SCENE = "examples/PlayScene/PlayScene.ino";
  private static final String OWN_LOOP = "examples/OwnLoop/OwnLoop.ino";

  private ExampleFiles() {}

  /** The names of these files. */
  static List<String> names(Target target) {
    List<String> names = new ArrayList<>(List.of(PLAY_SCENE, OWN_LOOP));
    if (!target.drivesPins()) {
      SKETCHES.forEach(sketch -> names.add(driver(sketch)));
    }
    return names;
  }

  private static String driver(String sketch) {
    return "examples/" + sketch + "/driver.ino";
  }

  static Map<String, String> texts(Target target, Rig rig) throws IOException {
    Map<String, String> texts = new LinkedHashMap<>();
    texts.put(PLAY_SCENE, Resource.text(target.family() + "/examples/PlayScene.ino"));
    texts.put(OWN_LOOP, ownLoop(target, rig));
    if (!target.drivesPins()) {
      String text = driverText(target, rig);
      SKETCHES.forEach(sketch -> texts.put(driver(sketch), text));
    }
    return texts;
  }

  private static String ownLoop(Target target, Rig rig) throws IOException {
    String place = target.family() + "/examples/OwnLoop";
    if (!target.drivesPins()) {
      return Resource.filled(place + ".ino", Map.of("PIN", target.sketchPins(rig).switchPin()));
    }
    Optional<Pin> free = target.pins(rig).switchPin();
    if (free.isEmpty()) {
      return Resource.text(place + "WithoutSwitch.ino");
    }
    Pin pin = free.get();
    String number = Integer.toString(pin.number());
    return Resource.filled(
        place + ".ino",
        Map.of(
            "PIN",
            target.namesPorts() ? pin.name() : number,
            "PORT",
            pin.port().orElse(""),
            "BIT",
            number));
  }

  /** A worked example of each function that the builder has to write. */
  private static String driverText(Target target, Rig rig) throws IOException {
    List<Chain> chains = rig.chains();
    String sends =
        chains.isEmpty()
            ? Resource.text("hook/examples/nochains.ino")
            : Resource.filled("hook/examples/chains.ino", chainWords(target, rig));
    String outputs =
        rig.outputs().isEmpty()
            ? ""
            : Resource.filled(
                "hook/examples/outputs.ino",
                Map.of("PINS", String.join(", ", target.sketchPins(rig).outputs())));
    return Resource.filled("hook/examples/driver.ino", Map.of("CHAINS", sends, "OUTPUTS", outputs));
  }

  // What sends every chain; what none can is left for the builder.
  private static Map<String, String> chainWords(Target target, Rig rig) {
    StringBuilder spi = new StringBuilder();
    StringBuilder pins = new StringBuilder();
    for (Chain chain : rig.chains()) {
      ChainLimits limits = ChainLimits.of(chain);
      Optional<SpiBits> bits = limits.spiBits(target.spiHertz());
      String what = " /* " + chain.id() + ": " + chain.type().id();
      spi.append("    {").append(bits.map(SpiBits::hertz).orElse(0));
      spi.append("UL, ").append(bits.map(SpiBits::bits).orElse(8));
      spi.append(", 0x").append(hex(bits.map(SpiBits::zero).orElse(0)));
      spi.append(", 0x").append(hex(bits.map(SpiBits::one).orElse(0))).append("},").append(what);
      spi.append(bits.isPresent() ? "" : ", which no such SPI can send").append(" */\n");
      Optional<SentTimes> times = limits.pinTimes();
      pins.append("    {").append(whole(times.map(SentTimes::t0hNs)));
      pins.append(", ").append(whole(times.map(SentTimes::t1hNs)));
      pins.append(", ").append(whole(times.map(SentTimes::bitNs))).append("},").append(what);
      pins.append(times.isPresent() ? "" : ", set its times").append(" */\n");
    }
    return Map.of(
        "BITS",
        spi.toString().stripTrailing(),
        "TIMES",
        pins.toString().stripTrailing(),
        "PINS",
        String.join(", ", target.sketchPins(rig).chains()));
  }

  private static String whole(Optional<Double> ns) {
    return Long.toString(Math.round(ns.orElse(0.0)));
  }

  private static String hex(int value) {
    return String.format(Locale.ROOT, "%02X", value);
  }
}
