package lampwright.exporters.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lampwright.exporters.ExportJob;
import lampwright.exporters.ExportOptions;
import lampwright.exporters.MemoryTarget;
import lampwright.exporters.OutsideTools;
import lampwright.exporters.OutsideTools.Tool;
import lampwright.exporters.TestJobs;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Intel HEX against srec_cat (SRecord) and objcopy (GNU binutils): both give the bin file. */
class HexOutsideTest {
  private static final OutsideTools TOOLS = OutsideTools.onThisMachine();

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(longs = {0, 0x7FF3, 0xFFF9, 0x0800_0000, 0xFFFE_0001L})
  void srecCatReadsTheTable(long address) throws IOException {
    Tool srecCat = TOOLS.find("srec_cat", "srecord");
    byte[] table = export(address);
    srecCat
        .run(
            folder,
            "gala.hex",
            "-intel",
            "-offset",
            "-" + ExportOptions.address(address),
            "-output",
            "back.bin",
            "-binary")
        .quietOut();
    assertThat(Files.readAllBytes(folder.resolve("back.bin"))).isEqualTo(table);
  }

  @ParameterizedTest
  @ValueSource(longs = {0, 0x7FF3, 0xFFF9, 0x0800_0000, 0xFFFE_0001L})
  void srecInfoFindsOneRangeAtTheAddress(long address) throws IOException {
    Tool srecInfo = TOOLS.find("srec_info", "srecord");
    byte[] table = export(address);
    String said =
        new String(
            srecInfo.run(folder, "gala.hex", "-intel").quietOut(), StandardCharsets.US_ASCII);
    Matcher range = Pattern.compile("Data: +([0-9A-F]+) - ([0-9A-F]+)\n").matcher(said);
    assertThat(range.find()).as(said).isTrue();
    assertThat(Long.parseLong(range.group(1), 16)).isEqualTo(address);
    assertThat(Long.parseLong(range.group(2), 16)).isEqualTo(address + table.length - 1);
    assertThat(said).endsWith(range.group());
  }

  @ParameterizedTest
  @ValueSource(longs = {0, 0x7FF3, 0xFFF9, 0x0800_0000})
  void objcopyReadsTheTable(long address) throws IOException {
    Tool objcopy = TOOLS.find("objcopy", "binutils");
    byte[] table = export(address);
    objcopy.run(folder, "-I", "ihex", "-O", "binary", "gala.hex", "back.bin").quietOut();
    assertThat(Files.readAllBytes(folder.resolve("back.bin"))).isEqualTo(table);
  }

  @ParameterizedTest
  @ValueSource(longs = {0, 0x7FF3})
  void avrObjcopyReadsTheTable(long address) throws IOException {
    Tool objcopy = TOOLS.find("avr-objcopy", "binutils-avr");
    byte[] table = export(address);
    objcopy.run(folder, "-I", "ihex", "-O", "binary", "gala.hex", "back.bin").quietOut();
    assertThat(Files.readAllBytes(folder.resolve("back.bin"))).isEqualTo(table);
  }

  private byte[] export(long address) throws IOException {
    ExportJob job = TestJobs.at(TestJobs.large(), address);
    MemoryTarget.of(new HexExporter(), job).saveTo(folder);
    return MemoryTarget.of(new BinExporter(), job).bytes("gala.bin");
  }
}
