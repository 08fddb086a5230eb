package lampwright.exporters.firmware;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.exporters.OutsideTools;
import lampwright.exporters.Progress;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.packed.play.RandomShow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The bench link in the sources: nothing where it is off, no warning where it is on, plain errors.
 */
class LiveSourcesTest {
  private static final List<String> STRICT =
      List.of("-Os", "-std=c99", "-Wall", "-Wextra", "-Wpedantic", "-Werror", "-Isrc");
  private static final List<String> CPP = List.of("-Os", "-xc++", "-Wall", "-Wextra", "-Isrc");

  private static final Path WIRE = Path.of("src/test/wire").toAbsolutePath();

  private final OutsideTools tools = OutsideTools.onThisMachine();

  @TempDir Path folder;

  private void write(ProjectJob job) throws Exception {
    new FirmwareExporter().export(job, this::open, Progress.SILENT);
  }

  private OutputStream open(String name) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.resolveSibling(""));
    return Files.newOutputStream(file);
  }

  private OutsideTools.Tool avrGcc() {
    return tools.findCompiler("avr-gcc", "gcc-avr", "avr/pgmspace.h", "avr-libc");
  }

  /** The program memory of everything in the folder. */
  private byte[] image(String main, String... more) throws IOException {
    List<String> words =
        new ArrayList<>(List.of("-mmcu=atmega328p", "-DF_CPU=16000000UL", "-ffunction-sections"));
    words.addAll(STRICT);
    words.addAll(List.of(more));
    words.add(main);
    try (Stream<Path> all = Files.list(folder.resolve("src"))) {
      all.map(Path::toString).filter(f -> f.matches(".*\\.[cS]")).sorted().forEach(words::add);
    }
    words.addAll(List.of("-Wl,--gc-sections", "-o", "show.elf"));
    avrGcc().run(folder, words.toArray(String[]::new)).quietOut();
    tools
        .find("avr-objcopy", "binutils-avr")
        .run(folder, "-O", "binary", "show.elf", "show.bin")
        .quietOut();
    return Files.readAllBytes(folder.resolve("show.bin"));
  }

  private static FirmwareJobs usual() {
    return FirmwareJobs.on("atmega328p", 16).chain("ws2812b", 4).output();
  }

  private static ProjectJob tractor() throws IOException {
    Project project =
        ProjectReader.read(Path.of("../samples/recovery-tractor.lampwright.json"))
            .project()
            .orElseThrow();
    return ProjectJob.of(project, project.scenes());
  }

  /** The program without any word of it, taken out by the test. */
  @ParameterizedTest
  @ValueSource(booleans = {false, true})
  void switchedOffItTakesNothing(boolean reacts) throws Exception {
    write(reacts ? tractor() : usual().job());
    byte[] off = image("main.c");
    assertThat(image("main.c", "-DLAMPWRIGHT_LIVE=0")).isEqualTo(off);
    String plain =
        Files.readString(folder.resolve("main.c"))
            .replaceAll("#include \"lampwright_live.h\"\n", "")
            .replaceAll(" *lampwright_live_begin\\(\\);\n", "")
            .replaceAll("(?s) *if \\(lampwright_live\\(\\)\\) \\{\n.*?\n *\\}\n", "");
    assertThat(plain).doesNotContain("live");
    Files.writeString(folder.resolve("plain.c"), plain);
    assertThat(image("plain.c")).isEqualTo(off);
    assertThat(image("main.c", LiveBench.LIVE)).hasSizeGreaterThan(off.length);
  }

  @ParameterizedTest
  @CsvSource({
    "atmega328p, 16, __AVR_ATmega328P__",
    "atmega328p, 8, __AVR_ATmega328P__",
    "atmega32u4, 16, __AVR_ATmega32U4__",
    "rp2040, 125, __ARM_ARCH_6M__"
  })
  void switchedOnItCompilesWithoutAWarning(String controller, int clock, String macro)
      throws Exception {
    // Chains of every kind of driver, and no chain, which needs no rest.
    for (FirmwareJobs jobs :
        List.of(
            FirmwareJobs.on(controller, clock).chain("ws2812b", 4).chain("ws2815", 2).output(),
            FirmwareJobs.on(controller, clock).output())) {
      write(jobs.job());
      for (String dark : List.of("0", "1")) {
        for (List<String> language : List.of(STRICT, CPP)) {
          compileLive(controller, clock, language, "-DLAMPWRIGHT_LIVE_THEN_DARK=" + dark);
        }
      }
      tools
          .find("cppcheck", "cppcheck")
          .run(
              folder,
              "-q",
              "--std=c99",
              "--inline-suppr",
              "--enable=warning,style,performance,portability",
              "--error-exitcode=1",
              "-Isrc",
              LiveBench.LIVE,
              "-D" + macro + "=1",
              "-DF_CPU=" + clock + "000000UL",
              "src/lampwright_live.c",
              "src/lampwright_show.c")
          .quietOut();
    }
  }

  private void compileLive(String controller, int clock, List<String> language, String more) {
    boolean arm = controller.equals("rp2040");
    List<String> words = new ArrayList<>();
    words.addAll(
        arm
            ? List.of("-mcpu=cortex-m0plus", "-mthumb", "-ffreestanding")
            : List.of("-mmcu=" + controller, "-DF_CPU=" + clock + "000000UL"));
    words.addAll(language);
    words.addAll(List.of(LiveBench.LIVE, more, "-Werror", "-fsyntax-only"));
    words.addAll(List.of("main.c", "src/lampwright_live.c", "src/lampwright_show.c"));
    (arm ? tools.find("arm-none-eabi-gcc", "gcc-arm-none-eabi") : avrGcc())
        .run(folder, words.toArray(String[]::new))
        .quietOut();
  }

  /** As a hobby IDE does, with the core's header before them. */
  @ParameterizedTest
  @ValueSource(strings = {"atmega328p", "rp2040"})
  void examplesCompileWithIt(String controller) throws Exception {
    boolean arm = controller.equals("rp2040");
    write(arm ? new RandomShow(4).job(controller) : tractor());
    List<String> words = new ArrayList<>();
    words.addAll(
        arm
            ? List.of("-mcpu=cortex-m0plus", "-mthumb")
            : List.of("-mmcu=atmega328p", "-DF_CPU=16000000UL"));
    words.addAll(CPP);
    words.addAll(List.of(LiveBench.LIVE, "-DARDUINO=10819", "-Werror", "-fsyntax-only"));
    words.addAll(List.of("-I" + WIRE, "-include", "Arduino.h"));
    for (String example : List.of("PlayScene", "React")) {
      words.add("examples/" + example + "/" + example + ".ino");
    }
    words.add("src/lampwright_live.c");
    (arm ? tools.find("arm-none-eabi-gcc", "gcc-arm-none-eabi") : avrGcc())
        .run(folder, words.toArray(String[]::new))
        .quietOut();
  }

  private String error(String controller, int clock, String... more) {
    List<String> words = new ArrayList<>(List.of("-mmcu=" + controller));
    words.add("-DF_CPU=" + clock + "000000UL");
    words.addAll(STRICT);
    words.addAll(List.of(LiveBench.LIVE, "-c", "-o", "object.o"));
    words.addAll(List.of(more));
    words.add(
        Files.exists(folder.resolve("src/lampwright_live.c")) ? "src/lampwright_live.c" : "main.c");
    return avrGcc().run(folder, words.toArray(String[]::new)).errors();
  }

  /** F_CPU / 8 / baud is 34.7 or 17.4, 17.4, 8, 4, 2, 1 where it compiles, else 8.7 or 4.3. */
  @ParameterizedTest
  @CsvSource({
    "16, 57600 115200 250000 500000 1000000, 230400 460800",
    "8, 57600 250000 500000, 115200 230400"
  })
  void rateThatTheClockCannotMakeDoesNotCompile(int clock, String compile, String refused)
      throws Exception {
    write(FirmwareJobs.on("atmega328p", clock).chain("ws2812b", 4).job());
    for (String baud : compile.split(" ", -1)) {
      assertThat(errorAt(clock, baud)).as(baud).isEmpty();
    }
    for (String baud : refused.split(" ", -1)) {
      assertThat(errorAt(clock, baud))
          .as(baud)
          .contains("at this clock the baud rate would be off by more than 2.5 %");
    }
  }

  private String errorAt(int clock, String baud) {
    return error("atmega328p", clock, "-DLAMPWRIGHT_LIVE_BAUD=" + baud + "UL");
  }

  @Test
  void rateThatIsTooSlowDoesNotCompile() throws Exception {
    write(usual().job());
    assertThat(error("atmega328p", 16, "-DLAMPWRIGHT_LIVE_BAUD=38400UL"))
        .contains("the bench link needs 57,600 baud or more");
  }

  @ParameterizedTest
  @ValueSource(strings = {"PD0", "PD1"})
  void pinThatIsTakenDoesNotCompile(String pin) throws Exception {
    write(FirmwareJobs.on("atmega328p").chain("ws2812b", 4, pin).job());
    assertThat(error("atmega328p", 16))
        .contains("the bench link needs the pins of the serial line: README.md, Bench link");
    assertThat(Files.readString(folder.resolve("README.md")))
        .contains(
            "**It does not build for this project:** a chain, output or input is on PD0 or PD1");
    image("main.c");
  }

  @Test
  void controllerWithoutALineDoesNotCompile() throws Exception {
    write(FirmwareJobs.on("attiny85").chain("ws2812b", 4).job());
    assertThat(error("attiny85", 8)).contains("there is no bench link for this controller");
    assertThat(Files.readString(folder.resolve("README.md"))).doesNotContain("Bench link");
    assertThat(folder.resolve("src/lampwright_live.c")).doesNotExist();
  }

  /** GP0 and GP1 are the first pair, GP5 and GP4 the next. */
  @ParameterizedTest
  @CsvSource({"GP2, 0, 1, 0", "GP1, 1, 5, 4", "GP0, 1, 5, 4"})
  void freePairOfAnRp2040IsUsed(String pin, int uart, int receive, int transmit) throws Exception {
    write(FirmwareJobs.on("rp2040").chain("ws2812b", 4, pin).job());
    assertThat(Files.readString(folder.resolve("src/lampwright_config.h")))
        .contains(
            "LIVE_FREE 1\n",
            "LIVE_UART " + uart + "\n",
            "LIVE_RX_PIN " + receive + "\n",
            "LIVE_TX_PIN " + transmit + "\n");
    assertThat(Files.readString(folder.resolve("README.md")))
        .contains("its TX through 1 kohm to GP" + receive + ", its RX to GP" + transmit);
  }

  @Test
  void makeBuildsAnewWhereTheSwitchChanges() throws Exception {
    write(usual().job());
    OutsideTools.Tool make = tools.find("make", "make");
    make.run(folder, "-s").out();
    byte[] off = Files.readAllBytes(folder.resolve("show.hex"));
    make.run(folder, "-s", "LIVE=1").out();
    byte[] on = Files.readAllBytes(folder.resolve("show.hex"));
    make.run(folder, "-s", "LIVE=1", "BAUD=115200").out();
    byte[] slow = Files.readAllBytes(folder.resolve("show.hex"));
    make.run(folder, "-s").out();
    assertThat(make.run(folder, "-s", "LIVE=yes").errors()).contains("LIVE=yes: must be 0 or 1");
    assertThat(on).isNotEqualTo(off).isNotEqualTo(slow);
    assertThat(folder.resolve("show.hex")).hasBinaryContent(off);
  }
}
