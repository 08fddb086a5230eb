package lampwright.exporters.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import lampwright.exporters.ExportJob;
import lampwright.exporters.MemoryTarget;
import lampwright.exporters.OutsideTools;
import lampwright.exporters.OutsideTools.Result;
import lampwright.exporters.OutsideTools.Tool;
import lampwright.exporters.TestJobs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Exported C against the GNU compilers for this machine, AVR and ARM: no warning, same bytes. */
class CCompilersTest {
  private static final OutsideTools TOOLS = OutsideTools.onThisMachine();

  private static final List<String> WARNINGS =
      List.of(
          "-Wall",
          "-Wextra",
          "-Wpedantic",
          "-Werror",
          "-Wcomment",
          "-Wtrigraphs",
          "-Wconversion",
          "-Wshadow",
          "-Wundef");

  /** A compiler with its machine and language. */
  enum Compiler {
    HOST_C("gcc", "gcc", "string.h", "libc6-dev", "-std=c99"),
    HOST_CXX("g++", "g++", "string.h", "libc6-dev", "-std=c++17"),
    AVR_C("avr-gcc", "gcc-avr", "avr/pgmspace.h", "avr-libc", "-std=c99", "-mmcu=atmega328p"),
    AVR_CXX("avr-g++", "gcc-avr", "avr/pgmspace.h", "avr-libc", "-std=c++11", "-mmcu=attiny85"),
    ARM_C(
        "arm-none-eabi-gcc",
        "gcc-arm-none-eabi",
        "string.h",
        "libnewlib-arm-none-eabi",
        "-std=c99",
        "-mcpu=cortex-m0plus"),
    ARM_CXX(
        "arm-none-eabi-g++",
        "gcc-arm-none-eabi",
        "string.h",
        "libnewlib-arm-none-eabi",
        "-std=c++17",
        "-mcpu=cortex-m0plus");

    private final String command;
    private final String packageName;
    private final String header;
    private final String headerPackage;
    private final List<String> flags;

    Compiler(
        String command, String packageName, String header, String headerPackage, String... flags) {
      this.command = command;
      this.packageName = packageName;
      this.header = header;
      this.headerPackage = headerPackage;
      this.flags = List.of(flags);
    }

    /** Runs it with every warning an error. */
    Result run(Path folder, String... arguments) {
      Tool tool = TOOLS.findCompiler(command, packageName, header, headerPackage);
      List<String> all = new ArrayList<>(flags);
      all.addAll(WARNINGS);
      if (command.endsWith("++")) {
        all.addAll(List.of("-x", "c++"));
      }
      all.addAll(List.of(arguments));
      return tool.run(folder, all.toArray(String[]::new));
    }
  }

  @TempDir Path folder;

  static Stream<ExportJob> jobs() {
    ExportJob awkward = TestJobs.hostile().get(1);
    return Stream.of(
        TestJobs.oneByte(), TestJobs.onePixel(), TestJobs.mixed(), TestJobs.large(), awkward);
  }

  @ParameterizedTest
  @EnumSource
  void sourceCompilesWithoutAWarning(Compiler compiler) throws IOException {
    List<String> arguments = new ArrayList<>(List.of("-c"));
    List<ExportJob> awkward = TestJobs.hostile();
    for (ExportJob job :
        List.of(TestJobs.oneByte(), TestJobs.mixed(), awkward.get(1), awkward.get(5))) {
      MemoryTarget.of(new CExporter(), job).saveTo(folder);
      arguments.add("./" + job.fileName("c"));
    }
    compiler.run(folder, arguments.toArray(String[]::new)).quietOut();
  }

  @ParameterizedTest
  @MethodSource("jobs")
  void programPrintsBackTheTable(ExportJob job) throws IOException {
    for (Compiler compiler : List.of(Compiler.HOST_C, Compiler.HOST_CXX)) {
      assertThat(printed(compiler, job)).isEqualTo(TestJobs.table(job));
    }
  }

