package lampwright.exporters.packed.encode;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import java.util.stream.IntStream;
import lampwright.exporters.packed.format.ByteSink;
import lampwright.exporters.packed.format.Coding;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Echoes carried out as docs/packed.md says, on columns that are equal by chance or by build. */
class EchoesTest {
  private static final Coding WIDE = new Coding(2, 3);

  private static byte[] written(LampTable table, List<Integer> slots) {
    ByteSink out = new ByteSink();
    new Echoes(table).write(out, WIDE, slots);
    return out.toBytes();
  }

  /** Carries them out on a frame; gives how many there are. */
  private static int carryOut(byte[] echoes, int[] frame) {
    int at = 1;
    for (int left = echoes[0] & 255; left > 0; left--) {
      int first = (echoes[at] & 255) | (echoes[at + 1] & 255) << 8;
      int source = (echoes[at + 2] & 255) | (echoes[at + 3] & 255) << 8;
      int count = echoes[at + 4] & 255;
      int stride = count == 1 ? 0 : echoes[at + 5];
      at += count == 1 ? 5 : 6;
      for (int i = 0; i < count; i++) {
        frame[first + i * stride] = frame[source + i * stride];
      }
    }
    assertThat(at).isEqualTo(echoes.length);
    return echoes[0] & 255;
  }

  /** A table of columns with the values of a pattern that comes again along it. */
  private static LampTable table(int[] columns, int[] kinds) {
    byte[][] values = new byte[columns.length][2];
    for (int i = 0; i < columns.length; i++) {
      values[i][1] = (byte) kinds[i];
    }
    return new LampTable(columns, values, 2);
  }

  @Property(tries = 400, seed = "5")
  void everyColumnOfASlotHasItsValue(
      @ForAll @IntRange(min = 1, max = 40) int count,
      @ForAll @IntRange(min = 1, max = 6) int pitch,
      @ForAll boolean gaps,
      @ForAll Random random) {
    TreeSet<Integer> some = new TreeSet<>();
    while (some.size() < count) {
      some.add(gaps ? random.nextInt(3 * count) : some.size());
    }
    int[] columns = some.stream().mapToInt(i -> i - some.first()).toArray();
    int[] kinds =
        IntStream.range(0, count)
            .map(i -> random.nextInt(12) == 0 ? random.nextInt(9) : 1 + i % pitch)
            .toArray();
    LampTable table = table(columns, kinds);
    List<Integer> slots = IntStream.range(0, table.slots.size()).boxed().toList();
    int[] frame = new int[columns[count - 1] + 1];
    Echoes echoes = new Echoes(table);
    for (int slot : slots) {
      frame[echoes.column(slot)] = kinds[table.slots.get(slot)[0]];
    }
    carryOut(written(table, slots), frame);
    for (int i = 0; i < count; i++) {
      assertThat(frame[columns[i]]).as("column %d", columns[i]).isEqualTo(kinds[i]);
    }
  }

  /** Twenty pixels of three colours: each takes what the pixel before it has. */
  @Test
  void pixelsThatAreAlikeAreOneEcho() {
    int[] columns = IntStream.range(0, 60).toArray();
    LampTable table = table(columns, IntStream.range(0, 60).map(i -> 1 + i % 3).toArray());
    int[] frame = new int[60];
    frame[0] = 1;
    frame[1] = 2;
    frame[2] = 3;
    assertThat(carryOut(written(table, List.of(0, 1, 2)), frame)).isEqualTo(1);
    assertThat(frame).containsExactly(IntStream.range(0, 60).map(i -> 1 + i % 3).toArray());
  }

  /** 300 columns of one value: an echo of 255 and one of the rest, as a count is a byte. */
  @Test
  void longLampsTakeMoreThanOneEcho() {
    int[] columns = IntStream.range(0, 300).toArray();
    LampTable table = table(columns, IntStream.range(0, 300).map(i -> 7).toArray());
    int[] frame = new int[300];
    frame[0] = 7;
    assertThat(carryOut(written(table, List.of(0)), frame)).isEqualTo(2);
    assertThat(frame).containsOnly(7);
  }

  /** Three equal bytes in every pixel of four: two echoes over all pixels, not one for each. */
  @Test
  void slotsOfOneShapeAreEchoedTogether() {
    int pixels = 10;
    int[] columns = IntStream.range(0, 4 * pixels).toArray();
    int[] kinds =
        IntStream.range(0, 4 * pixels).map(i -> i % 4 == 0 ? 100 + i : 1 + i / 4).toArray();
    LampTable table = table(columns, kinds);
    List<Integer> slots = IntStream.range(0, table.slots.size()).boxed().toList();
    int[] frame = new int[4 * pixels];
    Echoes echoes = new Echoes(table);
    slots.forEach(slot -> frame[echoes.column(slot)] = kinds[table.slots.get(slot)[0]]);
    assertThat(carryOut(written(table, slots), frame)).isEqualTo(2);
    assertThat(frame).containsExactly(kinds);
  }

  @Test
  void columnsThatAreAllDifferentNeedNone() {
    LampTable table = table(new int[] {0, 1, 2}, new int[] {1, 2, 3});
    assertThat(written(table, List.of(0, 1, 2))).containsExactly(0);
  }
}
