package lampwright.exporters.firmware;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;
import lampwright.exporters.target.ChainLimits;
import lampwright.exporters.target.PinPlan;
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
    Optional<Pin> pin = target.pins(rig).switchPin();
    if (pin.isEmpty() && target.drivesPins()) {
      return Resource.text(target.family() + "/examples/OwnLoopWithoutSwitch.ino");
    }
    String name = pin.map(Pin::name).orElse("");
    String number = name.isEmpty() ? "2" : name.substring(2);
    String port = name.isEmpty() ? "" : name.substring(1, 2);
    return Resource.filled(
        target.family() + "/examples/OwnLoop.ino",
        Map.of("PIN", target.namesPorts() ? name : number, "PORT", port, "BIT", number));
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
            : Resource.filled("hook/examples/outputs.ino", Map.of("PINS", outputPins(target, rig)));
    return Resource.filled("hook/examples/driver.ino", Map.of("CHAINS", sends, "OUTPUTS", outputs));
  }

  // What sends every chain; what none can is left for the builder.
  private static Map<String, String> chainWords(Target target, Rig rig) {
    StringBuilder spi = new StringBuilder();
    StringBuilder pins = new StringBuilder();
    for (Chain chain : rig.chains()) {
      ChainLimits limits = ChainLimits.of(chain);
      Optional<SpiBits> bits = limits.spiBits();
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
        numbers(target.pins(rig), false));
  }

  private static String whole(Optional<Double> ns) {
    return Long.toString(Math.round(ns.orElse(0.0)));
  }

  private static String hex(int value) {
    return String.format(Locale.ROOT, "%02X", value);
  }

  private static String outputPins(Target target, Rig rig) {
    return numbers(target.pins(rig), true);
  }

  // Stated pins, else pins that nothing else states; which of them are free the builder knows.
  private static String numbers(PinPlan plan, boolean ofOutputs) {
    Set<Integer> taken =
        Stream.concat(plan.chains().stream(), plan.outputs().stream())
            .flatMap(Optional::stream)
            .map(ExampleFiles::number)
            .collect(Collectors.toSet());
    // Chains that state no pin come before outputs that don't.
    long skipped = ofOutputs ? plan.chains().stream().filter(Optional::isEmpty).count() : 0;
    Iterator<Integer> free =
        Stream.iterate(2, pin -> pin + 1)
            .filter(pin -> !taken.contains(pin))
            .skip(skipped)
            .iterator();
    return (ofOutputs ? plan.outputs() : plan.chains())
        .stream()
            .map(pin -> Integer.toString(pin.map(ExampleFiles::number).orElseGet(free::next)))
            .collect(Collectors.joining(", "));
  }

  private static int number(Pin pin) {
    return Integer.parseInt(pin.name().substring(2));
  }
}
