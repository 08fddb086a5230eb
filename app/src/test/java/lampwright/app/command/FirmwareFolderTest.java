package lampwright.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Exporting again: what the builder changed or added stays, what is ours is renewed. */
class FirmwareFolderTest {
  private static final String PROJECT =
      """
      {"lampwright": 1, "name": "Again", "rig": {"supplyLimitMilliamps": 2000, %s
        "chains": [{"id": "roof", "pixelType": "ws2812b", "pixels": %d}],
        "lamps": [{"id": "all", "pixels": [{"chain": "roof", "count": %2$d}]}]},
       "scenes": [{"id": "on", "lengthMs": 1000, "tracks": [{"lamps": ["all"], "cues": [
         {"lengthMs": 1000, "pattern": {"kind": "steady", "level": %s}}]}]}]}
      """;

  @TempDir Path folder;

  private Run export(String rig, int pixels, String level) throws IOException {
    Path project = folder.resolve("again.lampwright.json");
    Files.writeString(project, PROJECT.formatted(rig, pixels, level));
    return Run.of("export", project, "--to", folder.resolve("out"), "--as", "firmware,bin");
  }

  private Path file(String name) {
    return folder.resolve("out/firmware").resolve(name);
  }

  private String text(String name) throws IOException {
    return Files.readString(file(name));
  }

  private List<String> names() throws IOException {
    try (Stream<Path> all = Files.walk(file(""))) {
      return all.filter(Files::isRegularFile)
          .map(path -> file("").relativize(path).toString().replace('\\', '/'))
          .toList();
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"main.c", "examples/OwnLoop/OwnLoop.ino"})
  void codeOfTheBuildersOwnStays(String name) throws IOException {
    export("", 8, "1");
    String mine = text(name) + "\n/* my own work of a week */\n";
    Files.writeString(file(name), mine);
    Run again = export("", 9, "0.5");
    assertThat(again.code()).as(again.err()).isZero();
    assertThat(text(name)).isEqualTo(mine);
    assertThat(again.err()).contains("firmware/" + name, "edited-file-kept");
    assertThat(text("src/lampwright_config.h")).contains("LAMPWRIGHT_CHAIN_0_BYTES 27");
    assertThat(text("src/lampwright_scenes.c")).isNotEmpty();
    assertThat(file(name + ".new")).doesNotExist();
  }

  @Test
  void configurationThatTheRigOutgrewIsLaidBeside() throws IOException {
    String name = "src/lampwright_config.h";
    export("", 8, "1");
    String mine =
        text(name).replace("LAMPWRIGHT_INTERRUPTS 1", "LAMPWRIGHT_INTERRUPTS 0 /* mine */");
    Files.writeString(file(name), mine);

    // Only the light changes: the configuration is still the right one.
    Run light = export("", 8, "0.5");
    assertThat(light.err()).contains("edited-file-kept").doesNotContain("edited-file-differs");
    assertThat(file(name + ".new")).doesNotExist();

    Run grown = export("", 9, "0.5");
    assertThat(grown.err())
        .contains("caution: firmware export: firmware/" + name + " has been edited and is kept")
        .contains("firmware/" + name + ".new", "[edited-file-differs]");
    assertThat(text(name)).isEqualTo(mine);
    assertThat(text(name + ".new")).contains("LAMPWRIGHT_CHAIN_0_BYTES 27");

    // The same again: what lies beside stays until it is taken over.
    export("", 9, "0.5");
    assertThat(text(name + ".new")).contains("LAMPWRIGHT_CHAIN_0_BYTES 27");
    Files.move(file(name + ".new"), file(name), java.nio.file.StandardCopyOption.REPLACE_EXISTING);
    Run taken = export("", 9, "0.5");
    assertThat(taken.err()).doesNotContain("edited-file");
    Run on = export("", 10, "0.5");
    assertThat(on.err()).doesNotContain("edited-file");
    assertThat(text(name)).contains("LAMPWRIGHT_CHAIN_0_BYTES 30");
  }

