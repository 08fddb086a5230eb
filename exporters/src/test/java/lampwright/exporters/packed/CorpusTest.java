package lampwright.exporters.packed;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
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
