package lampwright.app.command;

import static lampwright.app.command.Run.sample;
import static org.assertj.core.api.Assertions.assertThat;

import com.google.common.collect.ObjectArrays;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import lampwright.app.export.ExportFormats;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.json.ProjectWriter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CommandLineTest {
  private static final String MINIMAL =
      """
      {"lampwright": 1,
       "rig": {"outputs": [{"id": "o"}], "lamps": [{"id": "l", "output": "o"}]},
       "scenes": [{"id": "s", "lengthMs": 100, "tracks": [{"lamps": ["l"], "cues": [
         {"lengthMs": 100, "pattern": {"kind": "steady", "level": LEVEL}}]}]}]}
      """;

  @TempDir Path folder;

  private Path project(String text) throws IOException {
    return Files.writeString(folder.resolve("p.lampwright.json"), text);
  }

  private static String minimal(String level) {
    return MINIMAL.replace("LEVEL", level);
  }

  private static Stream<Path> files(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.filter(Files::isRegularFile).toList().stream();
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"recovery-tractor", "mountain-rescue", "harbour-dusk", "bench-rgbw"})
  void everySampleIsWithoutErrorOrCautionOfTheFile(String name) {
    Run run = Run.of("check", sample(name));
    assertThat(run.code()).isZero();
    assertThat(run.out()).contains("no errors");
  }

  @ParameterizedTest
  @ValueSource(strings = {"recovery-tractor", "mountain-rescue", "harbour-dusk", "bench-rgbw"})
  void everySampleStandsAsTheWriterLaysItOut(String name) throws IOException {
    String text = Files.readString(sample(name));
    assertThat(ProjectWriter.write(ProjectReader.read(sample(name)).project().orElseThrow()))
        .isEqualTo(text);
  }

  @ParameterizedTest
  @CsvSource({
    "recovery-tractor, working, 13400",
    "mountain-rescue, call-out, 21900",
    "harbour-dusk, dusk, 15500",
    "bench-rgbw, walk, 6400"
  })
  void everySampleExportsInEveryFormat(String name, String scene, long tableBytes)
      throws IOException {
    Run run = Run.of("export", sample(name), "--to", folder, "--as", "c,bin,hex,csv");
    assertThat(run.err()).doesNotContain(": error: ");
    assertThat(run.code()).isZero();
    assertThat(folder.resolve(scene + ".bin")).hasSize(tableBytes);
    for (String kind : new String[] {"h", "c", "hex", "csv"}) {
      assertThat(folder.resolve(scene + "." + kind)).isNotEmptyFile();
    }
  }

  @Test
  void openSaysWhichFileIsNotThere() {
    Run run = Run.of("open", folder.resolve("no.lampwright.json"));
    assertThat(run.code()).isEqualTo(3);
    assertThat(run.err())
        .isEqualTo("lampwright: " + folder.resolve("no.lampwright.json") + ": no such file\n");
  }

  @Test
  void exportWritesCOfEverySceneUnlessToldOtherwise() throws IOException {
    Run run = Run.of("export", sample("recovery-tractor"), "--to", folder.resolve("new/folder"));
    assertThat(run.code()).isZero();
    assertThat(files(folder).map(f -> f.getFileName().toString()))
        .containsExactlyInAnyOrder(
            Stream.of(
                    "working",
                    "road",
                    "towed-backwards",
                    "driving",
                    "beacons",
                    "stop",
                    "reverse",
                    "hazard")
                .flatMap(scene -> Stream.of(scene + ".c", scene + ".h"))
                .toArray(String[]::new));
    assertThat(run.out().lines()).hasSize(16);
  }

  @Test
  void exportedBytesAreThoseOfTheArithmetic() throws IOException {
    Path project = project(minimal("0.5"));
    assertThat(Run.of("export", project, "--to", folder, "--as", "bin").code()).isZero();
    // 0.5 ^ 2.2 x 255 = 55.49.
    assertThat(Files.readAllBytes(folder.resolve("s.bin"))).containsExactly(55, 55, 55, 55, 55);
  }

  @Test
  void hexBeginsAtTheAddressGiven() throws IOException {
    Path project = project(minimal("1"));
    Run run = Run.of("export", project, "--to", folder, "--as", "hex", "--at", "0x4000");
    assertThat(run.code()).isZero();
    assertThat(Files.readString(folder.resolve("s.hex"))).contains(":05400000FFFFFFFFFF");
  }

  @Test
  void problemsGoToStandardErrorAndEndWithCode1() throws IOException {
    Path project = project(minimal("7"));
    Run run = Run.of("check", project);
    assertThat(run.code()).isEqualTo(1);
    assertThat(run.err())
        .contains("error: scenes[0].tracks[0].cues[0].pattern.level: 7 at line 4, column ")
        .contains("must be between 0 and 1");
    assertThat(run.out()).contains("1 error, no dangers, no cautions, no notes");
  }

  @Test
  void exportOfAProjectWithErrorsWritesNothing() throws IOException {
    Path project = project(minimal("7"));
    Run run = Run.of("export", project, "--to", folder.resolve("out"));
    assertThat(run.code()).isEqualTo(1);
    assertThat(run.err()).contains("must be between 0 and 1");
    assertThat(folder.resolve("out")).doesNotExist();
  }

  @Test
  void missingFileAndFolderAreCode3() {
    Run missing = Run.of("check", folder.resolve("none.json"));
    assertThat(missing.code()).isEqualTo(3);
    assertThat(missing.err()).contains("none.json");
    Run directory = Run.of("check", folder);
    assertThat(directory.code()).isEqualTo(3);
    assertThat(directory.err()).contains("folder");
  }

  @Test
  void exportIntoAFileIsCode3AndChangesNothing() throws IOException {
    Path file = Files.writeString(folder.resolve("file"), "kept");
    Run run = Run.of("export", sample("bench-rgbw"), "--to", file);
    assertThat(run.code()).isEqualTo(3);
    assertThat(run.err()).contains("file");
    assertThat(file).hasContent("kept");
  }

  @Test
  void exportOverAFolderOfThatNameLeavesEveryFileAsItWas() throws IOException {
    Path old = Files.writeString(folder.resolve("walk.bin"), "old");
    Files.createDirectories(folder.resolve("ramps.bin"));
    Run run = Run.of("export", sample("bench-rgbw"), "--to", folder, "--as", "bin");
    assertThat(run.code()).isEqualTo(3);
    assertThat(run.err()).contains("ramps.bin");
    assertThat(old).hasContent("old");
    assertThat(files(folder)).containsExactly(old);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "nonsense",
        "open P Q",
        "export",
        "export P",
        "export P --to D --as tiff",
        "export P --to D --scene nobody",
        "export P --to D --at -1",
        "export P --to D --at 0x1ffffffff",
        "export P --to D --at 0xyz",
        "check",
        "check P Q",
        "check --unknown P",
        "pixels more",
        "pixels ws2812b more"
      })
  void wrongCommandLineIsCode2WithAPointerToHelp(String line) throws IOException {
    Path project = project(minimal("1"));
    Object[] words =
        Stream.of(line.split(" "))
            .filter(w -> !w.isEmpty())
            .map(w -> w.equals("P") ? project : w.equals("D") ? folder.resolve("out") : w)
            .toArray();
    Run run = Run.of(words);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("--help'");
    assertThat(run.out()).isEmpty();
    assertThat(folder.resolve("out")).doesNotExist();
  }

  @Test
  void unknownSceneNamesThoseThatAre() {
    Run run = Run.of("export", sample("bench-rgbw"), "--to", folder, "--scene", "wolk");
    assertThat(run.err())
        .contains("--scene: wolk: must be one of walk, ramps; did you mean \"walk\"?");
  }

  // Both forms that help shows, on every command that takes the option.
  @ParameterizedTest
  @ValueSource(strings = {"--scene walk --scene ramps", "--scene=walk,ramps", "--scene ramps,walk"})
  void scenesMayBeListedOrTheOptionRepeated(String line) throws IOException {
    String[] words = line.split(" ");
    Path to = folder.resolve("scenes");
    Object[] export = {"export", sample("bench-rgbw"), "--to", to, "--as", "bin"};
    assertThat(Run.of(ObjectArrays.concat(export, words, Object.class)).code()).isZero();
    assertThat(files(to).map(f -> f.getFileName().toString()))
        .containsExactlyInAnyOrder("walk.bin", "ramps.bin");
    Object[] measure = {"measure", sample("bench-rgbw")};
    assertThat(Run.of(ObjectArrays.concat(measure, words, Object.class)).out())
        .contains("Scene walk:", "Scene ramps:");
  }

  @ParameterizedTest
  @ValueSource(strings = {"measure P", "export P --to D", "prove P"})
  void unknownSceneIsToldInOneWay(String line) {
    Object[] words =
        Stream.of((line + " --scene wolk").split(" "))
            .map(w -> w.equals("P") ? sample("bench-rgbw") : w.equals("D") ? folder : w)
            .toArray();
    Run run = Run.of(words);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err())
        .startsWith(
            "lampwright: --scene: wolk: must be one of walk, ramps; did you mean \"walk\"?");
  }

  @Test
  void unknownFormatIsTold() {
    Run run = Run.of("export", sample("bench-rgbw"), "--to", folder, "--as", "c,bni");
    assertThat(run.err()).contains("--as: bni: must be one of c, bin,").contains("mean \"bin\"?");
  }

  @ParameterizedTest
  @ValueSource(strings = {"--help", "check --help", "export --help", "pixels --help"})
  void helpTeachesWithAnExample(String line) {
    Run run = Run.of((Object[]) line.split(" "));
    assertThat(run.code()).isZero();
    assertThat(run.out()).contains("Example").contains("lampwright ");
  }

  @Test
  void everyFormatIsInTheHelpAndTheDocs() throws IOException {
    String help = Run.of("export", "--help").out();
    String docs = Files.readString(Path.of("../docs/formats.md"));
    for (String key : ExportFormats.keys()) {
      assertThat(help)
          .containsPattern("(?m)^ +" + key + " +" + Pattern.quote(ExportFormats.summary(key)));
      assertThat(docs).containsPattern("(?m)^\\| `" + key + "` \\|");
    }
  }

  @Test
  void versionSaysWhatRuns() {
    Run run = Run.of("--version");
    assertThat(run.code()).isZero();
    assertThat(run.out()).containsPattern("lampwright \\d+\\.\\d+\\.\\d+").contains("Java ");
  }

  @Test
  void pixelsListsEveryTypeWithItsNumbers() {
    Run run = Run.of("pixels");
    assertThat(run.code()).isZero();
    assertThat(run.out())
        .contains("ws2812b", "sk6812-rgb", "sk6812-rgbw", "published: WS2812B datasheet")
        .containsPattern("order +GRBW")
        .containsPattern("inputHighShare +0.7")
        .containsPattern("t0hNs +300 +estimate after SK6812RGBW datasheet")
        .containsPattern("idleMilliamps +1.0 +estimate: about 1 mA per package")
        .doesNotContain("memory");
  }

  @Test
  void pixelsListsThoseWithAWordInTheirId() {
    Run run = Run.of("pixels", "SK6812-RGB");
    assertThat(run.code()).isZero();
    assertThat(run.out().lines().filter(line -> !line.startsWith(" ")))
        .containsExactly("sk6812-rgb", "sk6812-rgbw");
  }

  @Test
  void pixelsWithAnUnknownWordNamesThoseThatAre() {
    Run run = Run.of("pixels", "apa\u001b[31m");
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("WORD: apa\\u001b[31m: must be one of ws2812b, ws2812b-2020,");
  }

  @Test
  void terminalCodesInAFileNameAreMadeHarmless() {
    Run run = Run.of("check", folder.resolve("a\u001b[31m.json"));
    assertThat(run.code()).isEqualTo(3);
    assertThat(run.err()).doesNotContain("\u001b").contains("\\u001b[31m");
  }

  @Test
  void hostileProjectNameLeavesTheCommentOfTheHeaderWhole() throws IOException {
    Path project =
        project(minimal("1").replace("\"rig\"", "\"name\": \"*/ #include \\\"x\\\" /*\", \"rig\""));
    assertThat(Run.of("export", project, "--to", folder).code()).isZero();
    String header = Files.readString(folder.resolve("s.h"));
    assertThat(header.split("\\*/", -1)).hasSameSizeAs(header.split("/\\*", -1));
  }

  @Test
  void outputIsTheSameUnderEveryLocale() throws IOException {
    Path project = project(minimal("0.25"));
    Locale before = Locale.getDefault();
    try {
      for (String tag : new String[] {"en-US", "tr-TR", "de-DE", "ar-EG-u-nu-arab"}) {
        Locale.setDefault(Locale.forLanguageTag(tag));
        Path to = folder.resolve(tag);
        assertThat(Run.of("export", project, "--to", to, "--as", "c,hex,csv").code()).isZero();
        for (String name : new String[] {"s.h", "s.c", "s.hex", "s.csv"}) {
          assertThat(to.resolve(name))
              .hasSameTextualContentAs(
                  folder.resolve("en-US").resolve(name), StandardCharsets.UTF_8);
        }
        assertThat(Run.of("pixels").out()).containsPattern("order +GRB").contains("0.3");
      }
    } finally {
      Locale.setDefault(before);
    }
  }
}
