package lampwright.exporters.firmware;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportOptions;
import lampwright.exporters.OutsideTools;
import lampwright.exporters.Progress;
import lampwright.exporters.ProjectJob;
import lampwright.exporters.TestJobs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Firmware for a controller without a driver of ours, on this machine. */
class HookTest {
  private static final Path WIRE = Path.of("src/test/wire").toAbsolutePath();
  private static final List<String> STRICT =
      List.of("-Wall", "-Wextra", "-Wpedantic", "-Werror", "-Isrc");

  private final OutsideTools tools = OutsideTools.onThisMachine();

  @TempDir Path folder;

  /** The show's whole interface, under gcc's sanitizers. */
  @ParameterizedTest
  @CsvSource({"gcc, -std=c99", "g++, -std=c++11"})
  void showHandsOutTheFramesAndDoesAsItIsTold(String command, String standard) throws Exception {
    Rig rig =
        FirmwareJobs.with(
            Rig.of(
                List.of(TestJobs.rgbw("roof", 3), TestJobs.rgb("deck", 2)),
                List.of(DriverOutput.of("stern")),
                List.of(
                    TestJobs.lamp("side", TestJobs.run("roof", 0, 1), TestJobs.run("deck", 0, 2)),
                    TestJobs.lamp("top", TestJobs.run("roof", 1, 2)),
                    Lamp.ofOutput("tail", "stern"))),
            "other");
    Scene walk = TestJobs.scene("walk", 500, 50, true, TestJobs.walk(20, "side", "top", "tail"));
    Scene once =
        TestJobs.scene(
            "once",
            500,
            50,
            false,
            List.of(TestJobs.track(TestJobs.cycle(400, 0.3), 500, "side", "top", "tail")));
    Project project = Project.of("Hook", rig, walk, once);
    ProjectJob job = ProjectJob.of(project, project.scenes());
    export(job);
    ByteArrayOutputStream tables = new ByteArrayOutputStream();
    for (Scene scene : project.scenes()) {
      tables.write(TestJobs.table(ExportJob.of(project, scene, ExportOptions.DEFAULT)));
    }
    Files.write(folder.resolve("tables.bin"), tables.toByteArray());
    List<String> words = new ArrayList<>();
    if (command.equals("g++")) {
      words.addAll(List.of("-x", "c++"));
    }
    words.addAll(List.of(standard, "-O1", "-g", "-fsanitize=address,undefined"));
    words.add("-fno-sanitize-recover=all");
    words.addAll(STRICT);
    words.add(WIRE.resolve("hook_test.c").toString());
    words.addAll(sources());
    words.addAll(List.of("-o", "hook"));
    tools.find(command, command).run(folder, words.toArray(String[]::new)).quietOut();
    OutsideTools.Result result =
        new OutsideTools.Tool(folder.resolve("hook")).run(folder, "tables.bin");
    assertThat(new String(result.out(), StandardCharsets.UTF_8))
        .as(result.errors())
        .isEqualTo("0 faults\n");
    assertThat(result.exit()).isZero();
  }

  /**
   * On a core that keeps constants in flash where only its own function can read them, as that of
   * the ESP8266 does: a stand-in of its header, whose function reads bytes that are stored changed.
   */
  @Test
  void coreThatReadsItsFlashByAFunctionIsServed() throws Exception {
    export(FirmwareJobs.on("other").chain("ws2812b", 3).frames(6).job());
    List<String> plain = run("PlayScene", 130_000);
    Path scenes = folder.resolve("src/lampwright_scenes.c");
    Files.writeString(
        scenes,
        java.util.regex.Pattern.compile(
                "(?<=^    |, )[0-9]{1,3}(?=,)", java.util.regex.Pattern.MULTILINE)
            .matcher(Files.readString(scenes))
            .replaceAll(byteText -> "" + (Integer.parseInt(byteText.group()) ^ 0xA5)));
    core = "-DESP8266";
    assertThat(run("PlayScene", 130_000)).isEqualTo(plain);
  }

  /** Every family's folder compiles with the pins and clocks that its boards have. */
  @ParameterizedTest
  @CsvSource({
    "esp32, GPIO18, 19, BY_ROUTINE, 80000000",
    "stm32, PA15, PB3, BY_SPI, 48000000",
    "samd21, 5, PA17, BY_SPI, 24000000"
  })
  void exampleOfAFamilySendsTheFrames(
      String family, String chainPin, String outputPin, String driver, int hertz) throws Exception {
    ProjectJob job =
        FirmwareJobs.on(family).chain("sk6812-rgbw", 2, chainPin).output(outputPin).frames(4).job();
    export(job);
    selected = driver;
    // Constants of the STM32's core for these pins.
    core = "-DPA15=15 -DPB3=19 -DPB0=16 -DSPI_SOURCE=" + hertz;
    List<String> lines = run("OwnLoop", 90_000);
    String sends = driver.equals("BY_ROUTINE") ? "bytes 18 " : "line ";
    assertThat(lines.stream().filter(line -> line.startsWith(sends)).distinct().count())
        .isGreaterThan(2);
    String pwm = family.equals("samd21") ? "pwm 2 " : "pwm 19 ";
    assertThat(lines).anyMatch(line -> line.startsWith(pwm));
    if (driver.equals("BY_SPI")) {
      assertBits(job, lines);
    }
  }

