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
        chains.isEmpty() ? "" : Resource.filled("hook/examples/chains.ino", chainWords(rig));
    String outputs =
        rig.outputs().isEmpty()
            ? ""
            : Resource.filled("hook/examples/outputs.ino", Map.of("PINS", outputPins(target, rig)));
    return Resource.filled("hook/examples/driver.ino", Map.of("CHAINS", sends, "OUTPUTS", outputs));
  }

  // The bytes of every chain; those of an impossible one are left for the builder.
  private static Map<String, String> chainWords(Rig rig) {
    StringBuilder table = new StringBuilder();
    for (Chain chain : rig.chains()) {
      Optional<SpiBits> bits = ChainLimits.of(chain).spiBits();
      table.append("    {").append(bits.map(SpiBits::hertz).orElse(0));
      table.append("UL, 0x").append(hex(bits.map(SpiBits::zero).orElse(0)));
      table.append(", 0x").append(hex(bits.map(SpiBits::one).orElse(0))).append("},");
      table.append(" /* ").append(chain.id()).append(": ").append(chain.type().id());
      table.append(bits.isPresent() ? "" : ", which no such SPI can send").append(" */\n");
    }
    return Map.of("BITS", table.toString().stripTrailing());
  }

  private static String hex(int value) {
    return String.format(Locale.ROOT, "%02X", value);
  }

  // Stated pins, else pins that nothing else states; which of them are free the builder knows.
  private static String outputPins(Target target, Rig rig) {
    List<Optional<Pin>> stated = target.pins(rig).outputs();
    Set<Integer> taken =
        Stream.concat(target.pins(rig).chains().stream(), stated.stream())
            .flatMap(Optional::stream)
            .map(ExampleFiles::number)
            .collect(Collectors.toSet());
    Iterator<Integer> free =
        Stream.iterate(2, pin -> pin + 1).filter(pin -> !taken.contains(pin)).iterator();
    return stated.stream()
        .map(pin -> Integer.toString(pin.map(ExampleFiles::number).orElseGet(free::next)))
        .collect(Collectors.joining(", "));
  }

  private static int number(Pin pin) {
    return Integer.parseInt(pin.name().substring(2));
  }
}
