package lampwright.exporters.firmware;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.live.LiveLayout;
import lampwright.exporters.live.LiveProtocol;
import lampwright.exporters.packed.play.ShowRoom;
import lampwright.exporters.table.CText;
import lampwright.exporters.target.ChainLimits;
import lampwright.exporters.target.LivePort;
import lampwright.exporters.target.PinPlan;
import lampwright.exporters.target.Target;

/** The configuration header: what is fitted, and the player's limits. */
final class ConfigFile {
  private static final String PREFIX = "#define LAMPWRIGHT_";
  private static final int BYTE_COLUMNS = 256;
  private static final int SHORT_DATA = 65_535;

  private final StringBuilder text = new StringBuilder();
  private final Target target;
  private final Rig rig;
  private final PinPlan pins;

  private ConfigFile(Target target, Rig rig) {
    this.target = target;
    this.rig = rig;
    this.pins = target.pins(rig);
  }

  static String of(ProjectJob job, Target target, byte[] packed) {
    ConfigFile file = new ConfigFile(target, job.project().rig());
    file.write(job, packed);
    return file.text.toString();
  }

  private void write(ProjectJob job, byte[] packed) {
    line("#ifndef LAMPWRIGHT_CONFIG_H");
    line("#define LAMPWRIGHT_CONFIG_H");
    line("");
    line("/*");
    line(" * What is fitted to the model. Written for the project");
    line(" * " + CText.comment(job.project().name()));
    line(
        " * To change it, change the project and export again: that renews this file. If you change");
    line(" * it by hand, it stays as it is, and what is new lies beside it.");
    line(" */");
    for (int i = 0; i < rig.chains().size(); i++) {
      chain(i);
    }
    line("");
    define("CHAINS", rig.chains().size());
    if (!target.drivesPins() && !rig.chains().isEmpty()) {
      line("/* clang-format off */");
      line(
          rig.chains().stream()
              .map(chain -> Integer.toString(chain.bytes()))
              .collect(Collectors.joining(", ", PREFIX + "CHAIN_BYTES {", "}")));
      line("/* clang-format on */");
    }
    line("");
    line("/* The longest reset of any chain's pixels, in microseconds. */");
    double reset =
        rig.chains().stream().mapToDouble(c -> c.type().line().resetUs()).max().orElse(0);
    define("RESET_US", (long) Math.ceil(reset));
    for (int i = 0; i < rig.outputs().size(); i++) {
      line("");
      line("/* Output " + i + ": " + rig.outputs().get(i).id() + on(pins.outputs(), i) + ". */");
      pin("OUTPUT_" + i, pins.outputs(), i);
    }
    line("");
    define("OUTPUTS", rig.outputs().size());
    line("");
    line("/* Every chain's bytes, then one byte for each driver output. */");
    int frameBytes = job.tables().get(0).layout().bytes();
    define("FRAME_BYTES", frameBytes);
    line("");
    line("/* 1: light can be dimmed, for which a copy of the longest chain is kept. */");
    Optional<ShowRoom> room = FirmwareMemory.room(target, job, packed);
    int dimmed =
        Math.max(
            rig.chains().stream().mapToInt(Chain::bytes).max().orElse(0), rig.outputs().size());
    define("DIMMING", target.size(rig, room).dims() ? 1 : 0);
    define("DIMMED_BYTES", dimmed);
    if (target.interruptsBits()) {
      line("");
      line("/* 1: interrupts are let in between bits. 0: they wait. See README.md, Interrupts. */");
      define("INTERRUPTS", 1);
    }
    line("");
    line("/* The player's limits. */");
    define("LAMPS", Math.max(1, rig.lamps().size()));
    line(PREFIX + "MAX_LAMPS LAMPWRIGHT_LAMPS");
    line(PREFIX + "MAX_FRAME_BYTES LAMPWRIGHT_FRAME_BYTES");
    define("LONG_DATA", packed.length > SHORT_DATA ? 1 : 0);
    define("COLUMN_BYTES", frameBytes > BYTE_COLUMNS ? 2 : 1);
    define("PORTABLE", 0);
    room.ifPresent(this::room);
    live();
    line("");
    line("/* How packed data is declared and how one byte of it is read. */");
    line("#if defined(__ASSEMBLER__)");
    line("/* assembly reads it in its own way */");
    line("#elif defined(__AVR__)");
    line("#include <avr/pgmspace.h>");
    line("#define LAMPWRIGHT_DATA PROGMEM");
    line("#define LAMPWRIGHT_READ(address) pgm_read_byte(address)");
    if (!target.drivesPins()) {
      line("#elif defined(ESP8266)");
      line("/* its core copies constants into RAM unless told not to */");
      line("#include <pgmspace.h>");
      line("#define LAMPWRIGHT_DATA PROGMEM");
      line("#define LAMPWRIGHT_READ(address) pgm_read_byte(address)");
    }
    if (target.rp2040()) {
      line("#elif !defined(ARDUINO)");
      line("/* the program is in RAM, the scenes are not */");
      line("#define LAMPWRIGHT_DATA __attribute__((section(\".lampwright_packed\")))");
      line("#define LAMPWRIGHT_READ(address) (*(address))");
    }
    line("#else");
    line("#define LAMPWRIGHT_DATA");
    line("#define LAMPWRIGHT_READ(address) (*(address))");
    line("#endif");
    line("");
    line("#endif");
  }

