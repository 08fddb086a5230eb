package lampwright.exporters.firmware;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import lampwright.engine.check.SafeText;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Severity;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.table.CText;
import lampwright.exporters.target.LivePort;
import lampwright.exporters.target.Target;

/** The folder's README: made for this project, its controller, supply and pixels. */
final class ReadmeFile {
  /** What each file is for; only those that are in the folder are named. */
  private static final List<Map.Entry<String, String>> FILES =
      List.of(
          Map.entry("src/lampwright_config.h", "the hardware of the model"),
          Map.entry(
              "src/lampwright_scenes.h",
              "scenes and lamps by name; the scenes, packed, are in `.c`"),
          Map.entry("src/lampwright_show.h", "the functions for your sketch"),
          Map.entry("src/lampwright_react.h", "plays the situations"),
          Map.entry("src/lampwright_situations.h", "works out the situations, frame by frame"),
          Map.entry("src/lampwright_ceiling.h", "dims frames that would exceed the supply limit"),
          Map.entry("src/lampwright_inputs.h", "reads receiver and switches"),
          Map.entry("examples/React/React.ino", "the lamps react to receiver and switches"),
          Map.entry("src/lampwright_player.h", "the player: packed scenes in, frames out"),
          Map.entry("src/lampwright_wire.h", "sends a frame to the chains"),
          Map.entry("src/lampwright_wire_hook.h", "the functions that you write"),
          Map.entry("src/lampwright_inputs_hook.h", "those of them that read the inputs"),
          Map.entry("src/lampwright_outputs.h", "PWM for the driver outputs"),
          Map.entry("src/lampwright_clock.h", "the frame clock"),
          Map.entry(
              "src/lampwright_live.c",
              "the bench link; its serial line is in `lampwright_serial.h`"),
          Map.entry("src/lampwright_target.h", "the controller of this export"),
          Map.entry("examples/PlayScene/PlayScene.ino", "plays the first scene by itself"),
          Map.entry("examples/OwnLoop/OwnLoop.ino", "your own loop drives it frame by frame"),
          Map.entry(
              "examples/PlayScene/driver.ino", "a worked example of the functions that you write"),
          Map.entry("src/lampwright_board.h", "pins and times of the chains; they are in `.c`"),
          Map.entry("main.c", "the same as PlayScene (or React, if it is there), without an IDE"),
          Map.entry("Makefile", "builds it"),
          Map.entry("lampwright_start.c", "from reset to `main`: clocks, memory"),
          Map.entry("lampwright_boot.S", "second boot stage"),
          Map.entry("show.ld", "where program and scenes are in memory"),
          Map.entry("uf2.c", "for your computer: makes `show.uf2`"));

  private final ProjectJob job;
  private final Target target;
  private final boolean dims;
  private final Rig rig;
  private final List<Finding> findings;

  ReadmeFile(ProjectJob job, Target target, boolean dims, List<Finding> findings) {
    this.dims = dims;
    this.job = job;
    this.target = target;
    this.rig = job.project().rig();
    this.findings = List.copyOf(findings);
  }

  String text() throws IOException {
    StringBuilder text = new StringBuilder();
    part(text, "readme/top.md", top());
    part(text, "readme/build-" + target.family() + ".md", build());
    part(text, "readme/use.md", use());
    part(text, "readme/wiring.md", new ReadmeWiring(rig).words());
    if (FirmwareExporter.reacts(job)) {
      part(text, "readme/inputs-" + target.family() + ".md", ReadmeInputs.words(rig, target));
    }
    if (target.rp2040()) {
      part(text, "readme/clock-rp2040.md", Map.of());
    } else if (target.drivesPins()) {
      ReadmeInterrupts interrupts = new ReadmeInterrupts(rig, target);
      if (!rig.chains().isEmpty()) {
        part(text, "readme/interrupts-avr.md", interrupts.words());
      }
      part(text, "readme/clock-avr.md", interrupts.clockWords());
    }
    Optional<LivePort> port = target.livePort(rig);
    if (port.isPresent()) {
      boolean reacts = FirmwareExporter.reacts(job);
      part(text, "readme/live.md", ReadmeLive.words(rig, target, port.get(), reacts));
    }
    part(text, "readme/cautions.md", Map.of());
    return text.toString();
  }

