package lampwright.exporters.firmware;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import lampwright.exporters.OutsideTools;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Sources of the RP2040 folder on this machine: the driver's logic, and the program that packs. */
class Rp2040SourcesTest {
  private static final Path WIRE = Path.of("src/test/wire").toAbsolutePath();
  private static final Path SOURCES = Uf2Program.SOURCES;
  private static final List<String> STRICT =
      List.of("-std=c99", "-Wall", "-Wextra", "-Wpedantic", "-Werror");

  private static final int BOOT_BYTES = 252;
  private static final int PROGRAM_AT = 264;
  private static final int PACKED_AT = 0x8000;

  private final OutsideTools.Tool gcc = OutsideTools.onThisMachine().find("gcc", "gcc");

  @TempDir Path folder;

  private OutsideTools.Tool compile(String... words) {
    gcc.run(
            folder,
            Stream.concat(
                    STRICT.stream(), Stream.concat(Stream.of(words), Stream.of("-o", "program")))
                .toArray(String[]::new))
        .quietOut();
    return new OutsideTools.Tool(folder.resolve("program"));
  }

  @Test
  void driverPutsTheRightValuesIntoTheRightRegisters() throws Exception {
    Files.writeString(
        folder.resolve("lampwright_config.h"),
        """
        #define LAMPWRIGHT_CHAINS 8
        #define LAMPWRIGHT_OUTPUTS 3
        #define LAMPWRIGHT_FRAME_BYTES 11
        #define LAMPWRIGHT_LONG_DATA 0
        #define LAMPWRIGHT_MAX_LAMPS 1
        """);
    OutsideTools.Result result =
        compile(
                "-fsanitize=address,undefined",
                "-D__ARM_ARCH_6M__",
                "-Wno-pointer-to-int-cast",
                "-include",
                WIRE.resolve("rp2040_host.h").toString(),
                "-I.",
                "-I" + SOURCES.resolve("rp2040/src"),
                "-I" + SOURCES.resolve("src"),
                WIRE.resolve("rp2040_host.c").toString(),
                SOURCES.resolve("rp2040/src/lampwright_wire.c").toString(),
                SOURCES.resolve("rp2040/src/lampwright_inputs.c").toString(),
                SOURCES.resolve("rp2040/src/lampwright_outputs.c").toString())
            .run(folder);
    assertThat(new String(result.out(), StandardCharsets.UTF_8))
        .as(result.errors())
        .isEqualTo("0 faults\n");
  }

  private OutsideTools.Result pack(int boot, int program, int packed, String to) throws Exception {
    OutsideTools.Tool uf2 = compile("-O1", SOURCES.resolve("rp2040/uf2.c").toString());
    Files.write(folder.resolve("boot.bin"), bytes(boot, 1));
    Files.write(folder.resolve("program.bin"), bytes(program, 2));
    Files.write(folder.resolve("packed.bin"), bytes(packed, 3));
    return uf2.run(folder, "boot.bin", "program.bin", "packed.bin", to);
  }

  private static byte[] bytes(int count, int seed) {
    byte[] bytes = new byte[count];
    new java.util.Random(seed).nextBytes(bytes);
    return bytes;
  }

  /** The form: docs/formats.md and USB Flashing Format; read here a second time. */
  @Test
  void partsAreJoinedWithTheirChecksums() throws Exception {
    pack(200, 5000, 5000, "show.uf2").quietOut();
    byte[] file = Files.readAllBytes(folder.resolve("show.uf2"));
    assertThat(file).hasSize(2 * (PACKED_AT + 2 * 4096));
    byte[] image = new byte[file.length / 2];
    for (int block = 0; block < file.length / 512; block++) {
      System.arraycopy(file, 512 * block + 32, image, 256 * block, 256);
    }
    ByteBuffer words = ByteBuffer.wrap(image).order(ByteOrder.LITTLE_ENDIAN);
    byte[] stage = Arrays.copyOf(bytes(200, 1), BOOT_BYTES);
    assertThat(Arrays.copyOf(image, BOOT_BYTES)).isEqualTo(stage);
    assertThat(words.getInt(BOOT_BYTES)).isEqualTo(Uf2Program.bootCrc(stage));
    assertThat(words.getInt(256)).isEqualTo(5000 / 4);
    CRC32 crc = new CRC32();
    crc.update(bytes(5000, 2));
    assertThat(words.getInt(260)).isEqualTo((int) crc.getValue());
    assertThat(Arrays.copyOfRange(image, PROGRAM_AT, PROGRAM_AT + 5000)).isEqualTo(bytes(5000, 2));
    assertThat(Arrays.copyOfRange(image, PACKED_AT, PACKED_AT + 5000)).isEqualTo(bytes(5000, 3));
    assertThat(image[image.length - 1]).isEqualTo((byte) 0xFF);
  }

  /** What fits to the byte, and one more: 252, 0x8000 - 264, 2 MiB - 0x8000. */
  @ParameterizedTest
  @CsvSource(
      nullValues = "-",
      value = {
        "252, 32504, 2064384, show.uf2, 0, -",
        "253, 4, 4, show.uf2, 1, 'boot.bin: cannot be read, or is longer than 252 bytes'",
        "252, 32508, 4, show.uf2, 1, 'program.bin: cannot be read, or is longer than 32504 bytes'",
        "252, 5, 4, show.uf2, 1, 'program.bin: has 5 bytes, must be whole words'",
        "252, 0, 4, show.uf2, 1, 'program.bin: has 0 bytes, must be whole words'",
        "252, 4, 2064385, show.uf2, 1, 'packed.bin: cannot be read, or is longer than 2064384 bytes'",
        "252, 4, 4, no/such/folder, 1, 'no/such/folder: cannot be written'",
        "252, 4, 4, /dev/full, 1, '/dev/full: cannot be written'"
      })
  void whatDoesNotFitIsRefused(
      int boot, int program, int packed, String to, int exit, String message) throws Exception {
    OutsideTools.Result result = pack(boot, program, packed, to);
    assertThat(result.errors()).isEqualTo(message == null ? "" : message + "\n");
    assertThat(result.exit()).isEqualTo(exit);
    assertThat(Files.exists(folder.resolve("show.uf2"))).isEqualTo(exit == 0);
  }

  @Test
  void missingWordsAndFilesAreTold() throws Exception {
    OutsideTools.Tool uf2 = compile(SOURCES.resolve("rp2040/uf2.c").toString());
    assertThat(uf2.run(folder, "a", "b", "c").exit()).isEqualTo(2);
    OutsideTools.Result missing = uf2.run(folder, "none.bin", "b", "c", "show.uf2");
    assertThat(missing.exit()).isEqualTo(1);
    assertThat(missing.errors()).startsWith("none.bin: cannot be read");
  }
}
