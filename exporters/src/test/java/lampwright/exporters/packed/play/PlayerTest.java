package lampwright.exporters.packed.play;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import lampwright.engine.render.FrameCursor;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportJob;
import lampwright.exporters.OutsideTools;
import lampwright.exporters.Progress;
import lampwright.exporters.packed.Corpus;
import lampwright.exporters.packed.MixedProjects;
import lampwright.exporters.packed.MixedProjectsTest;
import lampwright.exporters.packed.PackedCorpus;
import lampwright.exporters.packed.encode.Packed;
import lampwright.exporters.packed.encode.ScenePacker;
import lampwright.exporters.target.Target;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The C player against the frame tables: on this machine under gcc's sanitizers, on an ATmega328P
 * and an ATtiny85 under simavr, on a Cortex-M3 under QEMU.
 */
class PlayerTest {
  private static final String C =
      "src/main/resources/lampwright/exporters/firmware/src/lampwright_player.c";
  private static final String AVR =
      "src/main/resources/lampwright/exporters/firmware/src/lampwright_player_avr.S";
  private static final List<String> STRICT =
      List.of(
          "-std=c99",
          "-Wall",
          "-Wextra",
          "-Wpedantic",
          "-Werror",
          "-Isrc/test/c",
          "-Isrc/main/resources/lampwright/exporters/firmware/src");
  private static final Pattern COUNTED =
      Pattern.compile(
          "(\\d+) frames, (\\d+) wrong, .* a byte ([\\d.]+) average ([\\d.]+) worst .*"
              + "stack (\\d+)\n");

  private static final Pattern SIZED = Pattern.compile("\\n *(\\d+)");

  @TempDir static Path dir;

  @BeforeAll
  static void compile() throws IOException, InterruptedException {
    OutsideTools tools = OutsideTools.onThisMachine();
    tools.findSimulator();
    tools.find("g++", "g++");
    tools.find("arm-none-eabi-gcc", "gcc-arm-none-eabi");
    tools.find("qemu-system-arm", "qemu-system-arm");
    List<String> host = new ArrayList<>(List.of("gcc"));
    host.addAll(STRICT);
    host.addAll(List.of("-O1", "-g", "-fsanitize=address,undefined"));
    host.addAll(List.of("-fno-sanitize-recover=all", "src/test/c/host_check.c", C));
    host.addAll(List.of("-DLAMPWRIGHT_MAX_LAMPS=255", "-o", dir.resolve("host").toString()));
    run(host);
    for (String tool : List.of("count", "damage")) {
      String c = "src/test/c/avr_" + tool + ".c";
      String to = dir.resolve(tool).toString();
      run(List.of("gcc", "-O2", "-Wall", "-Wextra", c, "-o", to, "-lsimavr", "-lelf"));
    }
  }

  static Stream<Corpus.Table> tables() {
    return PackedCorpus.tables().stream();
  }

  /** Tables whose data and frames fit an ATmega328P. */
  static Stream<Corpus.Table> avrTables() {
    return tables().filter(t -> PackedCorpus.packed(t).length < 28000);
  }

  @ParameterizedTest
  @MethodSource("tables")
  void hostPlayerShowsTheTableAndStaysInBoundsWhenItIsDamaged(Corpus.Table table)
      throws IOException, InterruptedException {
    Path packed = Files.write(dir.resolve("host.packed"), PackedCorpus.packed(table));
    Path raw = Files.write(dir.resolve("host.bin"), table.bytes());
    String out =
        run(
            List.of(
                dir.resolve("host").toString(),
                packed.toString(),
                raw.toString(),
                String.valueOf(table.frames()),
                "150"));
    assertThat(out).startsWith("same;");
  }