  private static void part(StringBuilder text, String name, Map<String, String> words)
      throws IOException {
    text.append(text.isEmpty() ? "" : "\n");
    text.append(Resource.filled(name, words).replaceAll("\n{3,}", "\n\n").stripTrailing());
    text.append('\n');
  }

  private Map<String, String> top() {
    return Map.of(
        "TITLE",
        "Lights of " + plain(job.project().name()),
        "DRIVER",
        target.drivesPins()
            ? "a driver that sends each frame to the pins"
            : "the place where your own driver is called",
        "BUILDS",
        target.drivesPins() ? "as it is" : "once you have written the functions of your driver",
        "PROJECT",
        plain(job.project().name()),
        "CONTROLLER",
        controller(),
        "PINS",
        pins(),
        "SCENES",
        job.scenes().stream()
            .map(scene -> "`" + scene.id() + "`")
            .collect(Collectors.joining(", ")),
        "FINDINGS",
        findings(),
        "FILES",
        files());
  }

  private String controller() {
    if (!target.drivesPins()) {
      return target.name() + ", with pins driven by your own code";
    }
    return target.clockedName()
        + (rig.controller().isPresent() ? "" : ", the default: none is set in the project");
  }

  private String pins() {
    StringBuilder table = new StringBuilder("| number | chain or output | pin | what it is |\n");
    table.append("| --- | --- | --- | --- |\n");
    List<Optional<Pin>> chains = target.pins(rig).chains();
    for (int i = 0; i < rig.chains().size(); i++) {
      var chain = rig.chains().get(i);
      String what = chain.pixels() + " pixels, " + chain.type().id();
      row(table, i, "chain " + chain.id(), chains.get(i), what);
    }
    List<Optional<Pin>> outputs = target.pins(rig).outputs();
    for (int i = 0; i < rig.outputs().size(); i++) {
      row(table, i, "output " + rig.outputs().get(i).id(), outputs.get(i), "PWM");
    }
    for (int i = 0; i < rig.inputs().size(); i++) {
      Input input = rig.inputs().get(i);
      row(table, i, "input " + input.id(), input.pin().map(target::named), input.kind().key());
    }
    return table.toString().stripTrailing();
  }

  // Ids are lower-case letters, digits and hyphens; the names of pins and types are ours.
  private static void row(
      StringBuilder table, int number, String what, Optional<Pin> pin, String note) {
    table.append("| ").append(number).append(" | ").append(what).append(" | **");
    table.append(pin.map(Pin::name).orElse("yours")).append("** | ").append(note).append(" |\n");
  }

  private String findings() {
    List<Finding> shown = findings.stream().filter(f -> f.severity() != Severity.NOTE).toList();
    if (shown.isEmpty()) {
      return "";
    }
    return shown.stream()
        .map(f -> "- **" + f.severity().key() + "** " + harmless(f.text()))
        .collect(Collectors.joining("\n", "## Warnings\n", ""));
  }

  private String files() {
    List<String> there = FirmwareExporter.files(target, job);
    return FILES.stream()
        .filter(file -> there.contains(file.getKey()))
        .map(file -> "| `" + file.getKey() + "` | " + file.getValue() + " |")
        .collect(Collectors.joining("\n", "| file | what it is |\n| --- | --- |\n", ""));
  }

