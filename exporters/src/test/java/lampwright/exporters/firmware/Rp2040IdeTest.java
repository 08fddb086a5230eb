package lampwright.exporters.firmware;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import lampwright.engine.rig.Rig;
import lampwright.engine.time.Ratio;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportOptions;
import lampwright.exporters.OutsideTools;
import lampwright.exporters.Progress;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.TestJobs;
import lampwright.exporters.packed.play.RandomShow;
import lampwright.exporters.proof.ProofReport;
import lampwright.exporters.proof.Rp2040Proof;
import lampwright.exporters.target.PinPlan;
import lampwright.exporters.target.Target;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The folder as a hobby IDE compiles it for an RP2040: as C and C++ with the core's header before
 * an example, and proved on our model. No Debian package has such a core, so a stand-in of ours
 * takes its place ({@code src/test/wire}): this holds our side of it, not the IDE's.
 */
class Rp2040IdeTest {
  private static final Path WIRE = Path.of("src/test/wire").toAbsolutePath();
  private static final List<String> BOARD =
      List.of(
          "-mcpu=cortex-m0plus",
          "-mthumb",
          "-Os",
          "-ffreestanding",
          "-ffunction-sections",
          "-fdata-sections",
          "-Wall",
          "-Wextra",
          "-Werror",
          "-DARDUINO=10819",
          "-DARDUINO_ARCH_RP2040");

  private final OutsideTools tools = OutsideTools.onThisMachine();

  @TempDir Path folder;
  private OutsideTools.Tool compiler;
  private ProjectJob job;

  @BeforeEach
  void export() throws Exception {
    compiler =
        tools.findCompiler(
            "arm-none-eabi-gcc", "gcc-arm-none-eabi", "string.h", "libnewlib-arm-none-eabi");
    job =
        FirmwareJobs.on("rp2040")
            .chain("ws2812b", 3)
            .chain("sk6812-rgbw", 2)
            .output()
            .rate("200")
            .frames(3)
            .job();
    new FirmwareExporter().export(job, this::open, Progress.SILENT);
  }

