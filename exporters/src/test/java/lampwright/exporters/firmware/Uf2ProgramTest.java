package lampwright.exporters.firmware;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.CRC32;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The program of UF2 files, a resource, is what its sources beside it give. After a change of them:
 * {@code -Dlampwright.writeProgram=true}.
 */
class Uf2ProgramTest {
  /** What the resource was built with; another version may order its instructions differently. */
  private static final String COMPILER = "12.2.1";

  @TempDir Path folder;

  @Test
  void programIsWhatItsSourcesGive() throws Exception {
    Uf2Program program = new Uf2Program(Uf2Program.SOURCES, folder);
    byte[] built = program.build();
    if (Boolean.getBoolean("lampwright.writeProgram")) {
      Files.write(Uf2Program.SOURCES.resolve("rp2040-image/program.bin"), built);
    }
    String version =
        new String(
                program.compiler().run(folder, "-dumpfullversion").quietOut(),
                StandardCharsets.US_ASCII)
            .strip();
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
    assertThat(words.getInt(252)).isEqualTo(Uf2Program.bootCrc(program));
    assertThat(4 * words.getInt(256)).isEqualTo(program.length - 264);
    CRC32 crc = new CRC32();
    crc.update(program, 264, program.length - 264);
    assertThat(words.getInt(260)).isEqualTo((int) crc.getValue());
    assertThat(program.length).isLessThanOrEqualTo(Uf2Image.TABLE_AT);
  }

  /** What the data file of the controller says of the program's working memory. */
  @Test
  void programIsAsLongAsIsSaid() throws Exception {
    assertThat(Uf2Image.program().length - 264).isBetween(8900, 9300);
  }
}
