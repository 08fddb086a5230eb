package lampwright.exporters.packed;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import lampwright.exporters.CancelledException;
import lampwright.exporters.packed.play.Unpacker;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Packs each table of the corpus and reads it back with the second decoder. */
class CorpusTest {
  static Stream<Corpus.Table> tables() {
    return PackedCorpus.tables().stream();
  }

  @ParameterizedTest
  @MethodSource("tables")
  void secondDecoderReadsTheTableAndGoesRoundTheSeam(Corpus.Table table) {
    int size = table.layout().frameBytes();
    int more = Math.min(table.frames(), 100);
    List<int[]> rows = new SecondReader(PackedCorpus.packed(table)).play(0, more);
    assertThat(rows).hasSize(table.frames() + more);
    for (int f = 0; f < rows.size(); f++) {
      int at = f % table.frames() * size;
      for (int c = 0; c < size; c++) {
        if (rows.get(f)[c] != (table.bytes()[at + c] & 255)) {
          assertThat(rows.get(f)[c])
              .as("frame %d, column %d", f, c)
              .isEqualTo(table.bytes()[at + c] & 255);
        }
      }
    }
  }

  @ParameterizedTest
  @MethodSource("tables")
  void packedIsNeverLargerThanRawAndSixtyFourBytes(Corpus.Table table) {
    assertThat(PackedCorpus.packed(table)).hasSizeLessThanOrEqualTo(table.bytes().length + 64);
  }

  /**
   * Scenes for one situation, such as steady stop lamps: 50 to 270 bytes by lz4, of which the head
   * of packed data alone is a good part, so that they show little about packing.
   */
  private static final List<String> HARDLY_ANYTHING =
      List.of(
          "recovery-tractor driving",
          "recovery-tractor beacons",
          "recovery-tractor stop",
          "recovery-tractor reverse",
          "recovery-tractor hazard",
          "mountain-rescue patrol",
          "mountain-rescue turn-left",
          "mountain-rescue turn-right",
          "mountain-rescue hazard",
          "mountain-rescue fog");

  /**
   * The sizes by raw LZMA2 (xz without its container, which takes 57 bytes) and lz4 were written
   * down once; Benchmark measures them anew.
   */
  @Test
  void corpusAndSamplesAreFarShorterThanGeneralPurposeCompressorsMakeThem()
      throws IOException, CancelledException {
    Map<String, Integer> packed = new HashMap<>();
    tables().forEach(table -> packed.put(table.name(), PackedCorpus.packed(table).length));
    for (SampleTables.Sample sample : SampleTables.all()) {
      packed.put(sample.name(), sample.packed().length);
    }
    double byLzma2 = 0;
    double byLz4 = 0;
    List<String> lines = lines("compressed.csv");
    for (String line : lines) {
      String[] cells = line.split(",", -1);
      int own = packed.get(cells[0]);
      byLzma2 += Math.log(own / Double.parseDouble(cells[1]));
      byLz4 += Math.log(own / Double.parseDouble(cells[2]));
    }
    assertThat(packed.keySet()).containsAll(HARDLY_ANYTHING);
    assertThat(lines).hasSize(packed.size() - HARDLY_ANYTHING.size());
    assertThat(Math.exp(byLzma2 / lines.size())).as("mean of packed to LZMA2").isLessThan(0.8);
    assertThat(Math.exp(byLz4 / lines.size())).as("mean of packed to lz4").isLessThan(0.35);
  }

  private static List<String> lines(String resource) throws IOException {
    try (InputStream in = CorpusTest.class.getResourceAsStream(resource)) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return text.lines().filter(line -> !line.startsWith("#")).toList();
    }
  }

  @ParameterizedTest
  @MethodSource("tables")
  void seekingShowsTheSameFrameAsPlaying(Corpus.Table table) {
    int size = table.layout().frameBytes();
    Unpacker unpacker = new Unpacker(PackedCorpus.packed(table));
    byte[] buffer = new byte[size];
    int step = 1 + table.frames() / 61;
    for (int frame = 0; frame < table.frames(); frame += step) {
      for (int lamp = 0; lamp < unpacker.lamps(); lamp++) {
        unpacker.select(lamp, 0, frame, buffer);
      }
      for (int f = frame; f < frame + 3; f++) {
        unpacker.frame(buffer);
        byte[] want = new byte[size];
        System.arraycopy(table.bytes(), f % table.frames() * size, want, 0, size);
        assertThat(buffer).as("frame %d after seeking %d", f, frame).isEqualTo(want);
      }
    }
  }
}
