package lampwright.app.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Properties;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectFiles;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;
import lampwright.exporters.OutsideTools;
import lampwright.exporters.firmware.FirmwareProof;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The exported folder as a hobby IDE reads it: compiled beside the core sources of Debian's package
 * arduino-core-avr, with the flags of its platform.txt, and proved on the simulator while the
 * core's own interrupts run.
 */
class IdeLayoutTest {
  private static final Path CORE = Path.of("/usr/share/arduino/hardware/arduino/avr");
  private static final String SCENE = "towed-backwards";

  /** Longest low time between bits, in us: an interrupt of the core's, and the driver's own. */
  private static final String GAP_US = "12";

  // compiler.c.flags and so on in platform.txt.
  private static final String SECTIONS = "-c -Os -ffunction-sections -fdata-sections -flto";
  private static final String C_FLAGS = SECTIONS + " -std=gnu11 -fno-fat-lto-objects";
  private static final String CPP_FLAGS =
      SECTIONS + " -std=gnu++11 -fpermissive -fno-exceptions -fno-threadsafe-statics";
  private static final String ASSEMBLER_FLAGS = "-c -x assembler-with-cpp -flto";
  private static final String STRICT = " -Wall -Wextra -Werror";

  // The core's warnings are none of ours; avr-libc's <float.h> hides this macro of C99 from C++.
  private static final String CORE_FLAGS = " -w -DDECIMAL_DIG=__DECIMAL_DIG__";

  private OutsideTools.Tool c;
  private OutsideTools.Tool cpp;
  private List<String> board;

  @TempDir Path folder;

  @BeforeEach
  void lookForTools() {
    OutsideTools tools = OutsideTools.onThisMachine();
    tools.findCompiler("gcc", "gcc", "simavr/sim_avr.h", "libsimavr-dev");
    c = tools.findCompiler("avr-gcc", "gcc-avr", "avr/pgmspace.h", "avr-libc");
    cpp = tools.find("avr-g++", "gcc-avr");
    tools.findFile(CORE.resolve("cores/arduino/Arduino.h"), "arduino-core-avr");
  }

  /** The fields that the library specification of such IDEs asks for (from memory). */
  @Test
  void folderIsALibraryWithExamples() throws IOException {
    Path library = export("atmega328p");
    Properties stated = new Properties();
    try (var in = Files.newBufferedReader(library.resolve("library.properties"))) {
      stated.load(in);
    }
    assertThat(stated.stringPropertyNames())
        .contains("name", "version", "author", "maintainer", "sentence", "paragraph", "category")
        .contains("url", "architectures");
    assertThat(stated.getProperty("version")).matches("\\d+\\.\\d+\\.\\d+");
    assertThat(stated.getProperty("name")).matches("[A-Za-z0-9][A-Za-z0-9 _.-]{0,62}");
    for (String header : stated.getProperty("includes").split(",", -1)) {
      assertThat(library.resolve("src").resolve(header)).isRegularFile();
    }
    try (Stream<Path> examples = Files.list(library.resolve("examples"))) {
      assertThat(examples)
          .hasSize(2)
          .allSatisfy(place -> assertThat(place.resolve(place.getFileName() + ".ino")).exists());
    }
  }

  @ParameterizedTest
  @CsvSource({"atmega328p, standard, ''", "atmega32u4, leonardo, '-DUSB_VID=1 -DUSB_PID=1'"})
  void everyExampleCompilesAndTheFirstIsProved(String controller, String variant, String more)
      throws Exception {
    Path library = export(controller);
    board = board(controller, variant, more);
    List<String> objects = new ArrayList<>(compileAll(CORE.resolve("cores/arduino"), CORE_FLAGS));
    objects.addAll(compileAll(library.resolve("src"), STRICT + " -DLAMPWRIGHT_PROBE"));
    Path show = link(library, "PlayScene", objects);
    link(library, "OwnLoop", objects);
    assertProved(controller, show);
  }

  private List<String> board(String controller, String variant, String more) {
    List<String> flags =
        new ArrayList<>(List.of("-mmcu=" + controller, "-DF_CPU=16000000L", "-DARDUINO=10819"));
    flags.addAll(List.of("-DARDUINO_ARCH_AVR", "-I" + CORE.resolve("cores/arduino")));
    flags.addAll(List.of("-I" + CORE.resolve("variants").resolve(variant), "-I" + library("src")));
    if (!more.isEmpty()) {
      flags.addAll(List.of("-DUSB_MANUFACTURER=\"x\"", "-DUSB_PRODUCT=\"x\""));
      flags.addAll(Arrays.asList(more.split(" ", -1)));
    }
    return flags;
  }

