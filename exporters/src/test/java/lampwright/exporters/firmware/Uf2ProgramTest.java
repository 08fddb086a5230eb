package lampwright.exporters.firmware;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import lampwright.exporters.OutsideTools;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The program of UF2 files, a resource, is what its sources beside it give. After a change of them:
 * {@code -Dlampwright.writeProgram=true}.
 */
class Uf2ProgramTest {
  private static final Path SOURCES =
      Path.of("src/main/resources/lampwright/exporters/firmware").toAbsolutePath();

  /** What the resource was built with; another version may order its instructions differently. */
  private static final String COMPILER = "12.2.1";

  private static final List<String> FLAGS =
      List.of(
          "-mcpu=cortex-m0plus",
          "-mthumb",
          "-Os",
          "-std=c99",
          "-Wall",
          "-Wextra",
          "-Wpedantic",
          "-Werror",
          "-ffreestanding",
          "-ffunction-sections",
          "-fdata-sections",
          "-nostdlib",
          "-Wl,--gc-sections",
          "-Wl,--build-id=none");

  private final OutsideTools tools = OutsideTools.onThisMachine();

  @TempDir Path folder;

  @Test
  void programIsWhatItsSourcesGive() throws Exception {
    byte[] built = build();
    if (Boolean.getBoolean("lampwright.writeProgram")) {
      Files.write(SOURCES.resolve("rp2040-image/program.bin"), built);
    }
    String version =
        new String(compiler().run(folder, "-dumpfullversion").quietOut(), "US-ASCII").strip();
    Assumptions.assumeTrue(
        version.equals(COMPILER),
        "left out: the program was built with arm-none-eabi-gcc "
            + COMPILER
            + "; here is "
            + version);
    assertThat(built).isEqualTo(Uf2Image.program());
  }

  /** RP2040 datasheet, 2.8 (from memory): the boot ROM runs what has this checksum. */
  @Test
  void secondBootStageHasTheChecksumOfTheBootRom() throws Exception {
    byte[] program = Uf2Image.program();
    ByteBuffer words = ByteBuffer.wrap(program).order(ByteOrder.LITTLE_ENDIAN);
    assertThat(words.getInt(252)).isEqualTo(bootCrc(program));
    assertThat(4 * words.getInt(256)).isEqualTo(program.length - 264);
    CRC32 crc = new CRC32();
    crc.update(program, 264, program.length - 264);
    assertThat(words.getInt(260)).isEqualTo((int) crc.getValue());
    assertThat(program.length).isLessThanOrEqualTo(Uf2Image.TABLE_AT);
  }

  /** What the data file of the controller says of the program's working memory. */
  @Test
  void programIsAsLongAsIsSaid() throws Exception {
    assertThat(Uf2Image.program().length - 264).isBetween(4900, 5400);
  }

  private OutsideTools.Tool compiler() {
    return tools.findCompiler(
        "arm-none-eabi-gcc", "gcc-arm-none-eabi", "string.h", "libnewlib-arm-none-eabi");
  }

  private byte[] build() throws Exception {
    List<String> words = new ArrayList<>(FLAGS);
    words.add("-Irp2040-image");
    words.add("-Irp2040/src");
    words.add("-Isrc");
    words.addAll(List.of("-T", "rp2040/show.ld"));
    words.addAll(List.of("rp2040-image/main.c", "rp2040/lampwright_start.c"));
    try (Stream<Path> all = Files.list(SOURCES.resolve("rp2040/src"))) {
      all.map(file -> "rp2040/src/" + file.getFileName())
          .filter(name -> name.endsWith(".c"))
          .sorted()
          .forEach(words::add);
    }
    words.addAll(List.of("src/lampwright_show.c", "src/lampwright_player.c", "-lgcc"));
    byte[] program = binary(words, ".program");
    byte[] boot =
        binary(
            List.of(
                "-mcpu=cortex-m0plus",
                "-mthumb",
                "-nostdlib",
                "-Wl,-Ttext=0",
                "-Wl,--entry=0",
                "-Wl,--build-id=none",
                "rp2040/lampwright_boot.S"),
            ".boot");
    byte[] stage = Arrays.copyOf(boot, 252);
    CRC32 crc = new CRC32();
    crc.update(program);
    ByteBuffer whole = ByteBuffer.allocate(264 + program.length).order(ByteOrder.LITTLE_ENDIAN);
    whole.put(stage).putInt(bootCrc(stage));
    whole.putInt(program.length / 4).putInt((int) crc.getValue()).put(program);
    return whole.array();
  }

  private byte[] binary(List<String> words, String section) throws Exception {
    Path elf = folder.resolve("built.elf");
    List<String> all = new ArrayList<>(words);
    all.addAll(List.of("-o", elf.toString()));
    compiler().run(SOURCES, all.toArray(String[]::new)).quietOut();
    Path bin = folder.resolve("built.bin");
    tools
        .find("arm-none-eabi-objcopy", "binutils-arm-none-eabi")
        .run(folder, "-O", "binary", "-j", section, elf.toString(), bin.toString())
        .quietOut();
    return Files.readAllBytes(bin);
  }

  /** Polynomial 0x04C11DB7, most significant bit first, start all ones, not inverted. */
  private static int bootCrc(byte[] bytes) {
    int crc = -1;
    for (int i = 0; i < 252; i++) {
      crc ^= bytes[i] << 24;
      for (int bit = 0; bit < 8; bit++) {
        crc = crc < 0 ? crc << 1 ^ 0x04C11DB7 : crc << 1;
      }
    }
    return crc;
  }
}