  /** Mixed projects, as many as {@link MixedProjectsTest}, for what the corpus does not hold. */
  @Test
  void hostPlayerShowsMixedProjects() throws IOException, InterruptedException, CancelledException {
    int projects = Integer.getInteger("lampwright.mixedProjects", 10);
    for (long seed = 0; seed < projects; seed++) {
      ExportJob job = MixedProjects.job(seed);
      if (!job.scene().loop()) {
        continue;
      }
      Packed packed =
          ScenePacker.pack(
              "packed", List.of(job.table()), Target.slowestDecodeCost(), Progress.SILENT);
      ByteArrayOutputStream rows = new ByteArrayOutputStream();
      byte[] row = new byte[job.table().layout().bytes()];
      for (FrameCursor cursor = job.table().cursor(); cursor.hasNext(); ) {
        cursor.next(row);
        rows.writeBytes(row);
      }
      String out =
          run(
              List.of(
                  dir.resolve("host").toString(),
                  Files.write(dir.resolve("mixed.packed"), packed.data()).toString(),
                  Files.write(dir.resolve("mixed.bin"), rows.toByteArray()).toString(),
                  String.valueOf(job.table().frameCount())));
      assertThat(out).as("seed %d", seed).startsWith("same;");
    }
  }

  @ParameterizedTest
  @MethodSource("avrTables")
  void avrPlayerShowsTheTable(Corpus.Table table) throws IOException, InterruptedException {
    Matcher counted = count(table, "atmega328p", List.of());
    assertThat(counted.group(2)).isEqualTo("0");
    int bytes = table.layout().frameBytes();
    double worst = Double.parseDouble(counted.group(4)) * bytes;
    // What the packer reckons with, the target's cost, is near what the simulator counts.
    if (table.frames() > 10) {
      assertThat(estimate(table) / bytes)
          .isCloseTo(Double.parseDouble(counted.group(3)), withinPercentage(10));
    }
    double wireCycles = table.layout().wireMicros() * 16;
    if (wireCycles > 0) {
      assertThat(worst).as("cycles of the worst frame").isLessThanOrEqualTo(wireCycles / 4);
    }
    if (bytes >= 64) {
      assertThat(Double.parseDouble(counted.group(3))).as("cycles per byte").isLessThan(40);
    }
  }

  /** Cycles of a frame on average, as the packer reckons. */
  private static double estimate(Corpus.Table table) {
    DecodeCost cost = Target.slowestDecodeCost();
    Unpacker unpacker = new Unpacker(PackedCorpus.packed(table), cost);
    byte[] buffer = new byte[table.layout().frameBytes()];
    unpacker.select(0, buffer);
    long sum = 0;
    for (int f = 0; f < table.frames(); f++) {
      unpacker.frame(buffer);
      sum += cost.cycles(PlayerStep.FRAME);
      for (int cycles : unpacker.cyclesOfLamps()) {
        sum += cycles;
      }
    }
    return (double) sum / table.frames();
  }

  @ParameterizedTest
  @ValueSource(strings = {"recovery-tractor", "keyframed-fades", "colour-cycle-8", "one-pixel"})
  void portableCodeShowsTheTableOnAvrToo(String name) throws IOException, InterruptedException {
    Matcher counted =
        count(PackedCorpus.table(name), "atmega328p", List.of("-DLAMPWRIGHT_PORTABLE=1"));
    assertThat(counted.group(2)).isEqualTo("0");
  }

  @ParameterizedTest
  @ValueSource(strings = {"beacon-150", "keyframed-fades", "cross-fades", "hazards", "one-pixel"})
  void attinyShowsTheTable(String name) throws IOException, InterruptedException {
    Matcher counted = count(PackedCorpus.table(name), "attiny85", List.of());
    assertThat(counted.group(2)).isEqualTo("0");
  }

