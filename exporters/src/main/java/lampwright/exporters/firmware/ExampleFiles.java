package lampwright.exporters.firmware;

import com.google.common.collect.ImmutableList;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Input;
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
  private static final String REACT = "examples/React/React.ino";
  private static final String OWN_LOOP = "examples/OwnLoop/OwnLoop.ino";

  private ExampleFiles() {}

  /** The names of these files. */
  static List<String> names(Target target, boolean reacts) {
    List<String> names = new ArrayList<>(List.of(PLAY_SCENE, OWN_LOOP));
    if (reacts) {
      names.add(REACT);
    }
    if (!target.drivesPins()) {
      sketches(reacts).forEach(sketch -> names.add(driver(sketch)));
    }
    return names;
  }

  private static List<String> sketches(boolean reacts) {
    return reacts
        ? ImmutableList.<String>builder().addAll(SKETCHES).add("React").build()
        : SKETCHES;
  }

  private static String driver(String sketch) {
    return "examples/" + sketch + "/driver.ino";
  }

  static Map<String, String> texts(Target target, Rig rig, boolean reacts) throws IOException {
    Map<String, String> texts = new LinkedHashMap<>();
    texts.put(PLAY_SCENE, Resource.text(target.family() + "/examples/PlayScene.ino"));
    texts.put(OWN_LOOP, ownLoop(target, rig));
    if (reacts) {
      texts.put(REACT, Resource.text(target.family() + "-react/examples/React.ino"));
    }
    if (!target.drivesPins()) {
      String text = driverText(target, rig, reacts);
      sketches(reacts).forEach(sketch -> texts.put(driver(sketch), text));
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
  private static String driverText(Target target, Rig rig, boolean reacts) throws IOException {
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
    String inputs =
        reacts && !rig.inputs().isEmpty()
            ? Resource.filled("hook/examples/inputs.ino", inputWords(target, rig))
            : "";
    return Resource.filled(
        "hook/examples/driver.ino", Map.of("CHAINS", sends, "OUTPUTS", outputs, "INPUTS", inputs));
  }

  // Each channel has a routine of its own, as routines are told nothing when they are called.
  private static Map<String, String> inputWords(Target target, Rig rig) {
    StringBuilder routines = new StringBuilder();
    StringBuilder begins = new StringBuilder();
    for (int i = 0; i < rig.inputs().size(); i++) {
      Input input = rig.inputs().get(i);
      boolean channel = input.isChannel();
      boolean pull = !channel && input.activeLow();
      begins.append("  pinMode(INPUT_PINS[").append(i).append("], INPUT");
      begins.append(pull ? "_PULLUP" : "").append("); /* ").append(input.id()).append(" */\n");
      if (channel) {
        routines.append("static void IN_RAM edge_").append(i);
        routines.append("() { edge(").append(i).append("); }\n");
        begins.append("  attachInterrupt(digitalPinToInterrupt(INPUT_PINS[").append(i);
        begins.append("]), edge_").append(i).append(", CHANGE);\n");
      }
    }
    return Map.of(
        "PINS",
        String.join(", ", target.sketchPins(rig).inputs()),
        "ROUTINES",
        routines.toString().stripTrailing(),
        "BEGINS",
        begins.toString().stripTrailing());
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