  /** With seeds 1 to 5 of java.util.Random. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5})
  void programPrintsBackARandomTable(long seed) throws IOException {
    ExportJob job = RandomJobs.job(new Random(seed));
    assertThat(printed(Compiler.HOST_C, job)).isEqualTo(TestJobs.table(job));
  }

  @ParameterizedTest
  @EnumSource
  void headersOfAllScenesGoTogether(Compiler compiler) throws IOException {
    StringBuilder source = new StringBuilder();
    for (ExportJob job : TestJobs.hostile()) {
      MemoryTarget.of(new CExporter(), job).saveTo(folder);
      // Twice, so that the guards are tried too.
      source.append("#include \"").append(job.fileName("h")).append("\"\n");
      source.append("#include \"").append(job.fileName("h")).append("\"\n");
    }
    source.append("int main(void) { return lw_a_b_byte(0, 0) + lw_a_Hb_byte(0, 0); }\n");
    Files.writeString(folder.resolve("together.c"), source.toString());
    compiler.run(folder, "-c", "together.c").quietOut();
  }

  @ParameterizedTest
  @EnumSource
  void headerAndTableOfDifferentExportsDoNotCompile(Compiler compiler) throws IOException {
    ExportJob one = TestJobs.mixed();
    MemoryTarget.of(new CExporter(), one).saveTo(folder);
    Path header = folder.resolve(one.fileName("h"));
    // As a kill between the two files would leave them: the header of a table that differs in a
    // bit.
    String text = Files.readString(header);
    int digit = text.indexOf("_EXPORT 0x") + "_EXPORT 0x".length();
    char other = text.charAt(digit) == '0' ? '1' : '0';
    Files.writeString(header, text.substring(0, digit) + other + text.substring(digit + 1));
    Result result = compiler.run(folder, "-c", "./" + one.fileName("c"));
    assertThat(result.exit()).isNotZero();
    assertThat(result.errors()).contains("are of different exports: export again");
  }

  @Test
  void scenesLinkTogether() throws IOException {
    List<String> sources = new ArrayList<>();
    StringBuilder main = new StringBuilder("#include <stdio.h>\n");
    StringBuilder body = new StringBuilder();
    List<Byte> expected = new ArrayList<>();
    for (ExportJob job : TestJobs.hostile()) {
      MemoryTarget.of(new CExporter(), job).saveTo(folder);
      sources.add("./" + job.fileName("c"));
      main.append("#include \"").append(job.fileName("h")).append("\"\n");
      body.append("    putchar(lw_").append(CText.name(job.scene().id())).append("_byte(2, 3));\n");
      expected.add(job.table().frame(2)[3]);
    }
    main.append("int main(void)\n{\n").append(body).append("    return 0;\n}\n");
    Files.writeString(folder.resolve("main.c"), main.toString());
    sources.addAll(List.of("main.c", "-o", "all"));
    Compiler.HOST_C.run(folder, sources.toArray(String[]::new)).quietOut();
    assertThat(new Tool(folder.resolve("all")).run(folder).quietOut())
        .containsExactly(expected.toArray(Byte[]::new));
  }

  @Test
  void constantsAreWhatTheySay() throws IOException {
    List<String> lines =
        List.of(
            "FRAME_COUNT 25",
            "FRAME_BYTES 24",
            "TABLE_BYTES 600",
            "FRAME_US 40000",
            "FPS_NUMERATOR 25",
            "FPS_DENOMINATOR 1",
            "LOOP 1",
            "CHAIN_roof_OFFSET 0",
            "CHAIN_roof_BYTES 16",
            "CHAIN_roof_PIXELS 4",
            "CHAIN_roof_PIXEL_BYTES 4",
            "CHAIN_deck_rail_OFFSET 16",
            "CHAIN_deck_rail_BYTES 6",
            "CHAIN_deck_rail_PIXELS 2",
            "CHAIN_deck_rail_PIXEL_BYTES 3",
            "OUTPUT_amber_rear_OFFSET 22",
            "OUTPUT_spare_OFFSET 23");
    StringBuilder main = new StringBuilder("#include \"night-watch.h\"\n#include <stdio.h>\n");
    main.append("int main(void)\n{\n");
    for (String line : lines) {
      String name = line.substring(0, line.indexOf(' '));
      // Each is an integer constant expression that the preprocessor can use.
      main.append("#if LW_night_watch_").append(name).append(" >= 0\n");
      main.append("    printf(\"").append(name).append(" %lu\\n\", (unsigned long) ");
      main.append("LW_night_watch_").append(name).append(");\n#endif\n");
    }
    main.append("    return 0;\n}\n");
    MemoryTarget.of(new CExporter(), TestJobs.mixed()).saveTo(folder);
    Files.writeString(folder.resolve("main.c"), main.toString());
    Compiler.HOST_C.run(folder, "main.c", "night-watch.c", "-o", "constants").quietOut();
    byte[] out = new Tool(folder.resolve("constants")).run(folder).quietOut();
    assertThat(new String(out, StandardCharsets.US_ASCII).lines()).isEqualTo(lines);
  }

  @ParameterizedTest
  @EnumSource(names = {"AVR_C", "AVR_CXX"})
  void avrObjectHoldsTheTableInProgramMemory(Compiler compiler) throws IOException {
    Tool objcopy = TOOLS.find("avr-objcopy", "binutils-avr");
    assertThat(section(compiler, objcopy, ".progmem.data*"))
        .isEqualTo(TestJobs.table(TestJobs.mixed()));
    // Nothing is left for the start-up code to copy into RAM.
    assertThat(section(compiler, objcopy, ".data*", ".rodata*")).isEmpty();
  }

  @ParameterizedTest
  @EnumSource(names = {"ARM_C", "ARM_CXX"})
  void armObjectHoldsTheTableAsReadOnlyData(Compiler compiler) throws IOException {
    Tool objcopy = TOOLS.find("arm-none-eabi-objcopy", "binutils-arm-none-eabi");
    assertThat(section(compiler, objcopy, ".rodata*")).isEqualTo(TestJobs.table(TestJobs.mixed()));
    assertThat(section(compiler, objcopy, ".data*")).isEmpty();
  }

  @Test
  void tableTooLargeForAvrStopsItsCompilerWithOurWords() throws IOException {
    MemoryTarget.of(new CExporter(), TestJobs.large()).saveTo(folder);
    Result result = Compiler.AVR_C.run(folder, "-c", "gala.c");
    assertThat(result.exit()).isNotZero();
    assertThat(result.errors())
        .contains(
            "This table is too large for AVR: one array has at most 32767 bytes. Shorten the scene"
                + " or lower its frame rate.");
  }

  private byte[] section(Compiler compiler, Tool objcopy, String... names) throws IOException {
    MemoryTarget.of(new CExporter(), TestJobs.mixed()).saveTo(folder);
    compiler.run(folder, "-c", "night-watch.c", "-o", "object.o").quietOut();
    List<String> arguments = new ArrayList<>(List.of("-O", "binary"));
    for (String name : names) {
      arguments.addAll(List.of("-j", name));
    }
    arguments.addAll(List.of("object.o", "section.bin"));
    assertThat(objcopy.run(folder, arguments.toArray(String[]::new)).exit()).isZero();
    return Files.readAllBytes(folder.resolve("section.bin"));
  }

  private byte[] printed(Compiler compiler, ExportJob job) throws IOException {
    MemoryTarget.of(new CExporter(), job).saveTo(folder);
    return CProgram.printTable(folder, job, arguments -> compiler.run(folder, arguments));
  }
}