  /** Damage that the checksum doesn't tell of: nothing but the frame is written, and frames end. */
  @ParameterizedTest
  @ValueSource(
      strings = {"beacon-150", "hazards", "warm-up", "cross-fades", "outputs-alone", "bounce-90"})
  void avrPlayerWritesTheFrameAloneWhenDataIsDamaged(String name)
      throws IOException, InterruptedException {
    Corpus.Table table = PackedCorpus.table(name);
    Path elf = build(table, "atmega328p", List.of());
    byte[] packed = PackedCorpus.packed(table);
    String out = damage(elf, packed.length, table.layout().frameBytes(), 60);
    assertThat(out).contains("60 rounds: ").endsWith("fine\n");
    // Some damage is found, and some is but other light.
    assertThat(out).doesNotContain(" 0 faults").doesNotContain(" 0 played");
  }

  /** A lamp started in the midst of a scene: entries of 0 frames were stepped over for ever. */
  @Test
  void avrPlayerEndsASeekOverDamagedEntries() throws IOException, InterruptedException {
    byte[] data = DamagedData.all().get("entries of no frames");
    String source = dataSource(data, 100, "uint16_t");
    Path elf = build(source, 8, "atmega328p", List.of("-DSEEK_STEP=40"));
    assertThat(damage(elf, data.length, 8, 0)).endsWith("1 rounds: 1 faults, 0 played, fine\n");
  }

