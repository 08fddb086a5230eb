package lampwright.exporters.firmware;

import static lampwright.exporters.firmware.ReadmeFile.number;

import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import lampwright.engine.meter.PixelParts;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Rig;

/** How a rig is wired, by its own volts and parts. */
final class ReadmeWiring {
  private static final String CAPACITOR =
      number(PixelParts.CAPACITOR_MICROFARADS, 0) + " uF or more";
  private static final String DATA_RESISTOR =
      number(PixelParts.DATA_OHMS.get(0), 0)
          + " to "
          + number(PixelParts.DATA_OHMS.get(1), 0)
          + " ohm";

  private static final String SUPPLY_WIRE = "-----[fuse]-----";

  private final Rig rig;
  private final String supply;

  ReadmeWiring(Rig rig) {
    this.rig = rig;
    this.supply = number(rig.supplyVolts(), 2) + " V";
  }

  Map<String, String> words() {
    return Map.of("DIAGRAM", rig.chains().isEmpty() ? "" : diagram(), "NOTES", notes());
  }

  private String diagram() {
    String label = "    supply " + supply + " ";
    String gap = " ".repeat(label.length() + SUPPLY_WIRE.length());
    String ground = "    ground ";
    String groundWire = "-".repeat(gap.length() - ground.length());
    return String.join(
        "\n",
        label + SUPPLY_WIRE + "+------------------+------ pixel " + supply,
        gap + "|                  |",
        gap.substring(8) + "[" + CAPACITOR + "]  [100 nF at every pixel]",
        gap + "|                  |",
        ground + groundWire + "+------------------+------ pixel ground, controller ground",
        "",
        "    controller pin ----[" + DATA_RESISTOR + "]---- data in of the first pixel",
        "");
  }

  private String notes() {
    Set<String> notes = new LinkedHashSet<>();
    if (!rig.chains().isEmpty()) {
      notes.add("A resistor of " + DATA_RESISTOR + " in the data line, close to the controller.");
      notes.add(
          "A capacitor of "
              + CAPACITOR
              + ", rated for at least "
              + number(PixelParts.capacitorVolts(rig.supplyVolts()), 1)
              + " V, where the supply connects to the pixels; 100 nF next to each pixel without"
              + " its own.");
      notes.add("All grounds are common. Connect ground first and take it off last.");
    }
    for (Chain chain : rig.chains()) {
      notes.add(levels(chain.type()));
    }
    rig.battery()
        .ifPresent(
            battery ->
                notes.add(
                    "Between a pack of another voltage and the pixels, a regulator of "
                        + supply
                        + " rated for the peak current."));
    if (!rig.outputs().isEmpty()) {
      notes.add(
          "A driver output is a signal for a transistor or LED driver. Connect at most one small LED"
              + " with its resistor directly to a pin, never a motor or lamp.");
    }
    notes.add(
        "The resistor in the data line and the capacitors are common practice; the limits come from the"
            + " pixels' datasheets.");
    return "- " + String.join("\n- ", notes);
  }

  private String levels(PixelType type) {
    double needed = type.needs().inputHighVolts(rig.supplyVolts());
    double level = rig.dataLevelVolts();
    return type.id()
        + ": supply "
        + number(type.needs().minVolts(), 2)
        + " to "
        + number(type.needs().maxVolts(), 2)
        + " V; the minimum high level of its data input is "
        + number(needed, 2)
        + " V, and the level here is "
        + number(level, 2)
        + " V"
        + (level < needed ? ": use a level shifter (a 5 V gate with TTL-level inputs)." : ".");
  }
}
