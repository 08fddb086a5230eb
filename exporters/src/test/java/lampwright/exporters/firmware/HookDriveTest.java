package lampwright.exporters.firmware;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.Rig;
import lampwright.engine.situation.Drive;
import lampwright.exporters.OutsideTools;
import lampwright.exporters.Progress;
import lampwright.exporters.packed.play.RandomShow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Situations on a controller without a driver of ours: the folder's own example with its worked
 * functions runs on this machine, pulses and levels are on its pins, and what it sends is what the
 * engine makes of the drive.
 */
class HookDriveTest {
  private static final Path WIRE = Path.of("src/test/wire").toAbsolutePath();
  private static final List<String> STRICT =
      List.of("-Wall", "-Wextra", "-Wpedantic", "-Werror", "-Isrc", "-g");
  private static final List<String> SANE =
      List.of("-fsanitize=address,undefined", "-fno-sanitize-recover=all");

  private final OutsideTools tools = OutsideTools.onThisMachine();

  @TempDir Path folder;

  /** At most 60 frames/s: a frame is up to 64 us late there, less than what edges keep from it. */
  private static RandomShow show(long seed) {
    RandomShow made = new RandomShow(seed);
    return made.framesPerSecond().intValue() <= 60 ? made : show(seed + 1000);
  }

  /** Pulses begin after the first frame, as the inputs are ready only then. */
  private static Drive late(Drive drive) {
    return new Drive(drive.rows().stream().filter(row -> row.ms().intValue() > 6).toList());
  }

  @ParameterizedTest
  @ValueSource(longs = {0, 1, 2, 3, 4, 5, 6, 7})
  void workedExampleGivesTheFramesOfTheEngine(long seed) throws Exception {
    RandomShow made = show(seed);
    int fps = Math.max(1, made.framesPerSecond().intValue());
    Drive drive = late(made.drive(Math.max(2000, 20_000 / fps)));
    DrivenShow driven = DrivenShow.of(made.project(seed % 2 == 0 ? "other" : "esp32"), drive);
    assertThat(sent(driven, "")).isEqualTo(wanted(driven));
  }

  /** A fault in the example or in what calls it is seen. */
  @Test
  void exampleThatMeasuresWronglyIsFound() throws Exception {
    Project onRp2040 = DrivenShow.plain("", "50", folder);
    Rig rig = Rig.CONTROLLER.with(onRp2040.rig(), Controller.find("other"));
    List<Drive.Row> rows = new ArrayList<>();
    for (int i = 1; i < 30; i++) {
      rows.add(new Drive.Row(BigDecimal.valueOf(20L * i), 0, i % 4 < 2 ? 1501 : 1499));
      rows.add(new Drive.Row(BigDecimal.valueOf(20L * i + 5), 1, i % 6 < 3 ? 1 : 0));
    }
    DrivenShow driven = DrivenShow.of(Project.RIG.with(onRp2040, rig), new Drive(rows));
    assertThat(sent(driven, "")).isEqualTo(wanted(driven));
    assertThat(sent(driven, "(uint16_t)(now - rose[input])")).isNotEqualTo(wanted(driven));
    assertThat(sent(driven, "== HIGH; }")).isNotEqualTo(wanted(driven));
  }

  private static List<Integer> wanted(DrivenShow driven) {
    List<Integer> all = new ArrayList<>();
    for (byte each : driven.frames()) {
      all.add(each & 0xFF);
    }
    return all;
  }

  /** Of frames whose last one the drive ends in. */
  private List<Integer> sent(DrivenShow driven, String broken) throws Exception {
    new FirmwareExporter().export(driven.job(), this::open, Progress.SILENT);
    DriveSignal signal = driven.signal();
    String edges =
        signal.edges().stream()
            .map(e -> e.ns() / 1000 + " " + e.pin().number() + " " + (e.level() ? 1 : 0))
            .collect(Collectors.joining("\n"));
    Files.writeString(folder.resolve("edges"), edges);
    build(broken);
    int frames = driven.drive().frames(driven.show().clock()).orElseThrow();
    double us = 1e6 * frames / driven.show().clock().framesPerSecond().doubleValue();
    byte[] out =
        new OutsideTools.Tool(folder.resolve("sketch"))
            .run(folder, "edges", Long.toString((long) us + 1000))
            .quietOut();
    List<Integer> all =
        new String(out, StandardCharsets.US_ASCII).lines().map(Integer::valueOf).toList();
    assertThat(all).hasSizeGreaterThanOrEqualTo(driven.frames().length);
    return all.subList(0, driven.frames().length);
  }

