package lampwright.exporters.packed.play;

import com.google.common.collect.HashMultiset;
import com.google.common.collect.Multiset;
import com.google.common.primitives.Bytes;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import lampwright.exporters.CancelledException;
import lampwright.exporters.packed.Corpus;
import lampwright.exporters.packed.PackedCorpus;
import lampwright.exporters.packed.format.Format;

/**
 * Writes the inputs that fuzzing starts from, {@code fuzz/*.bin} in the test resources: the shorter
 * tables of the corpus packed, one with wide columns, the data of {@link DamagedData}, and shows by
 * chance with readings. Before each are the four bytes that {@link FuzzPlay} and {@code
 * fuzz_player.c} tell of.
 */
final class FuzzSeeds {
  private static final int MOST_BYTES = 700;
  private static final int FRAMES_127 = 0xE0;
  private static final int SHOWS = 60;
  private static final int SHOWS_OF_A_KIND = 2;
  private static final int READING_BYTES = 40;

  private FuzzSeeds() {}

  public static void main(String[] args) throws IOException, CancelledException {
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
    shows(dir);
  }

  /** Short shows for times of each width, with and without a ceiling. */
  private static void shows(Path dir) throws IOException, CancelledException {
    Multiset<String> kinds = HashMultiset.create();
    for (int seed = 0; seed < SHOWS; seed++) {
      byte[] packed = new RandomShow(seed).packed();
      boolean ceiling = (packed[Format.FLAGS_AT] & Format.CEILING) != 0;
      String kind = ShowRoom.of(packed).timeBytes() + (ceiling ? "-ceiling" : "");
      if (packed.length <= MOST_BYTES && kinds.count(kind) < SHOWS_OF_A_KIND) {
        kinds.add(kind);
        byte[] readings = new byte[READING_BYTES];
        new Random(seed).nextBytes(readings);
        write(dir, "show-" + kind + "-" + seed, FRAMES_127, Bytes.concat(packed, readings));
      }
    }
  }

  private static void write(Path dir, String name, int does, byte[] packed) throws IOException {
    byte[] input = new byte[FuzzPlay.DOES + packed.length];
    input[0] = (byte) does;
    input[1] = (byte) (name.startsWith("show") ? READING_BYTES : 0);
    input[2] = 37;
    System.arraycopy(packed, 0, input, FuzzPlay.DOES, packed.length);
    String file = name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    Files.write(dir.resolve(file + ".bin"), input);
  }
}