  private Map<String, String> build() {
    String library = LibraryFile.libraryName(job.project().name());
    if (target.drivesPins()) {
      return Map.of(
          "NAME", target.name(),
          "MEGAHERTZ", Integer.toString(target.hertz().getAsInt() / 1_000_000),
          "LIBRARY", library,
          "PROGRAMMER", target.words().getOrDefault("PROGRAMMER", ""),
          "BOARD", target.boardNotes());
    }
    StringBuilder hooks = new StringBuilder();
    if (!rig.chains().isEmpty()) {
      hook(
          hooks,
          "lampwright_emit_bytes",
          "sends the bytes of a chain",
          "by an SPI, by a routine of the board's, or by plain pins");
    }
    if (!rig.outputs().isEmpty()) {
      hook(
          hooks,
          "lampwright_emit_outputs",
          "sets the driver outputs",
          "`analogWrite` on a pin each");
    }
    if (FirmwareExporter.reacts(job) && !rig.inputs().isEmpty()) {
      inputHooks(hooks);
    }
    hook(
        hooks,
        "lampwright_microseconds",
        "returns the time for the frame clock",
        "`micros()`, which a hobby IDE uses by itself");
    return Map.of(
        "HOOKS",
        hooks.toString().stripTrailing(),
        "LIBRARY",
        library,
        "BOARDS",
        target.boardNotes());
  }

  private void inputHooks(StringBuilder hooks) {
    hook(hooks, "lampwright_begin_inputs", "makes the pins of the inputs ready", "`pinMode`");
    hook(
        hooks,
        "lampwright_servo_width",
        "returns the width of a channel's last pulse",
        "a routine on each change of the pin, and `micros()`");
    hook(hooks, "lampwright_switch_level", "returns the level of a switch", "`digitalRead`");
  }

  private static void hook(StringBuilder hooks, String name, String what, String example) {
    hooks.append("| `").append(name).append("` | ").append(what).append(" | ");
    hooks.append(example).append(" |\n");
  }

  private Map<String, String> use() {
    String dimming =
        dims
            ? "| `lampwright_show_brightness(level)` | master brightness: 255 as exported, 0 dark |\n"
                + "| `lampwright_show_dark(1)`, `(0)` | blanks the lamps while the scenes run; shows them again |"
            : "\nBrightness can't be changed in this export: the controller has no working memory left"
                + " for it.";
    return Map.of("DIMMING", dimming, "EXAMPLE", example());
  }

  private String example() {
    String scene = "LAMPWRIGHT_SCENE_" + CText.name(job.scenes().get(job.scenes().size() - 1).id());
    String start = "lampwright_show_scene(" + scene + ");   /* every lamp */";
    if (rig.lamps().isEmpty()) {
      return start;
    }
    Lamp lamp = rig.lamps().get(0);
    String name = "LAMPWRIGHT_LAMP_" + CText.name(lamp.id());
    return start
        + "\n\n/* one lamp alone, from the scene's first frame; LAMPWRIGHT_DARK in place of the scene"
        + " makes it dark */\nlampwright_player_lamp(&lampwright_show_player, "
        + name
        + ", "
        + scene
        + ", 0);";
  }

  /**
   * Text of people as Markdown that says what it says and does nothing: every mark of punctuation
   * has a backslash before it (CommonMark 0.30, section 2.4).
   */
  static String plain(String text) {
    return SafeText.text(text, SafeText.MAX_MESSAGE).replaceAll("[!-/:-@\\[-`{-~]", "\\\\$0");
  }

  /**
   * Words of ours with names of people in them: what Markdown could take for its own is escaped.
   */
  private static String harmless(String text) {
    return text.replaceAll("[\\\\`*_<>|~&#\\[\\]!]", "\\\\$0");
  }

  /** A number with at most so many decimals. */
  static String number(double value, int decimals) {
    String fixed = String.format(Locale.ROOT, "%." + decimals + "f", value);
    return fixed.contains(".") ? fixed.replaceAll("0+$", "").replaceAll("\\.$", "") : fixed;
  }
}
