package lampwright.exporters.firmware;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import lampwright.engine.light.Curve;
import lampwright.engine.project.Project;
import lampwright.engine.review.Code;
import lampwright.engine.review.Finding;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.CurrentCap;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.Rig;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.OutsideTools;
import lampwright.exporters.Progress;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.TestJobs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FirmwareExporterTest {
  private static final String[] STRICT = {"-Wall", "-Wextra", "-Wpedantic", "-Werror", "-Isrc"};

  private final OutsideTools tools = OutsideTools.onThisMachine();

  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({"atmega328p, 16000000", "atmega32u4, 16000000", "attiny85, 8000000"})
  void folderBuildsAsItIsForAvr(String controller, String hertz) throws Exception {
    write(job(controller, TestJobs.rgbw("mast", 4), DriverOutput.of("stern"), 50));
    OutsideTools.Tool compiler =
        tools.findCompiler("avr-gcc", "gcc-avr", "avr/pgmspace.h", "avr-libc");
    List<String> command = new ArrayList<>(List.of("-mmcu=" + controller, "-Os", "-std=c99"));
    command.addAll(List.of("-DF_CPU=" + hertz + "UL", "-ffunction-sections", "-Wl,--gc-sections"));
    command.addAll(List.of(STRICT));
    command.add("main.c");
    command.addAll(sources());
    command.add("src/lampwright_player_avr.S");
    command.addAll(List.of("-o", "show.elf"));
    compiler.run(folder, command.toArray(String[]::new)).quietOut();
    assertThat(folder.resolve("show.elf")).isRegularFile();
  }

  @ParameterizedTest
  @CsvSource({
    "gcc, gcc, -std=c99",
    "g++, g++, -std=c++11",
    "arm-none-eabi-gcc, gcc-arm-none-eabi, -std=c99"
  })
  void sourcesCompileForOtherControllers(String command, String debian, String standard)
      throws Exception {
    write(job("rp2040", TestJobs.rgbw("mast", 4), DriverOutput.of("stern"), 50));
    assertThat(folder.resolve("Makefile")).doesNotExist();
    for (String source : sources()) {
      List<String> all = new ArrayList<>(List.of(standard));
      if (command.equals("g++")) {
        all.addAll(List.of("-x", "c++"));
      }
      all.addAll(List.of(STRICT));
      all.addAll(List.of("-c", source, "-o", "object.o"));
      tools.find(command, debian).run(folder, all.toArray(String[]::new)).quietOut();
    }
  }

  @Test
  void pinsOfTheProjectStandInTheConfiguration() throws Exception {
    write(job("attiny85", on(TestJobs.rgb("mast", 1), "PB3"), DriverOutput.of("stern"), 50));
    String config = Files.readString(folder.resolve("src/lampwright_config.h"));
    assertThat(config)
        .contains("#define LAMPWRIGHT_CHAIN_0_PORT B\n#define LAMPWRIGHT_CHAIN_0_BIT 3\n")
        .contains("#define LAMPWRIGHT_OUTPUT_0_PORT B\n#define LAMPWRIGHT_OUTPUT_0_BIT 4\n");
  }

  /** PB0 and PB1 share a timer; PB4 beside PB0 would leave none to count the frames. */
  @Test
  void openOutputTakesAPinThatLeavesATimer() throws Exception {
    write(job("attiny85", TestJobs.rgb("mast", 1), outputs("PB0", null)));
    assertThat(Files.readString(folder.resolve("src/lampwright_config.h")))
        .contains("#define LAMPWRIGHT_OUTPUT_0_BIT 0\n")
        .contains("#define LAMPWRIGHT_OUTPUT_1_BIT 1\n");
  }

  @Test
  void readmeNamesThePinOfEveryChainAndOutput() throws Exception {
    write(job("attiny85", on(TestJobs.rgb("mast", 3), "PB3"), DriverOutput.of("stern"), 50));
    assertThat(Files.readString(folder.resolve("README.md")))
        .contains("\nController: ATtiny85 at 8 MHz\n")
        .contains("\n| 0 | chain mast | **PB3** | 3 pixels, ws2812b |\n")
        .contains("\n| 0 | output stern | **PB4** | PWM for a driver |\n")
        .contains("\nScenes, by number: `walk`.\n")
        .doesNotContain("@PINS@");
  }

  @Test
  void readmeLeavesThePinsToTheBuilderWhoseCodeDrivesThem() throws Exception {
    write(job("rp2040", TestJobs.rgb("mast", 3), DriverOutput.of("stern"), 50));
    assertThat(Files.readString(folder.resolve("README.md")))
        .contains(": your own code drives the pins\n")
        .contains("\n| 0 | chain mast | **yours** | 3 pixels, ws2812b |\n");
  }

  /** CommonMark 0.30, section 2.4: a backslash takes all meaning from a mark of punctuation. */
  @Test
  void projectNameDoesNothingInTheReadme() throws Exception {
    write(job("attiny85", TestJobs.rgb("mast", 1), DriverOutput.of("stern"), 50));
    String line =
        Files.readString(folder.resolve("README.md"))
            .lines()
            .filter(l -> l.startsWith("Project: "))
            .findFirst()
            .orElseThrow();
    assertThat(line)
        .isEqualTo(
            "Project: \\*\\/ \\#include \\\"x\\\" \\/\\* \\\\ \\?\\?\\/ \\/\\/ \\\\u000d\\\\u000a"
                + "\\#error \\\\u0000 Z\u00fcrich \ud83d\ude9c \\*\\\\\\/ \\*\\*\\/\\*\\/ \\?\\?\\?\\/ \\\\  ");
  }

  @Test
  void factsCarryTheCautions() {
    ProjectJob job = job("attiny85", TestJobs.rgb("mast", 1), DriverOutput.of("stern"), 50);
    assertThat(new FirmwareExporter().facts(job).cautions())
        .extracting(Finding::code)
        .containsExactly(
            Code.FLASHING_LIGHT, Code.FIRST_POWER_UP, Code.OUTPUT_IS_SIGNAL, Code.FACTORY_CLOCK);
  }

  @Test
  void outputsThatLeaveNoTimerAreRefusedNamingPinsThatShareOne() {
    assertRefused(
        job("atmega328p", TestJobs.rgb("mast", 1), outputs("PB1", "PB3", "PD5")),
        "firmware: outputs: PB1, PB3, PD5: needs pins that leave one of the 3 timers of the"
            + " ATmega328P to count the frames, so choose pins that share a timer: PD5 and PD6; PB1"
            + " and PB2; PB3 and PD3");
  }

  @ParameterizedTest
  @CsvSource({
    "atmega328p, ATmega328P, 5, 4, 3",
    "atmega328p, ATmega328P, 7, 4, 3",
    "atmega32u4, ATmega32U4, 5, 4, 3",
    "attiny85, ATtiny85, 3, 2, 2"
  })
  void moreOutputsThanCanBeAreRefusedSayingHowManyCan(
      String controller, String name, int count, int most, int timers) {
    assertRefused(
        job(controller, TestJobs.rgb("mast", 1), outputs(new String[count])),
        "firmware: outputs: "
            + count
            + ": needs at most "
            + most
            + " on the "
            + name
            + ", as one of its "
            + timers
            + " timers must count the frames; drive the others as pixels of a chain");
    List<DriverOutput> fewer = outputs(new String[most]);
    ProjectJob job = job(controller, TestJobs.rgb("mast", 1), fewer);
    assertThat(new FirmwareExporter().facts(job).faults()).isEmpty();
  }

  @Test
  void pinThatTheControllerLacksIsRefusedNamingThoseItHas() {
    assertRefused(
        job("attiny85", on(TestJobs.rgb("mast", 1), "PD6"), DriverOutput.of("stern"), 50),
        "firmware: chain mast: PD6: needs a pin of the ATtiny85: PB0, PB1, PB2, PB3, PB4");
  }

  @Test
  void outputPinWithoutPwmIsRefusedNamingThoseWithIt() {
    DriverOutput output =
        new DriverOutput(
            "stern",
            DriverOutput.DEFAULT_COLOUR,
            20,
            1,
            2,
            DriverOutput.DEFAULT_SUPPLY,
            Optional.of(new Pin("PB2")));
    assertRefused(
        job("attiny85", TestJobs.rgb("mast", 1), output, 50),
        "firmware: output stern: PB2: needs a pin of the ATtiny85 with PWM: PB0, PB1, PB4");
  }

  @Test
  void chainTooLongForTheFrameIsRefusedWithFigures() {
    assertRefused(
        job("atmega328p", TestJobs.rgb("mast", 200), DriverOutput.of("stern"), 200),
        "firmware: scene walk: 6300 us to send a frame to all chains: needs at most 5000 us, the"
            + " time of a frame: at most 158.7 frames/s, or shorter chains");
  }

  @Test
  void frameTooLargeForTheWorkingMemoryIsRefused() {
    assertRefused(
        job("attiny85", TestJobs.rgb("mast", 150), DriverOutput.of("stern"), 50),
        "firmware: controller ATtiny85: 563 bytes of working memory for frame, player and stack:"
            + " needs at most 512: 51 too many; shorter chains or fewer lamps");
  }

  @Test
  void noSceneIsRefused() {
    ProjectJob job = job("attiny85", TestJobs.rgb("mast", 1), DriverOutput.of("stern"), 50);
    assertRefused(
        ProjectJob.of(job.project(), List.of()),
        "firmware: scenes: none: needs at least one scene to play");
  }

  private List<String> sources() throws IOException {
    try (Stream<Path> all = Files.list(folder.resolve("src"))) {
      return all.map(file -> "src/" + file.getFileName()).filter(n -> n.endsWith(".c")).toList();
    }
  }

  private void write(ProjectJob job) throws Exception {
    new FirmwareExporter().export(job, this::open, Progress.SILENT);
  }

  private OutputStream open(String name) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.resolveSibling(""));
    return Files.newOutputStream(file);
  }

  private void assertRefused(ProjectJob job, String message) {
    assertThatThrownBy(() -> write(job))
        .isInstanceOf(ExportRefusedException.class)
        .hasMessage(message);
    assertThat(folder).isEmptyDirectory();
  }

  private static Chain on(Chain chain, String pin) {
    return new Chain(
        chain.id(),
        chain.type(),
        chain.pixels(),
        chain.order(),
        OptionalDouble.empty(),
        Optional.of(new Pin(pin)));
  }

  /** Outputs on these pins; null for one that names none. */
  private static List<DriverOutput> outputs(String... pins) {
    List<DriverOutput> outputs = new ArrayList<>();
    for (String pin : pins) {
      outputs.add(
          new DriverOutput(
              "o" + outputs.size(),
              DriverOutput.DEFAULT_COLOUR,
              20,
              1,
              2,
              DriverOutput.DEFAULT_SUPPLY,
              Optional.ofNullable(pin).map(Pin::new)));
    }
    return outputs;
  }

  static ProjectJob job(String controller, Chain chain, DriverOutput output, long rate) {
    return job(controller, chain, List.of(output), rate);
  }

  private static ProjectJob job(String controller, Chain chain, List<DriverOutput> outputs) {
    return job(controller, chain, outputs, 50);
  }

  private static ProjectJob job(
      String controller, Chain chain, List<DriverOutput> outputs, long rate) {
    Rig rig =
        new Rig(
            Rig.DEFAULT_SUPPLY_VOLTS,
            Rig.DEFAULT_SUPPLY_LIMIT_MILLIAMPS,
            OptionalDouble.empty(),
            Curve.DEFAULT,
            Rig.DEFAULT_COLOUR_MATCHING,
            Rig.DEFAULT_WHITE_FROM_RGB,
            Rig.DEFAULT_BRIGHTNESS_CAP,
            CurrentCap.OFF,
            Optional.empty(),
            Optional.empty(),
            Controller.find(controller),
            List.of(chain),
            outputs,
            List.of(TestJobs.lamp("top", TestJobs.run(chain.id(), 0, 1))));
    Project project =
        Project.of(
            TestJobs.HOSTILE_NAME,
            rig,
            TestJobs.scene("walk", 400, rate, true, TestJobs.walk(20, "top")));
    return ProjectJob.of(project, project.scenes());
  }
}
