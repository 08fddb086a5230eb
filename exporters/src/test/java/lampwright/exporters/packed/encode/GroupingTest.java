package lampwright.exporters.packed.encode;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.IntStream;
import lampwright.exporters.packed.format.ByteSink;
import lampwright.exporters.packed.format.Coding;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

/** Runs and echoes carried out as docs/packed.md says, and by hand. */
class GroupingTest {
  private static final Coding NARROW = new Coding(1, 2);
  private static final Coding WIDE = new Coding(2, 3);

  private static List<Integer> range(int from, int end) {
    return IntStream.range(from, end).boxed().toList();
  }

  @Test
  void evenColumnsAreOneRun() {
    assertThat(Grouping.runs(List.of(0, 3, 6, 9, 20)))
        .containsExactly(new Grouping.Run(0, 4, 3), new Grouping.Run(20, 1, 0));
    assertThat(Grouping.runs(List.of(5, 4, 3))).containsExactly(new Grouping.Run(5, 3, -1));
    assertThat(Grouping.runs(List.of())).isEmpty();
  }

  /** A stride is a signed byte, and a count a byte. */
  @Test
  void runsKeepToTheirBytes() {
    assertThat(Grouping.runs(List.of(0, 127, 254))).containsExactly(new Grouping.Run(0, 3, 127));
    assertThat(Grouping.runs(List.of(0, 128))).hasSize(2);
    assertThat(Grouping.runs(List.of(127, 0))).containsExactly(new Grouping.Run(127, 2, -127));
    assertThat(Grouping.runs(range(0, 300)))
        .containsExactly(new Grouping.Run(0, 255, 1), new Grouping.Run(255, 45, 1));
  }

  @Property
  void runsGiveTheColumnsBack(@ForAll @Size(max = 40) List<@IntRange(max = 600) Integer> columns) {
    List<Integer> found = new ArrayList<>();
    for (Grouping.Run run : Grouping.runs(columns)) {
      assertThat(Math.abs(run.stride())).isLessThanOrEqualTo(127);
      for (int i = 0; i < run.slots(); i++) {
        found.add(run.first() + i * run.stride());
      }
    }
    assertThat(found).isEqualTo(columns);
  }

  @Test
  void equalColumnsAreSpreadByFewEchoes() {
    assertThat(Grouping.spread(new int[] {7})).isEmpty();
    assertThat(Grouping.spread(new int[] {0, 1, 2, 3, 4}))
        .containsExactly(new Grouping.Echo(1, 0, 4, 1));
    assertThat(Grouping.spread(new int[] {0, 3, 6, 100}))
        .containsExactly(new Grouping.Echo(3, 0, 2, 3), new Grouping.Echo(100, 0, 1, 0));
    assertThat(Grouping.spread(new int[] {0, 200, 203, 206}))
        .containsExactly(new Grouping.Echo(200, 0, 1, 0), new Grouping.Echo(203, 200, 2, 3));
    assertThat(Grouping.spread(new int[] {0, 127}))
        .containsExactly(new Grouping.Echo(127, 0, 1, 127));
    assertThat(Grouping.spread(new int[] {0, 128}))
        .containsExactly(new Grouping.Echo(128, 0, 1, 0));
    // The first and 254 more, which is one run; then the others from the first one again.
    int[] many = IntStream.range(0, 300).toArray();
    assertThat(Grouping.spread(many))
        .startsWith(new Grouping.Echo(1, 0, 254, 1))
        .contains(new Grouping.Echo(255, 0, 1, 0));
  }

  /** For i from 0 on, column first + i x stride takes what source + i x stride has by then. */
  @Property
  void echoesFillAllColumnsAndNoOthers(
      @ForAll @Size(min = 1, max = 30) List<@IntRange(max = 500) Integer> some) {
    int[] columns = new TreeSet<>(some).stream().mapToInt(Integer::intValue).toArray();
    int[] frame = new int[1000];
    frame[columns[0]] = 9;
    for (Grouping.Echo echo : Grouping.spread(columns)) {
      assertThat(echo.count()).isBetween(1, 255);
      assertThat(echo.stride()).isBetween(-128, 127);
      for (int i = 0; i < echo.count(); i++) {
        frame[echo.first() + i * echo.stride()] = frame[echo.source() + i * echo.stride()];
      }
    }
    for (int i = 0; i < frame.length; i++) {
      assertThat(frame[i])
          .as("column %d", i)
          .isEqualTo(Arrays.binarySearch(columns, i) < 0 ? 0 : 9);
    }
  }

  /** first C, slots, stride: not there if slots is 1. Echoes have their source behind the first. */
  @Test
  void runsAndEchoesAreWrittenAsTheFormatHasThem() {
    ByteSink out = new ByteSink();
    new Grouping.Run(5, 3, -1).write(out, NARROW);
    new Grouping.Run(5, 1, 0).write(out, NARROW);
    new Grouping.Run(0x0102, 2, 7).write(out, WIDE);
    new Grouping.Echo(9, 8, 2, 1).write(out, NARROW);
    new Grouping.Echo(9, 8, 1, 1).write(out, NARROW);
    new Grouping.Echo(0x0304, 0x0102, 1, 0).write(out, WIDE);
    assertThat(out.toBytes())
        .containsExactly(5, 3, -1, 5, 1, 2, 1, 2, 7, 9, 8, 2, 1, 9, 8, 1, 4, 3, 2, 1, 1);
  }
}
