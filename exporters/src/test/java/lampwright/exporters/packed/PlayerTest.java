package lampwright.exporters.packed;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import lampwright.exporters.OutsideTools;
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
  private static final Set<String> MANY_LAMPS = Set.of("warm-up");
  private static final Pattern COUNTED =
      Pattern.compile(
          "(\\d+) frames, (\\d+) wrong, .* a byte ([\\d.]+) average ([\\d.]+) worst .*"
              + "stack (\\d+)\n");

  private static final Pattern SIZED = Pattern.compile("\\n *(\\d+)");

  @TempDir static Path dir;

  @BeforeAll
  static void compile() throws IOException, InterruptedException {
    OutsideTools tools = OutsideTools.onThisMachine();
    tools.findCompiler("gcc", "gcc", "simavr/sim_avr.h", "libsimavr-dev");
    tools.findCompiler("gcc", "gcc", "gelf.h", "libelf-dev");
    tools.findCompiler("avr-gcc", "gcc-avr", "avr/pgmspace.h", "avr-libc");
    tools.find("g++", "g++");
    tools.find("arm-none-eabi-gcc", "gcc-arm-none-eabi");
    tools.find("qemu-system-arm", "qemu-system-arm");
    List<String> host = new ArrayList<>(List.of("gcc"));
    host.addAll(STRICT);
    host.addAll(List.of("-O1", "-g", "-fsanitize=address,undefined"));
    host.addAll(List.of("-fno-sanitize-recover=all", "src/test/c/host_check.c", C));
    host.addAll(List.of("-o", dir.resolve("host").toString()));
    run(host);
    run(
        List.of(
            "gcc",
            "-O2",
            "src/test/c/avr_count.c",
            "-o",
            dir.resolve("count").toString(),
            "-lsimavr",
            "-lelf"));
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

  @ParameterizedTest
  @MethodSource("avrTables")
  void avrPlayerShowsTheTable(Corpus.Table table) throws IOException, InterruptedException {
    Matcher counted = count(table, "atmega328p", List.of());
    assertThat(counted.group(2)).isEqualTo("0");
    int bytes = table.layout().frameBytes();
    double worst = Double.parseDouble(counted.group(4)) * bytes;
    // A share of the frame's time on the wire: 1.25 us a bit and 300 us reset, at 16 MHz. The one
    // named has six lamps on twelve bytes, five of which change in one frame.
    double share = MANY_LAMPS.contains(table.name()) ? 0.30 : 0.25;
    int wire = 160 * (bytes - table.layout().outputs()) + 4800;
    if (!table.layout().chains().isEmpty()) {
      assertThat(worst).as("cycles of the worst frame").isLessThanOrEqualTo(wire * share);
    }
    if (bytes >= 64) {
      assertThat(Double.parseDouble(counted.group(3))).as("cycles a byte").isLessThan(40);
    }
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

  private static Matcher count(Corpus.Table table, String mcu, List<String> options)
      throws IOException, InterruptedException {
    Path source = dir.resolve("data.c");
    Files.writeString(source, dataSource(table, "uint16_t"));
    Path elf = dir.resolve("player.elf");
    List<String> build = new ArrayList<>(List.of("avr-gcc", "-Os", "-ffunction-sections"));
    build.addAll(STRICT);
    build.addAll(options);
    int bytes = table.layout().frameBytes();
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
    Path raw = Files.write(dir.resolve("avr.bin"), table.bytes());
    String out =
        run(
            List.of(
                dir.resolve("count").toString(),
                elf.toString(),
                raw.toString(),
                String.valueOf(bytes),
                mcu));

    Matcher counted = COUNTED.matcher(out);
    assertThat(counted.find()).as(out).isTrue();
    System.out.printf("%-10s %-22s %s", mcu, table.name(), counted.group());
    return counted;
  }

  private static String dataSource(Corpus.Table table, String sizeType) {
    byte[] data = PackedCorpus.packed(table);
    StringBuilder c = new StringBuilder();
    c.append("#include <stdint.h>\n#include \"lampwright_config.h\"\n");
    c.append("extern const uint8_t packed_data[] LAMPWRIGHT_DATA;\n");
    c.append("extern const ").append(sizeType).append(" packed_size;\n");
    c.append("extern const uint16_t packed_frames;\n");
    c.append("const ").append(sizeType).append(" packed_size = ").append(data.length).append(";\n");
    c.append("const uint16_t packed_frames = ").append(table.frames() + 5).append(";\n");
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

  private static String run(List<String> command) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    process.getOutputStream().close();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).as("%s%n%s", String.join(" ", command), out).isZero();
    return out;
  }
}