  private OutputStream open(String name) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.resolveSibling(""));
    return Files.newOutputStream(file);
  }

  @Test
  void examplesLinkAndOneIsProvedWithAStandInForTheCore() throws Exception {
    List<String> library = library();
    assertThat(link("OwnLoop", library)).isNotEmptyFile();
    Path elf = link("PlayScene", library);
    ExportJob alone = ExportJob.of(job.project(), job.scenes().get(0), ExportOptions.DEFAULT);
    Rig rig = job.project().rig();
    PinPlan plan = Target.of(rig).pins(rig);
    List<Integer> gpios =
        Stream.concat(plan.chains().stream(), plan.outputs().stream())
            .map(pin -> pin.orElseThrow().number())
            .toList();
    ProofReport report =
        new Rp2040Proof(rig, gpios, TestJobs.table(alone), Ratio.of(200), true).run(uf2(elf));
    assertThat(report.faults()).isEmpty();
    assertThat(report.passed()).isTrue();
    assertThat(report.figures())
        .containsEntry("/bitsWrong", "0")
        .containsEntry("/dutiesWrong", "0");
  }

  /** The example that reacts, and the folder's own loop without an IDE: driven on our model. */
  @Test
  void foldersThatReactGiveTheFramesOfTheEngine() throws Exception {
    // One whose frames are long enough to measure the pulses of its outputs.
    RandomShow made =
        LongStream.range(0, 100)
            .mapToObj(RandomShow::new)
            .filter(show -> show.framesPerSecond().intValue() == 50)
            .findFirst()
            .orElseThrow();
    DrivenShow driven = DrivenShow.of(made.project("rp2040"), made.drive(1500));
    new FirmwareExporter().export(driven.job(), this::open, Progress.SILENT);
    assertProved(driven, uf2(link("React", library())));
    tools.find("make", "make").run(folder, "-s", "HOST_CC=gcc").out();
    assertProved(driven, Files.readAllBytes(folder.resolve("show.uf2")));
  }

  private static void assertProved(DrivenShow driven, byte[] uf2) throws Exception {
    Rig rig = driven.job().project().rig();
    PinPlan plan = Target.of(rig).pins(rig);
    List<Integer> gpios =
        Stream.concat(plan.chains().stream(), plan.outputs().stream())
            .map(pin -> pin.orElseThrow().number())
            .toList();
    Ratio rate = Ratio.of(driven.show().clock().framesPerSecond());
    ProofReport report =
        new Rp2040Proof(rig, gpios, driven.frames(), rate, false)
            .drive(driven.signal().edges())
            .run(uf2);
    assertThat(report.faults()).isEmpty();
    assertThat(report.passed()).isTrue();
  }

  /** The times of the data lines depend on it. */
  @Test
  void otherSpeedOfTheCoreIsRefusedByTheCompiler() {
    OutsideTools.Result result =
        compiler.run(
            folder, words("src/lampwright_wire.c", "wire.o", "133000000L").toArray(String[]::new));
    assertThat(result.exit()).isNotZero();
    assertThat(result.errors()).contains("made for 125 MHz: select that CPU speed");
  }

  private List<String> words(String source, String object, String hertz) {
    List<String> words = new ArrayList<>(BOARD);
    words.addAll(
        source.endsWith(".cpp")
            ? List.of("-std=gnu++17", "-fno-exceptions", "-fno-rtti", "-fno-threadsafe-statics")
            : List.of("-std=gnu17"));
    words.addAll(List.of("-DF_CPU=" + hertz, "-Isrc", "-I" + WIRE));
    words.addAll(List.of("-c", source, "-o", object));
    return words;
  }

  /** The folder's own sources, and what takes the place of the core. */
  private List<String> library() throws IOException {
    List<String> objects = new ArrayList<>();
    objects.add(compile("lampwright_start.c"));
    objects.add(compile(WIRE.resolve("rp2040_core.cpp").toString()));
    try (Stream<Path> all = Files.list(folder.resolve("src"))) {
      for (Path file : all.filter(f -> f.toString().endsWith(".c")).toList()) {
        objects.add(compile("src/" + file.getFileName()));
      }
    }
    return objects;
  }

  private String compile(String source) {
    String object = Path.of(source).getFileName() + ".o";
    compiler.run(folder, words(source, object, "125000000L").toArray(String[]::new)).quietOut();
    return object;
  }

  private Path link(String example, List<String> library) throws IOException {
    Path sketch = folder.resolve(example + ".cpp");
    Path ino = folder.resolve("examples").resolve(example).resolve(example + ".ino");
    Files.writeString(sketch, "#include <Arduino.h>\n" + Files.readString(ino));
    List<String> words =
        new ArrayList<>(
            List.of("-mcpu=cortex-m0plus", "-mthumb", "-nostdlib", "-Wl,--gc-sections"));
    words.addAll(List.of("-T", "show.ld", compile(sketch.toString())));
    words.addAll(library);
    words.addAll(List.of("-lgcc", "-o", example + ".elf"));
    compiler.run(folder, words.toArray(String[]::new)).quietOut();
    return folder.resolve(example + ".elf");
  }

  /** Our second boot stage, and this program behind it. */
  private byte[] uf2(Path elf) throws Exception {
    tools
        .find("arm-none-eabi-objcopy", "binutils-arm-none-eabi")
        .run(folder, "-O", "binary", "-j", ".program", elf.toString(), "program.bin")
        .quietOut();
    byte[] image =
        Uf2Program.image(Uf2Image.program(), Files.readAllBytes(folder.resolve("program.bin")));
    byte[] flash = new byte[(image.length + Uf2File.SECTOR - 1) / Uf2File.SECTOR * Uf2File.SECTOR];
    Arrays.fill(flash, (byte) 0xFF);
    System.arraycopy(image, 0, flash, 0, image.length);
    ByteArrayOutputStream file = new ByteArrayOutputStream();
    Uf2File.write(flash, file);
    return file.toByteArray();
  }
}