  private static void assertBits(ProjectJob job, List<String> lines) throws Exception {
    byte[] table =
        TestJobs.table(ExportJob.of(job.project(), job.scenes().get(0), ExportOptions.DEFAULT));
    double[] limits = LIMITS.get("sk6812-rgbw");
    List<String> sent = lines.stream().filter(line -> line.startsWith("line ")).toList();
    for (int frame = 0; frame < 4; frame++) {
      String[] times = sent.get(frame).substring(5).split(" ", -1);
      assertThat(times).hasSize(2 * 64);
      for (int bit = 0; bit < 64; bit++) {
        boolean one = (table[frame * 9 + bit / 8] >> (7 - bit % 8) & 1) == 1;
        int at = one ? 4 : 0;
        assertThat(Double.parseDouble(times[2 * bit])).isBetween(limits[at], limits[at + 1]);
        assertThat(Double.parseDouble(times[2 * bit + 1]))
            .isBetween(limits[at + 2], limits[at + 3]);
      }
    }
  }

  /**
   * Limits in ns of T0H, T0L, T1H, T1L: WS2812B datasheet; SK6812RGBW datasheet (from memory);
   * WS2812B-2020 datasheet (from memory).
   */
  private static final Map<String, double[]> LIMITS =
      Map.of(
          "ws2812b", new double[] {250, 550, 700, 1000, 650, 950, 300, 600},
          "sk6812-rgbw", new double[] {150, 450, 750, 1050, 450, 750, 450, 750},
          "ws2812b-2020", new double[] {220, 380, 580, 1000, 580, 1000, 220, 420});

  @ParameterizedTest
  @CsvSource({
    "BY_SPI, ws2812b, PlayScene",
    "BY_SPI, sk6812-rgbw, OwnLoop",
    "BY_SPI, ws2812b-2020, PlayScene",
    "BY_PINS, ws2812b, PlayScene",
    "BY_PINS, sk6812-rgbw, PlayScene"
  })
  void workedExampleSendsEveryBitWithinTheLimits(String driver, String type, String example)
      throws Exception {
    ProjectJob job = FirmwareJobs.on("other").chain(type, 3).output().frames(6).job();
    export(job);
    selected = driver;
    List<String> lines = run(example, 130_000);
    byte[] table =
        TestJobs.table(ExportJob.of(job.project(), job.scenes().get(0), ExportOptions.DEFAULT));
    Chain chain = job.project().rig().chains().get(0);
    int frameBytes = chain.bytes() + 1;
    List<String> sent = lines.stream().filter(line -> line.startsWith("line ")).toList();
    List<String> duties = lines.stream().filter(line -> line.startsWith("pwm ")).toList();
    assertThat(sent).hasSizeGreaterThanOrEqualTo(6);
    for (int frame = 0; frame < 6; frame++) {
      double[] times =
          Arrays.stream(sent.get(frame).substring(5).split(" ", -1))
              .mapToDouble(Double::parseDouble)
              .toArray();
      assertThat(times).hasSize(2 * 8 * chain.bytes());
      for (int bit = 0; bit < 8 * chain.bytes(); bit++) {
        boolean one = (table[frame * frameBytes + bit / 8] >> (7 - bit % 8) & 1) == 1;
        double[] limits = LIMITS.get(type);
        int at = one ? 4 : 0;
        assertThat(times[2 * bit]).isBetween(limits[at], limits[at + 1]);
        assertThat(times[2 * bit + 1]).isBetween(limits[at + 2], limits[at + 3]);
      }
      assertThat(duties.get(frame))
          .endsWith(" " + (table[frame * frameBytes + frameBytes - 1] & 0xFF));
    }
    assertThat(lines).anyMatch(line -> line.startsWith("reset "));
  }

  /** 3.2 MHz and four bits a bit: 312.5 and 625 ns, within SK6812's limits; half the memory. */
  @Test
  void spiOfThreePointTwoMegahertzIsUsedWhereItKeepsTheTimes() throws Exception {
    export(FirmwareJobs.on("other").chain("sk6812-rgbw", 3).frames(6).job());
    assertThat(Files.readString(folder.resolve("examples/PlayScene/driver.ino")))
        .contains("{3200000UL, 4, 0x08, 0x0C}, /* c0: sk6812-rgbw */");
  }

