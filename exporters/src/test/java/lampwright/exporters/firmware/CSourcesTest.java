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
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The C sources that builders get, and the prover's: one format, nothing for cppcheck to say. */
class CSourcesTest {
  private static final Path SOURCES = Path.of("src/main/resources/lampwright/exporters");

  private static final String PLAYER = "src/lampwright_player.c";

  private final OutsideTools tools = OutsideTools.onThisMachine();

  @TempDir Path folder;

  @Test
  void everySourceIsFormatted() throws IOException {
    List<String> words = new ArrayList<>(List.of("--dry-run", "-Werror", "--style=file"));
    try (Stream<Path> files = Files.walk(SOURCES)) {
      files.map(Path::toString).filter(name -> name.matches(".*\\.[ch]")).forEach(words::add);
    }
    assertThat(words).anyMatch(word -> word.endsWith("prover.c"));
    assertThat(words).anyMatch(word -> word.endsWith("lampwright_player.c"));
    tools
        .find("clang-format", "clang-format")
        .run(Path.of("").toAbsolutePath(), words.toArray(String[]::new))
        .quietOut();
  }

  static Stream<Arguments> folders() {
    return Stream.of(
        folder("atmega328p", 16, "ATmega328P", usual("atmega328p", 16)),
        folder("atmega32u4", 8, "ATmega32U4", usual("atmega32u4", 8)),
        folder("attiny85", 8, "ATtiny85", usual("attiny85", 8)),
        folder("attiny85", 16, "ATtiny85", FirmwareJobs.on("attiny85", 16).output()),
        folder("attiny85", 8, "ATtiny85", FirmwareJobs.on("attiny85", 8).chain("ws2815", 1)),
        folder("rp2040", 0, "", usual("rp2040", 125)),
        folder("rp2040", 0, "", FirmwareJobs.on("rp2040").chain("ws2812b", 2, "GP4").output()),
        folder("other", 0, "", FirmwareJobs.on("other").chain("ws2812b", 2)));
  }

  private static FirmwareJobs usual(String controller, int clock) {
    return FirmwareJobs.on(controller, clock)
        .chain("sk6812-rgbw", 4)
        .chain("ws2815", 4)
        .chain("ws2812b", 2)
        .output();
  }

  private static Arguments folder(String controller, int clock, String name, FirmwareJobs jobs) {
    return Arguments.of(controller, clock, name, jobs);
  }

  /** As exported, so with what is written for the controller, configuration and scenes. */
  @ParameterizedTest(name = "{0} at {1} MHz")
  @MethodSource("folders")
  void exportedFolderIsFormattedAndClean(
      String controller, int clock, String name, FirmwareJobs jobs) throws Exception {
    exportsCleanly(controller, clock, name, jobs.job());
  }

  /** With situations: their player, and the reader of inputs that is made for the pins. */
  @Test
  void folderThatReactsIsFormattedAndClean() throws Exception {
    Project project =
        ProjectReader.read(Path.of("../samples/recovery-tractor.lampwright.json"))
            .project()
            .orElseThrow();
    exportsCleanly("atmega328p", 16, "ATmega328P", ProjectJob.of(project, project.scenes()));
    assertThat(folder.resolve("src/lampwright_inputs_avr.S")).content().contains("PCINT2_vect");
    tools.find("make", "make").run(folder, "-s").out();
    assertThat(folder.resolve("show.hex")).exists();
  }

  /** The same for an RP2040, built by its Makefile, and for a board whose inputs hooks read. */
  @ParameterizedTest
  @ValueSource(strings = {"rp2040", "esp32"})
  void otherFoldersThatReactAreFormattedAndClean(String controller) throws Exception {
    ProjectJob job = new RandomShow(4).job(controller);
    exportsCleanly(controller, 0, "", job);
    if (controller.equals("rp2040")) {
      tools.find("make", "make").run(folder, "-s", "HOST_CC=gcc").out();
      assertThat(folder.resolve("show.uf2")).exists();
    }
  }

  private void exportsCleanly(String controller, int clock, String name, ProjectJob job)
      throws Exception {
    new FirmwareExporter().export(job, this::open, Progress.SILENT);
    Files.copy(SOURCES.resolve(".clang-format"), folder.resolve(".clang-format"));
    List<String> words = new ArrayList<>(List.of("--dry-run", "-Werror", "--style=file"));
    try (Stream<Path> files = Files.walk(folder)) {
      files.map(Path::toString).filter(file -> file.matches(".*\\.[ch]")).forEach(words::add);
    }
    assertThat(words).hasSizeGreaterThan(15);
    tools.find("clang-format", "clang-format").run(folder, words.toArray(String[]::new)).quietOut();
    if (controller.equals("rp2040")) {
      checkPortable("-D__ARM_ARCH_6M__", "-Isrc");
    } else if (clock == 0) {
      checkPortable("-Isrc");
    } else {
      check(
          folder, "-D__AVR__", "-D__AVR_" + name + "__", "-DF_CPU=" + clock + "000000UL", "-Isrc");
    }
  }

  @Test
  void proverIsClean() {
    check(SOURCES.resolve("prover").toAbsolutePath());
  }

  /** In all that the compiler's options could make of it, and as this folder has it. */
  @Test
  void playerIsCleanInEveryConfiguration() throws Exception {
    new FirmwareExporter().export(new RandomShow(4).job("esp32"), this::open, Progress.SILENT);
    cppcheck(folder, "--force", "-Isrc", PLAYER);
  }

  // Every configuration of the player takes longer than all the rest, and it is the same source in
  // all these folders: here it is checked as gcc compiles it there. With a macro that is
  // defined cppcheck tries no others.
  private void checkPortable(String... more) {
    check(folder, Stream.concat(Stream.of("-i" + PLAYER), Stream.of(more)).toArray(String[]::new));
    cppcheck(
        folder,
        Stream.concat(Stream.of("-D__GNUC__", PLAYER), Stream.of(more)).toArray(String[]::new));
  }

  private void check(Path where, String... more) {
    cppcheck(
        where, Stream.concat(Stream.of("--force", "."), Stream.of(more)).toArray(String[]::new));
  }

  private void cppcheck(Path where, String... more) {
    List<String> words = new ArrayList<>(List.of("-q", "--std=c99", "--inline-suppr"));
    words.add("--enable=warning,style,performance,portability");
    words.add("--error-exitcode=1");
    words.addAll(List.of(more));
    tools.find("cppcheck", "cppcheck").run(where, words.toArray(String[]::new)).quietOut();
  }

  private OutputStream open(String name) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.resolveSibling(""));
    return Files.newOutputStream(file);
  }
}