  /** What reacts: the example that reads a receiver is compiled and linked like the others. */
  @Test
  void exampleThatReactsCompiles() throws Exception {
    Path project =
        Files.writeString(
            folder.resolve("p.lampwright.json"),
            """
            {"lampwright": 1,
             "rig": {"controller": "atmega328p",
               "chains": [{"id": "c", "pixelType": "ws2812b", "pixels": 3}],
               "outputs": [{"id": "o"}],
               "lamps": [{"id": "l", "pixels": [{"chain": "c"}]}, {"id": "m", "output": "o"}],
               "inputs": [{"id": "throttle", "kind": "servo-pulse", "pin": "PD2"},
                          {"id": "tow-bar", "kind": "switch", "pin": "PC0", "activeLow": true}]},
             "scenes": [{"id": "s", "lengthMs": 1000, "framesPerSecond": 50, "tracks": [
               {"lamps": ["l"], "cues": [{"lengthMs": 1000, "pattern": {"kind": "chase"}}]}]}],
             "situations": [{"id": "a", "scene": "s", "any": [{"input": "throttle", "lost": true},
               {"input": "throttle", "aboveUs": 1600}, {"input": "tow-bar", "is": "on"}]}]}
            """);
    Run run = Run.of("export", project, "--to", folder, "--as", "firmware");
    assertThat(run.err()).doesNotContain(": error: ");
    assertThat(run.code()).isZero();
    board = board("atmega328p", "standard", "");
    List<String> objects = new ArrayList<>(compileAll(CORE.resolve("cores/arduino"), CORE_FLAGS));
    objects.addAll(compileAll(library("src"), STRICT));
    assertThat(link(library(""), "React", objects)).isNotEmptyFile();
  }

  // Without what reacts: with it the third output of the sample is on the timer of an IDE's clock.
  private Path export(String controller) throws IOException {
    Project sample = ProjectReader.read(Run.sample("recovery-tractor")).project().orElseThrow();
    Rig rig = Rig.INPUTS.with(sample.rig(), List.of());
    rig = Rig.CONTROLLER.with(rig, Controller.find(controller));
    Project plain = Project.SITUATIONS.with(sample, List.of());
    Path project = folder.resolve("p.lampwright.json");
    ProjectFiles.save(Project.RIG.with(plain, rig), project);
    Run run = Run.of("export", project, "--to", folder, "--scene", SCENE, "--as", "firmware,bin");
    assertThat(run.err()).doesNotContain(": error: ");
    assertThat(run.code()).isZero();
    return library("");
  }

  private Path library(String place) {
    return folder.resolve("firmware").resolve(place);
  }

  private List<String> compileAll(Path sources, String more) throws IOException {
    List<Path> files;
    try (Stream<Path> all = Files.list(sources)) {
      files = all.filter(f -> f.toString().matches(".*\\.(c|cpp|S)")).sorted().toList();
    }
    List<String> objects = new ArrayList<>();
    for (Path file : files) {
      objects.add(compile(file, more));
    }
    return objects;
  }

  private String compile(Path file, String more) {
    String object = folder.resolve(file.getFileName() + ".o").toString();
    String name = file.toString();
    if (name.endsWith(".cpp")) {
      run(cpp, CPP_FLAGS + more, file.toString(), "-o", object);
    } else {
      run(c, (name.endsWith(".S") ? ASSEMBLER_FLAGS : C_FLAGS) + more, name, "-o", object);
    }
    return object;
  }

  /** An IDE puts the core's header before an example and compiles it as C++. */
  private Path link(Path library, String example, List<String> objects) throws IOException {
    String text =
        Files.readString(library.resolve("examples").resolve(example).resolve(example + ".ino"));
    Path source = folder.resolve(example + ".cpp");
    Files.writeString(source, "#include <Arduino.h>\n" + text);
    List<String> words = new ArrayList<>(List.of(compile(source, STRICT)));
    words.addAll(objects);
    Path elf = folder.resolve(example + ".elf");
    words.addAll(List.of("-o", elf.toString(), "-lm"));
    run(c, "-Os -flto -fuse-linker-plugin -Wl,--gc-sections", words.toArray(String[]::new));
    return elf;
  }

  private void run(OutsideTools.Tool tool, String flags, String... more) {
    List<String> words = new ArrayList<>(Arrays.asList(flags.strip().split(" +", -1)));
    words.addAll(board);
    words.addAll(Arrays.asList(more));
    tool.run(folder, words.toArray(String[]::new)).quietOut();
  }

  private void assertProved(String controller, Path elf) throws Exception {
    Project project =
        ProjectReader.read(folder.resolve("p.lampwright.json")).project().orElseThrow();
    Scene scene =
        project.scenes().stream().filter(s -> s.id().equals(SCENE)).findFirst().orElseThrow();
    ProofBench bench = new ProofBench(folder);
    bench.prepare();
    List<String> words = new ArrayList<>(List.of("--elf", elf.toString(), "--table"));
    words.add(folder.resolve(SCENE + ".bin").toString());
    // The core's interrupts count time, so none of it is leapt over.
    new FirmwareProof(project.rig())
        .options(scene).stream()
            .filter(word -> !word.equals("--skip-idle"))
            .map(word -> Pattern.compile("^pin=.*").matcher(word).replaceFirst("$0,gap=" + GAP_US))
            .forEach(words::add);
    OutsideTools.Tool prover = new OutsideTools.Tool(folder.resolve("prover"));
    Proof proof =
        Proof.of(
            new String(
                prover.run(folder, words.toArray(String[]::new)).out(), StandardCharsets.UTF_8));
    assertThat(proof.faults()).as(controller).isEmpty();
    assertThat(proof.passed()).isTrue();
    assertThat(proof.figure("/framesWrong")).isEqualTo("0");
    assertThat(proof.figure("/bitsOutsideLimits")).isEqualTo("0");
  }
}