  /** A lamp can't be started behind a scene's end: it took a minute to step so far. */
  @ParameterizedTest
  @ValueSource(strings = {"", "-DLAMPWRIGHT_PORTABLE=1"})
  void avrPlayerRefusesAFrameBehindTheEnd(String option) throws IOException, InterruptedException {
    // Every second frame of 100 told to be 205 long, so that 100 is the first refused.
    String source = dataSource(DamagedData.whole(), 205, "uint16_t");
    List<String> options = new ArrayList<>(List.of("-DSEEK_STEP=2"));
    options.addAll(option.isEmpty() ? List.of() : List.of(option));
    Path elf = build(source, 8, "atmega328p", options);
    Path none = Files.write(dir.resolve("none.bin"), new byte[8]);
    Process process =
        new ProcessBuilder(
                dir.resolve("count").toString(), elf.toString(), none.toString(), "8", "atmega328p")
            .redirectErrorStream(true)
            .start();
    assertThat(new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8))
        .contains("\n50 frames, ");
  }

  /** Plays a program's data with damage, in rounds; once without if there are none. */
  private static String damage(Path elf, int size, int frameBytes, int rounds)
      throws IOException, InterruptedException {
    String symbols = run(List.of("avr-nm", "-S", elf.toString()));
    return run(
        List.of(
            dir.resolve("damage").toString(),
            elf.toString(),
            address(symbols, "packed_data"),
            String.valueOf(size),
            address(symbols, "buffer"),
            String.valueOf(frameBytes),
            address(symbols, "player"),
            "0x" + symbol(symbols, "player").group(2),
            String.valueOf(rounds)));
  }

  private static String address(String symbols, String name) {
    long address = Long.parseLong(symbol(symbols, name).group(1), 16);
    // Addresses of RAM stand behind those of program memory.
    return "0x" + Long.toHexString(address & 0x7FFFFF);
  }

  private static Matcher symbol(String symbols, String name) {
    Matcher found =
        Pattern.compile("(?m)^([0-9a-f]+) ([0-9a-f]+) \\w " + name + "$").matcher(symbols);
    assertThat(found.find()).as(name).isTrue();
    return found;
  }

  private static Path build(Corpus.Table table, String mcu, List<String> options)
      throws IOException, InterruptedException {
    return build(dataSource(table, "uint16_t"), table.layout().frameBytes(), mcu, options);
  }

  private static Path build(String data, int bytes, String mcu, List<String> options)
      throws IOException, InterruptedException {
    Path source = dir.resolve("data.c");
    Files.writeString(source, data);
    Path elf = dir.resolve("player.elf");
    List<String> build = new ArrayList<>(List.of("avr-gcc", "-Os", "-ffunction-sections"));
    build.addAll(STRICT);
    build.addAll(options);
    build.addAll(
        List.of(
            "-mmcu=" + mcu,
            "-Wl,--gc-sections",
            "-DFRAME_BYTES=" + bytes,
            "-DLAMPWRIGHT_COLUMN_BYTES=" + (bytes > 256 ? 2 : 1),
            "src/test/c/avr_main.c",
            C,
            AVR,
            source.toString(),
            "-o",
            elf.toString()));
    run(build);
    return elf;
  }

  @ParameterizedTest
  @ValueSource(strings = {"recovery-tractor", "cue-script", "noise", "light-characters"})
  void avrPlayerStartsLampsAtAnyFrame(String name) throws IOException, InterruptedException {
    Corpus.Table table = PackedCorpus.table(name);
    int step = 1 + table.frames() / 23;
    Path elf = build(table, "atmega328p", List.of("-DSEEK_STEP=" + step));
    assertThat(counted(table, elf, "atmega328p", step).group(2)).isEqualTo("0");
  }

  private static Matcher count(Corpus.Table table, String mcu, List<String> options)
      throws IOException, InterruptedException {
    Matcher counted = counted(table, build(table, mcu, options), mcu, 1);
    System.out.printf("%-10s %-22s %s", mcu, table.name(), counted.group());
    return counted;
  }

  private static Matcher counted(Corpus.Table table, Path elf, String mcu, int step)
      throws IOException, InterruptedException {
    Path raw = Files.write(dir.resolve("avr.bin"), table.bytes());
    int bytes = table.layout().frameBytes();
    String out =
        run(
            List.of(
                dir.resolve("count").toString(),
                elf.toString(),
                raw.toString(),
                String.valueOf(bytes),
                mcu,
                String.valueOf(step)));
    Matcher counted = COUNTED.matcher(out);
    assertThat(counted.find()).as(out).isTrue();
    return counted;
  }

  private static String dataSource(Corpus.Table table, String sizeType) {
    return dataSource(PackedCorpus.packed(table), table.frames() + 5, sizeType);
  }

  private static String dataSource(byte[] data, int frames, String sizeType) {
    StringBuilder c = new StringBuilder();
    c.append("#include <stdint.h>\n#include \"lampwright_config.h\"\n");
    c.append("extern const uint8_t packed_data[] LAMPWRIGHT_DATA;\n");
    c.append("extern const ").append(sizeType).append(" packed_size;\n");
    c.append("extern const uint16_t packed_frames;\n");
    c.append("const ").append(sizeType).append(" packed_size = ").append(data.length).append(";\n");
    c.append("const uint16_t packed_frames = ").append(frames).append(";\n");
    c.append("const uint8_t packed_data[] LAMPWRIGHT_DATA = {");
    for (byte b : data) {
      c.append(b & 255).append(',');
    }
    return c.append("};\n").toString();
  }

  @ParameterizedTest
  @ValueSource(strings = {"recovery-tractor", "pixels-256", "flicker", "outputs-alone", "seam"})
  void armPlayerShowsTheTable(String name) throws IOException, InterruptedException {
    Corpus.Table table = PackedCorpus.table(name);
    Path source = dir.resolve("arm.c");
    Files.writeString(source, dataSource(table, "uint32_t"));
    Path elf = dir.resolve("arm.elf");
    int bytes = table.layout().frameBytes();
    List<String> build = new ArrayList<>(List.of("arm-none-eabi-gcc", "-Os", "-mcpu=cortex-m3"));
    build.addAll(STRICT);
    build.addAll(
        List.of(
            "-mthumb",
            "-DFRAME_BYTES=" + bytes,
            "src/test/c/arm_main.c",
            C,
            source.toString(),
            "-nostartfiles",
            "-T",
            "src/test/c/arm.ld",
            "-Wl,--build-id=none",
            "-o",
            elf.toString()));
    run(build);
    String out =
        run(
            List.of(
                "qemu-system-arm",
                "-M",
                "lm3s6965evb",
                "-nographic",
                "-semihosting-config",
                "enable=on,target=native",
                "-kernel",
                elf.toString()));
    CRC32 crc = new CRC32();
    for (int f = 0; f < table.frames() + 5; f++) {
      crc.update(table.bytes(), f % table.frames() * bytes, bytes);
    }
    assertThat(out.strip()).endsWith(String.format(Locale.ROOT, "%08X", crc.getValue()));
  }

  @Test
  void playerCompilesAsCppAndForEachController() throws IOException, InterruptedException {
    for (List<String> compiler :
        List.of(
            List.of("g++", "-std=c++17", "-x", "c++"),
            List.of("gcc", "-std=c99", "-O2"),
            List.of("avr-gcc", "-std=c99", "-Os", "-mmcu=attiny85"),
            List.of("avr-gcc", "-std=c99", "-O2", "-mmcu=atmega32u4"),
            List.of("avr-g++", "-std=c++11", "-Os", "-mmcu=atmega328p", "-x", "c++"),
            List.of("arm-none-eabi-gcc", "-std=c99", "-Os", "-mthumb", "-mcpu=cortex-m0plus"))) {
      List<String> command = new ArrayList<>(compiler);
      command.addAll(
          List.of(
              "-Wall",
              "-Wextra",
              "-Wpedantic",
              "-Werror",
              "-Isrc/test/c",
              "-Isrc/main/resources/lampwright/exporters/firmware/src",
              "-c"));
      command.addAll(List.of(C, "-o", dir.resolve("object.o").toString()));
      run(command);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"atmega328p", "attiny85"})
  void playerLinksAndLeavesRoomForADriverOf384Bytes(String mcu)
      throws IOException, InterruptedException {
    for (int columnBytes = 1; columnBytes <= 2; columnBytes++) {
      List<String> build = new ArrayList<>(List.of("avr-gcc", "-Os", "-ffunction-sections"));
      build.addAll(STRICT);
      Path elf = dir.resolve("size.elf");
      build.addAll(List.of("-mmcu=" + mcu, "-DLAMPWRIGHT_COLUMN_BYTES=" + columnBytes));
      build.addAll(List.of("-nostartfiles", "-Wl,--gc-sections", C, AVR, "-o", elf.toString()));
      for (String call : List.of("open", "scene", "frame")) {
        build.add("-Wl,-u,lampwright_player_" + call);
      }
      run(build);
      Matcher text = SIZED.matcher(run(List.of("avr-size", elf.toString())));
      assertThat(text.find()).isTrue();
      int bytes = Integer.parseInt(text.group(1));
      System.out.printf("program memory %s, columns of %d: %d%n", mcu, columnBytes, bytes);
      assertThat(bytes).isLessThanOrEqualTo(2560 - 384);
    }
  }

  /** At most 96 bytes of RAM beside the frame, of which the driver takes 6. */
  @Test
  void playerOfElevenLampsTakes90Bytes() throws IOException, InterruptedException {
    Path source = dir.resolve("ram.c");
    Files.writeString(source, "#include \"lampwright_player.h\"\nlampwright_player player;\n");
    Path object = dir.resolve("ram.o");
    List<String> build = new ArrayList<>(List.of("avr-gcc", "-Os", "-mmcu=atmega328p"));
    build.addAll(STRICT);
    build.addAll(List.of("-fno-common", "-DLAMPWRIGHT_MAX_LAMPS=11", "-c"));
    build.addAll(List.of(source.toString(), "-o", object.toString()));
    run(build);
    String symbols = run(List.of("avr-nm", "-S", object.toString()));
    int bytes = Integer.parseInt(symbol(symbols, "player").group(2), 16);
    System.out.printf("player of 11 lamps: %d bytes of RAM%n", bytes);
    assertThat(bytes).isLessThanOrEqualTo(90);
  }

  private static String run(List<String> command) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    process.getOutputStream().close();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as("%s%n%s", String.join(" ", command), out).isZero();
    return out;
  }
}