  private void chain(int number) {
    Chain chain = rig.chains().get(number);
    String stem = "CHAIN_" + number;
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
            + on(pins.chains(), number)
            + ". */");
    pin(stem, pins.chains(), number);
    define(stem + "_BYTES", chain.bytes());
    if (!target.drivesPins()) {
      ChainLimits.of(chain).times().forEach((name, ns) -> define(stem + "_" + name, ns));
    }
  }

  private void room(ShowRoom room) {
    line("");
    line("/* Room for situations, and which parts of lampwright_situations.c they need. */");
    // C has no arrays of nothing.
    define("INPUTS", Math.max(1, room.inputs()));
    define("CENTRES", Math.max(1, room.centres()));
    define("SITUATIONS", room.situations());
    define("SLOTS", Math.max(1, room.slots()));
    define("CONDITION_BYTES", Math.max(1, room.conditionBytes()));
    define("TIME_BYTES", room.timeBytes());
    define("USES", room.uses());
    if (rig.ceiling()) {
      line("/* 1: frames are dimmed where situations together would exceed the supply limit. */");
      define("CEILING", 1);
    }
    if (!target.drivesPins()) {
      inputs();
    }
  }

  private void live() {
    line("");
    Optional<LivePort> port = target.livePort(rig);
    if (port.isEmpty()) {
      line("#if defined(LAMPWRIGHT_LIVE) && LAMPWRIGHT_LIVE");
      line("#error \"there is no bench link for this controller\"");
      line("#endif");
      return;
    }
    line("/*");
    line(
        " * The bench link: 1 builds it in, or make LIVE=1. See README.md, Bench link. The baud rate;");
    line(" * THEN_DARK 1: all dark when nobody sends, in place of the show.");
    line(" */");
    usual("LIVE", 0);
    usual("LIVE_BAUD", LiveProtocol.BAUD);
    usual("LIVE_THEN_DARK", 0);
    line(
        "/* By which the computer knows whose frames these are; 1 if the line's pins are free. */");
    line(PREFIX + String.format(Locale.ROOT, "LIVE_LAYOUT 0x%04X", LiveLayout.of(rig)));
    define("LIVE_FREE", port.get().isFree() ? 1 : 0);
    if (target.rp2040()) {
      define("LIVE_UART", port.get().number());
      define("LIVE_RX_PIN", port.get().receive().number());
      define("LIVE_TX_PIN", port.get().transmit().number());
    }
  }

  /** What the compiler's command line may have defined. */
  private void usual(String name, long value) {
    line("#if !defined(LAMPWRIGHT_" + name + ")");
    define(name, value);
    line("#endif");
  }

  private void inputs() {
    line("");
    for (int i = 0; i < rig.inputs().size(); i++) {
      Input input = rig.inputs().get(i);
      Optional<Pin> pin = input.pin().map(target::named);
      String on = pin.map(named -> ", on " + named.name()).orElse("");
      line("/* Input " + i + ": " + input.id() + ", " + input.kind().key() + on + ". */");
      pin("INPUT_" + i, pin);
    }
    define("INPUT_COUNT", rig.inputs().size());
    line("/* 1 for each input that is a receiver channel, 0 for a switch. */");
    line("/* clang-format off */");
    line(
        rig.inputs().stream()
            .map(input -> input.isChannel() ? "1" : "0")
            .collect(Collectors.joining(", ", PREFIX + "INPUT_CHANNELS {", "}")));
    line("/* clang-format on */");
  }

  private static String on(List<Optional<Pin>> pins, int number) {
    return pins.get(number).map(pin -> ", on " + pin.name()).orElse("");
  }

  /** A stated pin, for functions of the builder's own. */
  private void pin(String stem, List<Optional<Pin>> of, int number) {
    pin(stem, of.get(number));
  }

  private void pin(String stem, Optional<Pin> pin) {
    if (!target.drivesPins()) {
      pin.flatMap(target::inSketch).ifPresent(word -> line(PREFIX + stem + "_PIN " + word));
    }
  }

  private void define(String name, long value) {
    line(PREFIX + name + " " + value);
  }

  private void line(String words) {
    text.append(words).append('\n');
  }
}
