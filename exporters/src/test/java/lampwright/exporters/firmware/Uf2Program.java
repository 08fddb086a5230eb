package lampwright.exporters.firmware;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import lampwright.exporters.OutsideTools;

/** Builds the program of UF2 files from its sources, or from changed ones. */
public final class Uf2Program {
  /** The sources that come with the program. */
  public static final Path SOURCES =
      Path.of("src/main/resources/lampwright/exporters/firmware").toAbsolutePath();

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
          "-Irp2040-image",
          "-Irp2040/src",
          "-Isrc");

  private static final List<String> LINKED =
      List.of("-nostdlib", "-Wl,--gc-sections", "-Wl,--build-id=none", "-T", "rp2040/show.ld");

  /**
   * What a source compiles to, for all tests of a JVM: most of a program that is changed is not.
   */
  private static final Map<String, byte[]> OBJECTS = new ConcurrentHashMap<>();

  private final OutsideTools tools = OutsideTools.onThisMachine();
  private final Path sources;
  private final Path folder;

  /**
   * A build.
   *
   * @param sources the folder of the sources
   * @param folder for what is built
   */
  public Uf2Program(Path sources, Path folder) {
    this.sources = sources;
    this.folder = folder;
  }

  OutsideTools.Tool compiler() {
    return tools.findCompiler(
        "arm-none-eabi-gcc", "gcc-arm-none-eabi", "string.h", "libnewlib-arm-none-eabi");
  }

  /** Second boot stage and program, as they lie in flash from its beginning. */
  public byte[] build() throws Exception {
    List<String> names =
        new ArrayList<>(List.of("rp2040-image/main.c", "rp2040/lampwright_start.c"));
    try (Stream<Path> all = Files.list(sources.resolve("rp2040/src"))) {
      all.map(file -> "rp2040/src/" + file.getFileName())
          .filter(name -> name.endsWith(".c"))
          .sorted()
          .forEach(names::add);
    }
    names.addAll(
        List.of(
            "src/lampwright_show.c",
            "src/lampwright_player.c",
            "src/lampwright_react.c",
            "src/lampwright_ceiling.c",
            "src/lampwright_situations.c"));
    List<String> words = new ArrayList<>(FLAGS.subList(0, 2));
    words.addAll(LINKED);
    for (String name : names) {
      words.add(object(name).toString());
    }
    words.add("-lgcc");
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
    return image(boot, program);
  }

  private Path object(String name) throws Exception {
    Path object = folder.resolve(name.replace('/', '-') + ".o");
    String key = name + "\n" + Files.readString(sources.resolve(name));
    byte[] known = OBJECTS.get(key);
    if (known != null) {
      return Files.write(object, known);
    }
    List<String> words = new ArrayList<>(FLAGS);
    words.addAll(List.of("-c", name, "-o", object.toString()));
    compiler().run(sources, words.toArray(String[]::new)).quietOut();
    OBJECTS.put(key, Files.readAllBytes(object));
    return object;
  }

  /** What a change of a source gives, built. */
  @SuppressWarnings("ArrayRecordComponent")
  public record Changed(byte[] program) {
    /** Puts it into an exported file in place of what is there. */
    public void into(byte[] uf2) {
      for (int i = 0; i < program.length; i++) {
        uf2[i / 256 * 512 + 32 + i % 256] = program[i];
      }
    }
  }

  /**
   * Builds the program with a text of a source changed.
   *
   * @param source no header: what includes it would not be compiled anew
   * @param folder for the changed sources and what is built
   */
  public static Changed changed(String source, String text, String other, Path folder)
      throws Exception {
    Path sources = folder.resolve("sources");
    try (Stream<Path> all = Files.walk(SOURCES)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        Path copy = sources.resolve(SOURCES.relativize(file).toString());
        Files.createDirectories(copy.resolveSibling("."));
        Files.copy(file, copy);
      }
    }
    Path file = sources.resolve(source);
    String whole = Files.readString(file);
    if (!source.endsWith(".c") || !whole.contains(text)) {
      throw new IllegalArgumentException(source + ": has no " + text);
    }
    Files.writeString(file, whole.replace(text, other));
    return new Changed(new Uf2Program(sources, folder).build());
  }

  /** A second boot stage and a program as they are in flash, with their checksums. */
  static byte[] image(byte[] boot, byte[] program) {
    byte[] stage = Arrays.copyOf(boot, 252);
    CRC32 crc = new CRC32();
    crc.update(program);
    ByteBuffer whole = ByteBuffer.allocate(264 + program.length).order(ByteOrder.LITTLE_ENDIAN);
    whole.put(stage).putInt(bootCrc(stage));
    whole.putInt(program.length / 4).putInt((int) crc.getValue()).put(program);
    return whole.array();
  }

  /** Bytes of working memory from its start to the end of the program's variables: what nm says. */
  public int staticRamBytes() throws Exception {
    build();
    byte[] symbols =
        tools
            .find("arm-none-eabi-nm", "binutils-arm-none-eabi")
            .run(folder, "built.program.elf")
            .quietOut();
    String end =
        new String(symbols, StandardCharsets.US_ASCII)
            .lines()
            .filter(line -> line.endsWith(" lampwright_bss_end"))
            .findFirst()
            .orElseThrow();
    return Integer.parseInt(end.substring(0, 8), 16) - 0x20000000;
  }

  private byte[] binary(List<String> words, String section) throws Exception {
    Path elf = folder.resolve("built" + section + ".elf");
    List<String> all = new ArrayList<>(words);
    all.addAll(List.of("-o", elf.toString()));
    compiler().run(sources, all.toArray(String[]::new)).quietOut();
    Path bin = folder.resolve("built.bin");
    tools
        .find("arm-none-eabi-objcopy", "binutils-arm-none-eabi")
        .run(folder, "-O", "binary", "-j", section, elf.toString(), bin.toString())
        .quietOut();
    return Files.readAllBytes(bin);
  }

  /** Polynomial 0x04C11DB7, most significant bit first, start all ones, not inverted. */
  static int bootCrc(byte[] bytes) {
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
