package lampwright.app.command;

import com.google.common.base.Strings;
import java.io.PrintWriter;
import java.util.Locale;
import java.util.OptionalDouble;
import lampwright.engine.check.Checks;
import lampwright.engine.meter.ChainFeed;
import lampwright.engine.meter.OutputCircuit;
import lampwright.engine.meter.PackLoad;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.meter.SeriesResistor;
import lampwright.engine.rig.Conductor;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.OutputSupply;

/** The figures of battery, supply wires, fuses and driver outputs for people. */
final class PowerText {
  private final PrintWriter out;

  PowerText(PrintWriter out) {
    this.out = out;
  }

  void battery(SceneReport report) {
    report.pack().ifPresent(this::pack);
  }

  private void pack(PackLoad pack) {
    say(
        "  Battery    %s; mean %.0f mA, peak %.0f mA from the battery; %s",
        pack.hours().isPresent()
            ? String.format(Locale.ROOT, "run time %.1f h at this mean", pack.hours().getAsDouble())
            : "no current",
        pack.meanMilliamps(),
        pack.peakMilliamps(),
        fuse(pack.fuseAmps()));
  }

  void feeds(SceneReport report) {
    for (ChainFeed feed : report.feeds()) {
      say(
          "  Voltage    %s  minimum %.2f V at pixel %d in frame %d; first pixel %.2f V; needed %.2f V",
          padded(feed.chain()),
          feed.lowestVolts(),
          feed.lowestPixel(),
          feed.lowestFrame(),
          feed.leastVolts().get(0),
          feed.neededVolts());
      say(
          "  Wires      %s  lead %.2f A of %.2f A (%s), strip %.2f A of %.2f A (%s); %s",
          padded(feed.chain()),
          feed.lead().amps(),
          feed.lead().limitAmps(),
          conductor(feed.feed().lead()),
          feed.strip().amps(),
          feed.strip().limitAmps(),
          conductor(feed.feed().strip()),
          fuse(feed.fuse()));
    }
  }

  void outputs(SceneReport report) {
    for (OutputCircuit circuit : report.circuits()) {
      if (circuit.supply() == OutputSupply.CURRENT) {
        say(
            "  Driver     %s  LEDs %.2f V of %.2f V; %.2f V left for the driver",
            padded(circuit.output()),
            circuit.stringVolts(),
            circuit.volts(),
            circuit.headroomVolts());
      } else if (milliamps(report, circuit) > 0) {
        resistor(circuit);
      }
    }
  }

  private void resistor(OutputCircuit circuit) {
    if (circuit.resistor().isEmpty()) {
      say("  Resistor   %s  none: the string can't light", padded(circuit.output()));
      return;
    }
    SeriesResistor r = circuit.resistor().get();
    say(
        "  Resistor   %s  %s ohm (E24), %.3f W, rated %s; %.1f mA, %.1f mA at a supply 5 %% high",
        padded(circuit.output()),
        Checks.plain(r.ohms()),
        r.watts(),
        r.ratingWatts().isPresent()
            ? Checks.plain(r.ratingWatts().getAsDouble()) + " W"
            : "over 5 W",
        r.milliamps(),
        r.milliampsAtHighSupply());
  }

  private static double milliamps(SceneReport report, OutputCircuit circuit) {
    return report.table().layout().rig().outputs().stream()
        .filter(output -> output.id().equals(circuit.output()))
        .mapToDouble(DriverOutput::milliamps)
        .sum();
  }

  private static String conductor(Conductor conductor) {
    return conductor.gauge().isPresent()
        ? "AWG " + conductor.gauge().getAsInt()
        : Checks.plain(conductor.area().orElseThrow()) + " mm2";
  }

  private static String fuse(OptionalDouble amps) {
    return amps.isPresent()
        ? "fuse " + Checks.plain(amps.getAsDouble()) + " A"
        : "no standard fuse fits";
  }

  private void say(String form, Object... values) {
    out.println(String.format(Locale.ROOT, form, values));
  }

  private static String padded(String id) {
    return Strings.padEnd(id, 16, ' ');
  }
}
