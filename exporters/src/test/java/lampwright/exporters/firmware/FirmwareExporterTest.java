package lampwright.exporters.firmware;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import lampwright.engine.document.Project;
import lampwright.engine.review.Code;
import lampwright.engine.review.Finding;
import lampwright.exporters.ExportRefusedException;
import lampwright.exporters.OutsideTools;
import lampwright.exporters.Progress;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.TestJobs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FirmwareExporterTest {
  private static final String[] STRICT = {"-Wall", "-Wextra", "-Wpedantic", "-Werror", "-Isrc"};

  private final OutsideTools tools = OutsideTools.onThisMachine();

  @TempDir Path folder;

  private static FirmwareJobs usual(String controller) {
    return FirmwareJobs.on(controller).chain("sk6812-rgbw", 4).output();
  }

  @ParameterizedTest
  @CsvSource({
    "atmega328p, 16, avr-gcc, -std=c99",
    "atmega328p, 8, avr-g++, -std=gnu++11",
    "atmega32u4, 16, avr-g++, -std=gnu++11",
    "attiny85, 8, avr-gcc, -std=c99",
    "attiny85, 16, avr-g++, -std=gnu++11",
    "other, 0, avr-gcc, -std=c99",
    "other, 0, gcc, -std=c99",
    "other, 0, g++, -std=c++11",
    "other, 0, arm-none-eabi-gcc, -std=c99",
    "other, 0, arm-none-eabi-g++, -std=c++11",
    "rp2040, 0, arm-none-eabi-gcc, -std=c99",
    "rp2040, 0, arm-none-eabi-g++, -std=c++11"
  })
  void everySourceCompilesWithoutAWarning(
      String controller, int clock, String command, String standard) throws Exception {
    FirmwareJobs jobs =
        clock == 0 ? FirmwareJobs.on(controller) : FirmwareJobs.on(controller, clock);
    write(jobs.chain("sk6812-rgbw", 4).chain("ws2815", 2).output().job());
    List<String> all = new ArrayList<>(List.of(standard, "-Os"));
    if (command.startsWith("avr")) {
      tools.findCompiler("avr-gcc", "gcc-avr", "avr/pgmspace.h", "avr-libc");
      all.add("-mmcu=" + (clock == 0 ? "atmega2560" : controller));
      all.add("-DF_CPU=" + (clock == 0 ? 16 : clock) * 1_000_000 + "UL");
    }
    if (controller.equals("rp2040")) {
      all.addAll(List.of("-mcpu=cortex-m0plus", "-mthumb"));
    }
    all.addAll(List.of(STRICT));
    for (String source : sources()) {
      List<String> words = new ArrayList<>(all);
      if (command.endsWith("++")) {
        words.addAll(List.of("-x", "c++"));
      }
      words.addAll(List.of("-c", source, "-o", "object.o"));
      tools
          .find(command, "gcc, g++, gcc-avr or gcc-arm-none-eabi")
          .run(folder, words.toArray(String[]::new))
          .quietOut();
    }
  }

  /** Who chooses another board or clock than the folder was made for reads why it can't be. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "-mmcu=atmega2560 -DF_CPU=16000000UL | made for the ATmega328P: choose it as the board, or"
            + " export for another",
        "-mmcu=atmega328p -DF_CPU=8000000UL | made for 16 MHz: choose that clock, or export for"
            + " another",
        "-mmcu=atmega328p | F_CPU is not defined: compile with -DF_CPU=16000000UL"
      })
  void anotherBoardStopsWithTheReasonAndNothingElse(String flags, String reason) throws Exception {
    write(usual("atmega328p").job());
    OutsideTools.Tool compiler =
        tools.findCompiler("avr-gcc", "gcc-avr", "avr/pgmspace.h", "avr-libc");
    for (String source : List.of("wire", "outputs", "clock", "show")) {
      List<String> words = new ArrayList<>(List.of(flags.split(" ", -1)));
      words.addAll(List.of("-Isrc", "-c", "src/lampwright_" + source + ".c", "-o", "object.o"));
      OutsideTools.Result result = compiler.run(folder, words.toArray(String[]::new));
      assertThat(result.exit()).isNotZero();
      assertThat(result.errors().lines().filter(line -> line.contains("error:")))
          .singleElement()
          .asString()
          .contains("#error \"" + reason + "\"");
    }
  }

  /** A kill in the exchange of the files may leave such a folder. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "src/lampwright_config.h",
        "src/lampwright_scenes.h",
        "src/lampwright_scenes.c",
        "src/lampwright_wire.c"
      })
  void filesOfDifferentExportsDoNotCompile(String stale) throws Exception {
    OutsideTools.Tool compiler =
        tools.findCompiler("avr-gcc", "gcc-avr", "avr/pgmspace.h", "avr-libc");
    write(FirmwareJobs.on("atmega328p").chain("ws2812b", 3).job());
    byte[] old = Files.readAllBytes(folder.resolve(stale));
    write(FirmwareJobs.on("atmega328p").chain("ws2812b", 4).job());
    Files.write(folder.resolve(stale), old);
    OutsideTools.Result result =
        compiler.run(
            folder,
            "-mmcu=atmega328p",
            "-DF_CPU=16000000UL",
            "-std=c99",
            "-c",
            "-Isrc",
            "src/lampwright_scenes.c",
            "src/lampwright_wire.c");
    assertThat(result.exit()).isNotZero();
    assertThat(result.errors()).contains("are of different exports: export again");
  }

  @Test
  void boardThatIsNoAvrStopsWithTheReason() throws Exception {
    write(usual("atmega328p").job());
    OutsideTools.Result result =
        tools.find("gcc", "gcc").run(folder, "-Isrc", "-c", "src/lampwright_wire.c");
    assertThat(result.errors()).contains("made for the ATmega328P").doesNotContain("avr/io.h");
  }

  @Test
  void outputOnTheIdesTimerStopsInAnIdeOnly() throws Exception {
    write(FirmwareJobs.on("atmega328p").output("PD5").job());
    OutsideTools.Tool compiler =
        tools.findCompiler("avr-gcc", "gcc-avr", "avr/pgmspace.h", "avr-libc");
    String[] words = {
      "-mmcu=atmega328p", "-DF_CPU=16000000UL", "-Isrc", "-c", "src/lampwright_outputs.c"
    };
    compiler.run(folder, words).quietOut();
    String[] inIde =
        Stream.concat(Stream.of("-DARDUINO=10819"), Stream.of(words)).toArray(String[]::new);
    assertThat(compiler.run(folder, inIde).errors())
        .contains("timer 0 keeps the time of the IDE's own functions");
  }

  @Test
  void pinsOfTheProjectAreInTheDriver() throws Exception {
    write(FirmwareJobs.on("attiny85", 16).chain("ws2812b", 1, "PB3").output().job());
    assertThat(text("src/lampwright_wire.c")).contains("&PINB, 1 << 3, saved");
    assertThat(text("src/lampwright_outputs.c")).contains("DDRB |= 1 << 4;", "OCR1B = duties[0];");
    assertThat(text("src/lampwright_clock.c")).contains("TCNT0");
  }

  /** PB0 and PB1 share a timer; PB4 beside PB0 would leave none to count the frames. */
  @Test
  void openOutputTakesAPinThatLeavesATimer() throws Exception {
    write(FirmwareJobs.on("attiny85").output("PB0").output().job());
    assertThat(text("src/lampwright_outputs.c"))
        .contains("/* Output 0, o0: PB0. */", "/* Output 1, o1: PB1. */");
    assertThat(text("src/lampwright_clock.c")).contains("TCNT1");
  }

  /** Limits that a driver of the builder's own must keep: WS2813 manual, T0H 0.30 to 0.45 us. */
  @Test
  void timesAndPinsForADriverOfTheBuildersOwnAreInTheConfiguration() throws Exception {
    write(FirmwareJobs.on("other").chain("ws2813", 2, "GP4").output("GP9").job());
    assertThat(text("src/lampwright_config.h"))
        .contains("#define LAMPWRIGHT_CHAIN_0_PIN 4\n")
        .contains("#define LAMPWRIGHT_CHAIN_0_T0H_MIN_NS 300\n")
        .contains("#define LAMPWRIGHT_CHAIN_0_T0H_MAX_NS 450\n")
        .contains("#define LAMPWRIGHT_OUTPUT_0_PIN 9\n");
  }

  @Test
  void lampsAndScenesAreConstants() throws Exception {
    ProjectJob mixed = ProjectJob.of(TestJobs.mixed().project(), List.of(TestJobs.mixed().scene()));
    write(mixed);
    // Chain roof has four RGBW pixels, deck-rail two RGB ones, then two outputs.
    assertThat(text("src/lampwright_scenes.h"))
        .contains("/* Lamp beacon, Roof beacon. */\n#define LAMPWRIGHT_LAMP_beacon 0\n")
        .contains("#define LAMPWRIGHT_LAMP_beacon_RUNS 2\n")
        .contains("#define LAMPWRIGHT_LAMP_beacon_RUN0_OFFSET 8\n")
        .contains("#define LAMPWRIGHT_LAMP_beacon_RUN0_COUNT 1\n")
        .contains("#define LAMPWRIGHT_LAMP_beacon_RUN1_OFFSET 0\n")
        .contains("#define LAMPWRIGHT_LAMP_beacon_RUN1_PIXEL_BYTES 4\n")
        .contains("#define LAMPWRIGHT_LAMP_rail_RUN0_CHAIN 1\n")
        .contains("#define LAMPWRIGHT_LAMP_rail_RUN0_OFFSET 16\n")
        .contains("#define LAMPWRIGHT_LAMP_tail_OFFSET 22\n")
        .contains("#define LAMPWRIGHT_SCENE_night_watch_MILLIHERTZ 25000UL\n")
        .contains("#define LAMPWRIGHT_SCENE_night_watch_FRAMES 25UL\n");
  }

  @Test
  void constantsOfHostileIdsAreAllDifferent() throws Exception {
    List<ProjectJob> jobs =
        TestJobs.hostile().stream()
            .map(job -> ProjectJob.of(job.project(), List.of(job.scene())))
            .toList();
    Project project = jobs.get(0).project();
    Project hooked =
        Project.of(
            project.name(),
            FirmwareJobs.with(project.rig(), "other"),
            project.scenes().toArray(lampwright.engine.scene.Scene[]::new));
    write(ProjectJob.of(hooked, hooked.scenes()));
    List<String> names =
        text("src/lampwright_scenes.h")
            .lines()
            .filter(line -> line.startsWith("#define "))
            .map(line -> line.split(" ", -1)[1])
            .toList();
    assertThat(names).doesNotHaveDuplicates().hasSizeGreaterThan(60);
    for (String source : sources()) {
      tools
          .find("gcc", "gcc")
          .run(
              folder,
              "-std=c99",
              "-Wall",
              "-Wextra",
              "-Wpedantic",
              "-Werror",
              "-Isrc",
              "-c",
              source,
              "-o",
              "o.o")
          .quietOut();
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Quayside recovery tractor | Lampwright Quayside recovery tractor",
        "K\u00fcstenwache | Lampwright Kustenwache",
        "Servo | Lampwright Servo",
        "../../etc/passwd | Lampwright .. .. etc passwd",
        "\u706f\u53f0 | Lampwright Show",
        "a=b\\nname=evil # x | Lampwright a b nname evil x"
      })
  void libraryIsNamedAfterTheProject(String project, String library) throws Exception {
    write(usual("attiny85").called(project).job());
    assertThat(text("library.properties")).startsWith("name=" + library + "\n");
    assertThat(text("README.md")).contains("File > Examples > " + library + " > PlayScene");
  }

  /** 63 characters: the library specification of hobby IDEs (from memory). */
  @Test
  void longNameOfALibraryIsCut() throws Exception {
    write(usual("attiny85").called("x".repeat(200)).job());
    assertThat(text("library.properties").lines().findFirst().orElseThrow())
        .isEqualTo("name=Lampwright " + "x".repeat(52));
  }

  @Test
  void hostileNameOfAProjectStaysInItsLine() throws Exception {
    write(usual("attiny85").called(TestJobs.HOSTILE_NAME).job());
    assertThat(text("library.properties").lines())
        .hasSize(10)
        .allMatch(line -> line.matches("[a-z]+=[\\x20-\\x7e]*"));
  }

  @Test
  void readmeNamesThePinOfEveryChainAndOutput() throws Exception {
    write(FirmwareJobs.on("attiny85").chain("ws2812b", 3, "PB3").output().job());
    assertThat(text("README.md"))
        .contains("\n## Pin assignment\n")
        .contains("\nController: ATtiny85 at 8 MHz\n")
        .contains("\n| 0 | chain c0 | **PB3** | 3 pixels, ws2812b |\n")
        .contains("\n| 0 | output o0 | **PB4** | PWM |\n")
        .contains("\nScenes, by number: `noise`.\n");
  }

  /** FACTS.md: rated at least 1.5 x the supply, so 10 V on 5 V and 25 V on 12 V. */
  @ParameterizedTest
  @CsvSource({
    "ws2812b, 5, 10, 4.5 to 5.3 V",
    "ws2815, 12, 25, 9.5 to 13.5 V",
    "ws2812b-2020, 3.7, 6.3, 3.7 to 5.3 V"
  })
  void readmeIsWrittenForTheRigsSupplyAndPixels(
      String type, double volts, String capacitor, String range) throws Exception {
    write(FirmwareJobs.on("atmega328p").fed(volts).chain(type, 3).job());
    assertThat(text("README.md"))
        .contains("pixel " + ReadmeFile.number(volts, 2) + " V")
        .contains("rated for at least " + capacitor + " V")
        .contains("- " + type + ": supply " + range)
        .doesNotContain("WS2812B datasheet");
  }

  @ParameterizedTest
  @CsvSource({"atmega328p", "attiny85", "rp2040", "esp32", "stm32", "samd21", "other"})
  void readmeNamesOnlyFilesThatAreThere(String controller) throws Exception {
    write(usual(controller).job());
    List<String> named =
        java.util.regex.Pattern.compile(
                "`((?:src/|examples/)?[A-Za-z_]+(?:/[A-Za-z_]+)?\\.(?:h|c|S|ino))`")
            .matcher(text("README.md"))
            .results()
            .map(found -> found.group(1))
            .distinct()
            .toList();
    assertThat(named).hasSizeGreaterThan(5);
    assertThat(named)
        .allSatisfy(
            name -> {
              Path file = folder.resolve(name);
              Path inSources = folder.resolve("src").resolve(name);
              Path inExample = folder.resolve("examples/PlayScene").resolve(name);
              assertThat(Stream.of(file, inSources, inExample).anyMatch(Files::exists))
                  .as(name)
                  .isTrue();
            });
    assertThat(text("README.md")).doesNotContainPattern("@[A-Z_]+@");
  }

  @Test
  void readmeOfAControllerWithoutADriverShowsAnExampleOfEachFunction() throws Exception {
    write(usual("other").job());
    assertThat(text("README.md"))
        .contains("Controller: other controller, with pins driven by your own code\n")
        .contains("\n| 0 | chain c0 | **yours** | 4 pixels, sk6812-rgbw |\n")
        .contains("| `lampwright_emit_bytes` |", "| `lampwright_emit_outputs` |")
        .contains("| `lampwright_microseconds` |")
        .doesNotContain("## Interrupts", "`Makefile`");
    assertThat(text("examples/PlayScene/driver.ino"))
        .contains("void lampwright_emit_bytes(", "void lampwright_emit_outputs(")
        .contains("uint32_t lampwright_microseconds(void)")
        .isEqualTo(text("examples/OwnLoop/driver.ino"));
  }

  @Test
  void readmeOfAFamilyHasItsOwnNotesAndThatOfAnyBoardHasAll() throws Exception {
    write(FirmwareJobs.on("stm32").chain("ws2812b", 3, "PA07").output("PB0").job());
    assertThat(text("README.md"))
        .contains("Controller: STM32, with pins driven by your own code\n")
        .contains("| 0 | chain c0 | **PA7** |", "| 0 | output o0 | **PB0** |")
        .contains("\n### STM32\n", "STM32F103C8")
        .contains("minimum high level of its data input is 3.5 V, and the level here is 3.3 V")
        .doesNotContain("### ESP32", "### SAMD21");
    assertThat(text("src/lampwright_config.h"))
        .contains("#define LAMPWRIGHT_CHAIN_0_PIN PA7\n", "#define LAMPWRIGHT_OUTPUT_0_PIN PB0\n");
    write(usual("other").job());
    assertThat(text("README.md")).contains("\n### ESP32\n", "\n### STM32\n", "\n### SAMD21 and");
  }

  /** CommonMark 0.30, section 2.4: a backslash takes all meaning from a mark of punctuation. */
  @Test
  void projectNameDoesNothingInTheReadme() throws Exception {
    write(usual("attiny85").called(TestJobs.HOSTILE_NAME).job());
    String line =
        text("README.md").lines().filter(l -> l.startsWith("Project: ")).findFirst().orElseThrow();
    assertThat(line)
        .isEqualTo(
            "Project: \\*\\/ \\#include \\\"x\\\" \\/\\* \\\\ \\?\\?\\/ \\/\\/ \\\\u000d\\\\u000a"
                + "\\#error \\\\u0000 Z\u00fcrich \ud83d\ude9c \\*\\\\\\/ \\*\\*\\/\\*\\/ \\?\\?\\?\\/ \\\\  ");
  }

  @Test
  void exampleReadsItsSwitchOnAPinThatNothingElseUses() throws Exception {
    write(FirmwareJobs.on("attiny85").chain("ws2812b", 3).output().job());
    // The chain is on PB2 and the output on PB4.
    assertThat(text("examples/OwnLoop/OwnLoop.ino")).contains("PB3 to ground", "PINB & 1 << 3");
    FirmwareJobs full = FirmwareJobs.on("attiny85");
    for (int bit = 0; bit < 5; bit++) {
      full.chain("ws2812b", 1, "PB" + bit);
    }
    write(full.job());
    assertThat(text("examples/OwnLoop/OwnLoop.ino")).contains("no switch is read here");
  }

  @Test
  void factsCarryTheCautions() {
    assertThat(new FirmwareExporter().facts(usual("attiny85").job()).findings())
        .extracting(Finding::code)
        .containsExactly(
            Code.FLASHING_LIGHT, Code.FIRST_POWER_UP, Code.OUTPUT_IS_SIGNAL, Code.FACTORY_CLOCK);
    assertThat(new FirmwareExporter().facts(FirmwareJobs.onNone().output().job()).findings())
        .extracting(Finding::code)
        .contains(Code.CONTROLLER_ASSUMED);
  }

  @Test
  void whatTheTargetRefusesIsRefused() {
    assertThatThrownBy(() -> write(FirmwareJobs.on("attiny85").chain("ws2812b", 1, "PD6").job()))
        .isInstanceOf(ExportRefusedException.class)
        .hasMessage(
            "firmware: chain c0: is on pin PD6; the ATtiny85 has no such pin: use one of PB0, PB1,"
                + " PB2, PB3, PB4 [pin-unknown]");
    assertThat(folder).isEmptyDirectory();
  }

  /** What measure and prove say of it too: the driver's own 1.3125 us a bit, not 1.25. */
  @Test
  void framesThatTakeLongerToSendThanTheyLastAreRefused() {
    ProjectJob job = FirmwareJobs.on("atmega328p").chain("ws2812b", 640).frames(2).job();
    assertThat(new FirmwareExporter().facts(job).refusals())
        .extracting(Finding::text)
        .contains(
            "chains, scene noise: sending a frame takes 20.47 ms (102 % of the frame time), 1.313 us"
                + " per bit; a frame lasts 20.00 ms (the driver for the ATmega328P at 16 MHz): play"
                + " at 48.8 frames/s or less, or shorten the chains to 625 pixels in all"
                + " [frame-time]");
  }

  @Test
  void noSceneIsRefused() {
    ProjectJob job = usual("attiny85").job();
    assertThatThrownBy(() -> write(ProjectJob.of(job.project(), List.of())))
        .isInstanceOf(ExportRefusedException.class)
        .hasMessage(
            "firmware: firmware export: scenes: none; must have at least one scene"
                + " [export-refused]");
  }

  private String text(String name) throws IOException {
    return Files.readString(folder.resolve(name));
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
}