  @Test
  void filesThatAreNotOursAreLeftAlone() throws IOException {
    export("", 8, "1");
    Files.writeString(file("src/my_motor.c"), "int motor;\n");
    Files.writeString(file("show.hex"), ":00000001FF\n");
    assertThat(export("", 9, "1").code()).isZero();
    assertThat(text("src/my_motor.c")).isEqualTo("int motor;\n");
    assertThat(text("show.hex")).isEqualTo(":00000001FF\n");
  }

  @Test
  void filesOfAnotherControllerGoUnlessTheyWereChanged() throws IOException {
    export("", 8, "1");
    Files.writeString(file("Makefile"), text("Makefile") + "# mine\n");
    Run other = export("\"controller\": \"other\",", 8, "1");
    assertThat(other.code()).as(other.err()).isZero();
    assertThat(names()).contains("Makefile").doesNotContain("main.c", "src/lampwright_wire_avr.S");
    assertThat(other.err()).contains("firmware/Makefile", "edited-file-kept");
  }

  @Test
  void folderWithoutARecordIsRefusedWhole() throws IOException {
    Files.createDirectories(file("src"));
    Files.writeString(file("src/mine.c"), "mine");
    Run run = export("", 8, "1");
    assertThat(run.code()).isEqualTo(3);
    assertThat(run.err()).contains("has no record of what was exported there");
    assertThat(names()).containsExactly("src/mine.c");
    assertThat(folder.resolve("out/on.bin")).doesNotExist();
  }

  @ParameterizedTest
  @ValueSource(strings = {"nonsense", "0123  ../../x\n"})
  void recordThatWeDidNotWriteIsRefused(String record) throws IOException {
    export("", 8, "1");
    Files.writeString(file("lampwright_files.txt"), record);
    Run run = export("", 9, "1");
    assertThat(run.code()).isEqualTo(3);
    assertThat(run.err()).contains("lampwright_files.txt: could not read: is no record");
    assertThat(text("src/lampwright_config.h")).contains("LAMPWRIGHT_CHAIN_0_BYTES 24");
  }

  @Test
  void linkInItsPlaceIsRefusedForWhatItIs() throws IOException {
    Assumptions.assumeTrue(
        FileSystems.getDefault().supportedFileAttributeViews().contains("posix"));
    Path elsewhere = Files.createDirectories(folder.resolve("elsewhere"));
    Files.createDirectories(folder.resolve("out"));
    Files.createSymbolicLink(file(""), elsewhere);
    Run run = export("", 8, "1");
    assertThat(run.code()).isEqualTo(3);
    assertThat(run.err()).contains("firmware: could not write: not a folder");
    assertThat(elsewhere).isEmptyDirectory();
  }

  @Test
  void refusedExportMakesNoFolder() throws IOException {
    Run run = export("\"controller\": \"attiny85\",", 300, "1");
    assertThat(run.code()).isEqualTo(1);
    assertThat(folder.resolve("out")).doesNotExist();
  }

  @ParameterizedTest
  @ValueSource(strings = {"con", "nul", "aux", "prn", "com1", "lpt9", "-rf"})
  void sceneIdThatCantNameAFileIsRefusedAndCheckSaysSo(String id) throws IOException {
    Path project = folder.resolve("again.lampwright.json");
    Files.writeString(
        project, PROJECT.formatted("", 8, "1").replace("\"id\": \"on\"", "\"id\": \"" + id + "\""));
    Run run = Run.of("export", project, "--to", folder.resolve("out"), "--as", "c");
    assertThat(run.code()).isEqualTo(1);
    assertThat(run.err()).contains("its exported files can't be named " + id);
    assertThat(folder.resolve("out")).doesNotExist();
    assertThat(Run.of("check", project).err() + Run.of("check", project).out())
        .contains("[file-name]");
    assertThat(Run.of("check", project).code()).isEqualTo(1);
  }
}
