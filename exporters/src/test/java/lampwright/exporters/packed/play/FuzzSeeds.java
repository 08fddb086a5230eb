package lampwright.exporters.packed.play;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import lampwright.exporters.packed.Corpus;
import lampwright.exporters.packed.PackedCorpus;

/**
 * Writes the inputs that fuzzing starts from, {@code fuzz/*.bin} in the test resources: the shorter
 * tables of the corpus packed, one with wide columns, and the data of {@link DamagedData}. Before
 * each stand the four bytes that {@link FuzzPlay} and {@code fuzz_player.c} tell of.
 */
final class FuzzSeeds {
  private static final int MOST_BYTES = 700;
  private static final int FRAMES_127 = 0xE0;

  private FuzzSeeds() {}

  public static void main(String[] args) throws IOException {
    Path dir = Files.createDirectories(Path.of(args[0]));
    for (Corpus.Table table : PackedCorpus.tables()) {
      byte[] packed = PackedCorpus.packed(table);
      if (packed.length <= MOST_BYTES) {
        write(dir, table.name(), FRAMES_127, packed);
      }
    }
    for (Map.Entry<String, byte[]> one : DamagedData.all().entrySet()) {
      int does = one.getKey().startsWith("entr") ? 0 : FRAMES_127;
      does |= one.getKey().startsWith("more scenes") ? 5 << 1 : 0;
      write(dir, "damaged-" + one.getKey(), does, one.getValue());
    }
  }

  private static void write(Path dir, String name, int does, byte[] packed) throws IOException {
    byte[] input = new byte[FuzzPlay.DOES + packed.length];
    input[0] = (byte) does;
    input[2] = 37;
    System.arraycopy(packed, 0, input, FuzzPlay.DOES, packed.length);
    String file = name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    Files.write(dir.resolve(file + ".bin"), input);
  }
}