  /**
   * The second chain's bits are not those of the first's line: they are sent where one is named.
   */
  @Test
  void chainWithoutAnSpiOfItsOwnIsNotSent() throws Exception {
    export(FirmwareJobs.on("other").chain("ws2812b", 2).chain("ws2812b", 5).frames(6).job());
    assertThat(bitsOnTheLine()).containsOnly(2 * 24);
    Path driver = folder.resolve("examples/PlayScene/driver.ino");
    Files.writeString(driver, Files.readString(driver).replace("{&SPI};", "{&SPI, &SPI1};"));
    assertThat(bitsOnTheLine()).containsOnly(2 * 24, 5 * 24);
  }

  private List<Integer> bitsOnTheLine() throws Exception {
    return run("PlayScene", 130_000).stream()
        .filter(line -> line.startsWith("line "))
        .map(line -> (line.split(" ", -1).length - 1) / 2)
        .toList();
  }

  @Test
  void routineOfTheBoardGetsTheBytesOfTheFrameTable() throws Exception {
    ProjectJob job = FirmwareJobs.on("other").chain("ws2812b", 3, "GP7").frames(6).job();
    export(job);
    selected = "BY_ROUTINE";
    List<String> sent =
        run("PlayScene", 130_000).stream().filter(line -> line.startsWith("bytes ")).toList();
    byte[] table =
        TestJobs.table(ExportJob.of(job.project(), job.scenes().get(0), ExportOptions.DEFAULT));
    assertThat(sent).hasSizeGreaterThanOrEqualTo(6);
    for (int frame = 0; frame < 6; frame++) {
      StringBuilder words = new StringBuilder("bytes 7");
      for (int i = 0; i < 9; i++) {
        words.append(' ').append(table[9 * frame + i] & 0xFF);
      }
      assertThat(sent.get(frame)).isEqualTo(words.toString());
    }
  }

  @Test
  void closedSwitchOfTheExampleMakesTheLightStandStill() throws Exception {
    export(FirmwareJobs.on("other").chain("ws2812b", 3).frames(6).job());
    List<String> open = run("OwnLoop", 130_000);
    List<String> closed = run("OwnLoop", 130_000, "closed");
    assertThat(open.stream().filter(line -> line.startsWith("line ")).distinct().count())
        .isGreaterThan(3);
    assertThat(closed.stream().filter(line -> line.startsWith("line ")).distinct()).hasSize(1);
  }

  /** The worked example that is compiled. */
  private String selected = "BY_SPI";

  /** What the core defines. */
  private String core = "-DSTAND_IN";

  /** An IDE joins the files of a sketch and puts its core's header before them. */
  private List<String> run(String example, int microseconds, String... more) throws Exception {
    Path sketch = folder.resolve("examples").resolve(example);
    Path joined = folder.resolve(example + ".cpp");
    Files.writeString(
        joined,
        "#include <Arduino.h>\nvoid driver_begin();\n"
            + Files.readString(sketch.resolve(example + ".ino"))
            + Files.readString(sketch.resolve("driver.ino")));
    List<String> objects = new ArrayList<>();
    for (String source : sources()) {
      String object = folder.resolve(Path.of(source).getFileName() + ".o").toString();
      List<String> words = new ArrayList<>(List.of("-std=gnu99", "-DARDUINO=10819", "-I" + WIRE));
      words.addAll(STRICT);
      words.addAll(List.of(core.split(" ", -1)));
      words.addAll(List.of("-c", source, "-o", object));
      tools.find("gcc", "gcc").run(folder, words.toArray(String[]::new)).quietOut();
      objects.add(object);
    }
    List<String> words = new ArrayList<>(List.of("-std=gnu++11", "-DARDUINO=10819", "-I" + WIRE));
    words.addAll(List.of("-DLAMPWRIGHT_DRIVER=" + selected, "-DF_CPU=125000000UL"));
    words.addAll(STRICT);
    words.addAll(List.of(core.split(" ", -1)));
    words.addAll(List.of(joined.toString(), WIRE.resolve("host_core.cpp").toString()));
    words.addAll(objects);
    words.addAll(List.of("-o", "sketch"));
    tools.find("g++", "g++").run(folder, words.toArray(String[]::new)).quietOut();
    String[] arguments =
        Stream.concat(Stream.of(Integer.toString(microseconds)), Stream.of(more))
            .toArray(String[]::new);
    byte[] out = new OutsideTools.Tool(folder.resolve("sketch")).run(folder, arguments).quietOut();
    return new String(out, StandardCharsets.UTF_8).lines().toList();
  }

  private List<String> sources() throws IOException {
    try (Stream<Path> all = Files.list(folder.resolve("src"))) {
      return all.map(file -> "src/" + file.getFileName()).filter(n -> n.endsWith(".c")).toList();
    }
  }

  private void export(ProjectJob job) throws Exception {
    new FirmwareExporter().export(job, this::open, Progress.SILENT);
  }

  private OutputStream open(String name) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.resolveSibling(""));
    return Files.newOutputStream(file);
  }
}
