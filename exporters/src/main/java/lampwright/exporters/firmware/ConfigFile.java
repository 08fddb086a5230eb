package lampwright.exporters.firmware;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import lampwright.engine.rig.BitTimes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.LineTiming;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.table.CText;

/** The configuration header: what is fitted, and on which pins. */
final class ConfigFile {
  private static final String PREFIX = "#define LAMPWRIGHT_";
  // The WS2813 datasheet gives ranges: T0H 300 to 450 ns, T1H 750 to 1,000 ns; their middles.
  private static final LineTiming WS2813 = LineTiming.ofNominal(375, 1000, 875, 500, 75, 300);

  private final StringBuilder text = new StringBuilder();

  private ConfigFile() {}

  static String of(ProjectJob job, PinPlan pins, int packedBytes) {
    ConfigFile file = new ConfigFile();
    file.write(job, pins, packedBytes);
    return file.text.toString();
  }

  private void write(ProjectJob job, PinPlan pins, int packedBytes) {
    Rig rig = job.project().rig();
    line("#ifndef LAMPWRIGHT_CONFIG_H");
    line("#define LAMPWRIGHT_CONFIG_H");
    line("");
    line("/*");
    line(" * What is fitted to the model, and on which pins. Written for the project");
    line(" * " + CText.comment(job.project().name()));
    line(" * Pins are best changed in the project: another export replaces this file.");
    line(" */");
    for (int i = 0; i < rig.chains().size(); i++) {
      chain(rig.chains().get(i), i, pins.chains());
    }
    line("");
    define("CHAINS", rig.chains().size());
    String bytes =
        rig.chains().isEmpty()
            ? "0"
            : IntStream.range(0, rig.chains().size())
                .mapToObj(i -> "LAMPWRIGHT_CHAIN_" + i + "_BYTES")
                .collect(Collectors.joining(", \\\n    "));
    line(PREFIX + "CHAIN_BYTES { \\\n    " + bytes + " }");
    line("");
    line("/* The longest reset of any chain's pixels, in microseconds. */");
    double reset = rig.chains().stream().mapToDouble(c -> line(c).resetUs()).max().orElse(0);
    define("RESET_US", (long) Math.ceil(reset));
    for (int i = 0; i < rig.outputs().size(); i++) {
      output(rig.outputs().get(i), i, pins.outputs());
    }
    line("");
    define("OUTPUTS", rig.outputs().size());
    line("");
    line("/* Every chain's bytes, then one byte for each driver output. */");
    int frameBytes = job.tables().get(0).layout().bytes();
    define("FRAME_BYTES", frameBytes);
    line("");
    line("/* 1: interrupts are let in between bits. 0: they wait. See README.md, Interrupts. */");
    define("INTERRUPTS", 1);
    line("");
    line("/* The player's limits. */");
    define("MAX_LAMPS", Math.max(1, rig.lamps().size()));
    line(PREFIX + "MAX_FRAME_BYTES LAMPWRIGHT_FRAME_BYTES");
    define("LONG_DATA", packedBytes > 65_535 ? 1 : 0);
    define("COLUMN_BYTES", frameBytes > 256 ? 2 : 1);
    define("PORTABLE", 0);
    line("");
    line("/* How packed data is declared and how one byte of it is read. */");
    line("#if defined(__ASSEMBLER__)");
    line("/* assembly reads it in its own way */");
    line("#elif defined(__AVR__)");
    line("#include <avr/pgmspace.h>");
    line("#define LAMPWRIGHT_DATA PROGMEM");
    line("#define LAMPWRIGHT_READ(address) pgm_read_byte(address)");
    line("#else");
    line("#define LAMPWRIGHT_DATA");
    line("#define LAMPWRIGHT_READ(address) (*(address))");
    line("#endif");
    line("");
    line("#endif");
  }

  private void chain(Chain chain, int number, List<Pin> pins) {
    String stem = "CHAIN_" + number + "_";
    LineTiming times = line(chain);
    line("");
    line(
        "/* Chain "
            + number
            + ": "
            + chain.id()
            + ", "
            + chain.pixels()
            + " pixels, "
            + chain.type().id()
            + ". */");
    pin(stem, number, pins);
    define(stem + "BYTES", chain.bytes());
    BitTimes zero = times.nominal(false);
    BitTimes one = times.nominal(true);
    define(stem + "T0H_NS", Math.round(zero.highNs()));
    define(stem + "T0L_NS", Math.round(zero.lowNs()));
    define(stem + "T1H_NS", Math.round(one.highNs()));
    define(stem + "T1L_NS", Math.round(one.lowNs()));
    define(stem + "TOLERANCE_NS", (long) Math.floor(toleranceNs(times)));
  }

  private void output(DriverOutput output, int number, List<Pin> pins) {
    line("");
    line("/* Output " + number + ": " + output.id() + ". */");
    pin("OUTPUT_" + number + "_", number, pins);
  }

  private void pin(String stem, int number, List<Pin> pins) {
    if (number < pins.size()) {
      String name = pins.get(number).name();
      line(PREFIX + stem + "PORT " + name.charAt(1));
      line(PREFIX + stem + "BIT " + name.charAt(2));
    }
  }

  // The driver knows one tolerance for all times: the narrowest.
  private static double toleranceNs(LineTiming times) {
    return times.times().stream()
        .mapToDouble(t -> (t.greatestNs() - t.leastNs()) / 2)
        .min()
        .orElseThrow();
  }

  private static LineTiming line(Chain chain) {
    return chain.type().id().equals("ws2813") ? WS2813 : chain.type().line();
  }

  private void define(String name, long value) {
    line(PREFIX + name + " " + value);
  }

  private void line(String words) {
    text.append(words).append('\n');
  }
}