  private void build(String broken) throws Exception {
    List<String> objects = new ArrayList<>();
    try (Stream<Path> all = Files.list(folder.resolve("src"))) {
      for (Path source : all.filter(file -> file.toString().endsWith(".c")).toList()) {
        String object = source.getFileName() + ".o";
        List<String> words = new ArrayList<>(List.of("-std=gnu99", "-DARDUINO=10819", "-I" + WIRE));
        words.addAll(STRICT);
        words.addAll(SANE);
        words.addAll(List.of("-c", source.toString(), "-o", object));
        tools.find("gcc", "gcc").run(folder, words.toArray(String[]::new)).quietOut();
        objects.add(object);
      }
    }
    Path sketch = folder.resolve("examples/React");
    String text =
        Files.readString(sketch.resolve("React.ino"))
            + Files.readString(sketch.resolve("driver.ino"));
    if (!broken.isEmpty()) {
      assertThat(text).contains(broken);
      text = text.replace(broken, broken.startsWith("==") ? "== LOW; }" : broken + " * 7 / 8");
    }
    Files.writeString(
        folder.resolve("React.cpp"), "#include <Arduino.h>\nvoid driver_begin();\n" + text);
    List<String> words = new ArrayList<>(List.of("-std=gnu++11", "-DARDUINO=10819", "-I" + WIRE));
    words.addAll(List.of("-DLAMPWRIGHT_DRIVER=BY_ROUTINE"));
    words.addAll(STRICT);
    words.addAll(SANE);
    words.addAll(List.of("React.cpp", WIRE.resolve("host_drive_core.cpp").toString()));
    words.addAll(objects);
    words.addAll(List.of("-o", "sketch"));
    tools.find("g++", "g++").run(folder, words.toArray(String[]::new)).quietOut();
  }

  /** Situations that look at no input ask for none of the functions. */
  @Test
  void situationsWithoutInputsNeedNoFunctionsForThem() throws Exception {
    Project project =
        DrivenShow.onRp2040(
            """
            {"lampwright": 1, "rig": {"chains": [{"id": "c", "pixelType": "ws2812b", "pixels": 2}],
             "lamps": [{"id": "a", "pixels": [{"chain": "c", "from": 0, "count": 2}]}]},
             "scenes": [{"id": "on", "lengthMs": 2000, "tracks": [
              {"lamps": ["a"], "cues": [{"lengthMs": 2000, "pattern": {"kind": "steady"}}]}]}],
             "situations": [{"id": "always", "scene": "on"}]}
            """,
            folder);
    Project other = Project.RIG.with(project, FirmwareJobs.with(project.rig(), "other"));
    new FirmwareExporter()
        .export(
            lampwright.exporters.ProjectJob.of(other, other.scenes()), this::open, Progress.SILENT);
    assertThat(Files.readString(folder.resolve("examples/React/driver.ino")))
        .doesNotContain("lampwright_servo_width");
    Files.writeString(folder.resolve("edges"), "");
    build("");
    byte[] out =
        new OutsideTools.Tool(folder.resolve("sketch")).run(folder, "edges", "50000").quietOut();
    assertThat(new String(out, StandardCharsets.US_ASCII).lines().distinct()).hasSize(1);
  }

  /** As a program of the builder's own: plain C99, and C++. */
  @ParameterizedTest
  @ValueSource(strings = {"gcc -std=c99", "g++ -std=c++11 -x c++"})
  void sourcesCompileInBothLanguages(String compiler) throws Exception {
    new FirmwareExporter().export(show(3).job("stm32"), this::open, Progress.SILENT);
    List<String> command = Arrays.asList(compiler.split(" ", -1));
    List<String> words = new ArrayList<>(command.subList(1, command.size()));
    words.addAll(STRICT);
    words.add("-c");
    try (Stream<Path> all = Files.list(folder.resolve("src"))) {
      all.map(Path::toString).filter(name -> name.endsWith(".c")).forEach(words::add);
    }
    tools.find(command.get(0), command.get(0)).run(folder, words.toArray(String[]::new)).quietOut();
  }

  private OutputStream open(String name) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.resolveSibling(""));
    return Files.newOutputStream(file);
  }
}
