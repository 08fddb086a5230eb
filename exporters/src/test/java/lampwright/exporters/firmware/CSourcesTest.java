package lampwright.exporters.firmware;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import lampwright.exporters.OutsideTools;
import lampwright.exporters.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The C sources that builders get, and the prover's: one format, nothing for cppcheck to say. */
class CSourcesTest {
  private static final Path SOURCES = Path.of("src/main/resources/lampwright/exporters");

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

  /**
   * As exported, so with the configuration and the scenes, in every shape of the preprocessor's.
   */
  @ParameterizedTest
  @CsvSource({"atmega328p, ATmega328P", "atmega32u4, ATmega32U4", "attiny85, ATtiny85"})
  void exportedFolderIsCleanForTheController(String controller, String name) throws Exception {
    export(controller);
    check(folder, "-D__AVR__", "-D__AVR_" + name + "__", "-DF_CPU=8000000UL", "-Isrc");
  }

  @Test
  void exportedFolderIsCleanWhereTheBuilderSendsTheBytes() throws Exception {
    export("rp2040");
    check(folder, "-Isrc");
  }

  @Test
  void proverIsClean() {
    check(SOURCES.resolve("prover").toAbsolutePath());
  }

  private void check(Path where, String... more) {
    List<String> words = new ArrayList<>(List.of("-q", "--std=c99", "--force", "--inline-suppr"));
    words.add("--enable=warning,style,performance,portability");
    words.add("--error-exitcode=1");
    words.addAll(List.of(more));
    words.add(".");
    tools.find("cppcheck", "cppcheck").run(where, words.toArray(String[]::new)).quietOut();
  }

  private void export(String controller) throws Exception {
    new FirmwareExporter()
        .export(
            FirmwareJobs.on(controller).chain("sk6812-rgbw", 4).output().job(),
            this::open,
            Progress.SILENT);
    assertThat(folder.resolve("src/lampwright_config.h")).isRegularFile();
  }

  private OutputStream open(String name) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.resolveSibling(""));
    return Files.newOutputStream(file);
  }
}
