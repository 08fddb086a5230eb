package lampwright.exporters.packed.encode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import lampwright.exporters.packed.SecondReader;
import lampwright.exporters.packed.format.ByteSink;
import lampwright.exporters.packed.format.Coding;
import lampwright.exporters.packed.play.DecodeCost;
import lampwright.exporters.packed.play.PlayerStep;
import lampwright.exporters.target.Target;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The packer's coders against bytes worked out from docs/packed.md, and played by its second
 * reader.
 */
class CodersByHandTest {
  private static final Coding NARROW = new Coding(1, 2);
  private static final Coding WIDE = new Coding(2, 2);

  private static LampTable table(int[] columns, int[]... rows) {
    byte[][] values = new byte[columns.length][rows.length];
    for (int f = 0; f < rows.length; f++) {
      for (int c = 0; c < columns.length; c++) {
        values[c][f] = (byte) rows[f][c];
      }
    }
    return new LampTable(columns, values, rows.length);
  }

  /** One column. */
  private static LampTable column(int... values) {
    return table(
        new int[] {0}, Arrays.stream(values).mapToObj(v -> new int[] {v}).toArray(int[][]::new));
  }

  private static String hex(byte[] bytes) {
    StringBuilder hex = new StringBuilder();
    for (byte b : bytes) {
      hex.append(String.format("%s%02X", hex.length() == 0 ? "" : " ", b));
    }
    return hex.toString();
  }

  /** Sets the columns whose value is not -1. */
  private static String patched(Coding coding, int[] columns, int... row) {
    boolean[] must = new boolean[row.length];
    int[] values = row.clone();
    for (int i = 0; i < row.length; i++) {
      must[i] = row[i] >= 0;
      values[i] = Math.max(row[i], 0);
    }
    ByteSink out = new ByteSink();
    new PatchCoder(table(columns, values), coding).write(out, values, must);
    return hex(out.toBytes());
  }

  private static int[] upTo(int end) {
    return IntStream.range(0, end).toArray();
  }

  /** A new instruction takes two bytes, or three: so two columns that need not be set are set. */
  @Test
  void patchesOfColumns() {
    assertThat(patched(NARROW, upTo(4), 5, 6, -1, 8)).isEqualTo("83 00 05 06 00 08");
    assertThat(patched(NARROW, upTo(6), 5, -1, -1, -1, 8, -1)).isEqualTo("80 00 05 80 04 08");
    assertThat(patched(NARROW, upTo(4), -1, -1, 7, -1)).isEqualTo("80 02 07");
    assertThat(patched(NARROW, upTo(3), -1, -1, -1)).isEmpty();
    assertThat(patched(NARROW, new int[] {0, 1, 5, 6}, 1, 2, 3, 4))
        .isEqualTo("81 00 01 02 81 05 03 04");
    assertThat(patched(WIDE, new int[] {0, 258, 259}, 1, 2, 3))
        .isEqualTo("80 00 00 01 81 02 01 02 03");
    int[] row = upTo(65);
    String bytes = hex(toBytes(IntStream.range(0, 64).toArray()));
    assertThat(patched(NARROW, upTo(65), row)).isEqualTo("BF 00 " + bytes + " 80 40 40");
  }

  private static byte[] toBytes(int... values) {
    byte[] bytes = new byte[values.length];
    for (int i = 0; i < bytes.length; i++) {
      bytes[i] = (byte) values[i];
    }
    return bytes;
  }

  @Test
  void fillsOfColumns() {
    int[] same = new int[8];
    Arrays.fill(same, 9);
    assertThat(patched(NARROW, IntStream.range(2, 10).toArray(), same)).isEqualTo("C0 02 07 09");
    int[] pixels = IntStream.range(0, 12).map(i -> 10 + i % 3).toArray();
    assertThat(patched(NARROW, upTo(12), pixels)).isEqualTo("C2 00 0B 0A 0B 0C");
    // 256 and 44 more.
    int[] many = new int[300];
    Arrays.fill(many, 7);
    assertThat(patched(WIDE, upTo(300), many)).isEqualTo("C0 00 00 FF 07 C0 00 01 2B 07");
    int[] mixed = new int[23];
    Arrays.fill(mixed, 7);
    System.arraycopy(new int[] {1, 2, 3}, 0, mixed, 0, 3);
    assertThat(patched(NARROW, upTo(23), mixed)).isEqualTo("82 00 01 02 03 C0 03 13 07");
    int[] longest = IntStream.range(0, 96).map(i -> i % 32 + 1).toArray();
    assertThat(patched(NARROW, upTo(96), longest))
        .isEqualTo("DF 00 5F " + hex(toBytes(IntStream.rangeClosed(1, 32).toArray())));
    // Columns 0 to 5 and 9 to 14: a fill does not go on over what is between.
    int[] gap = {0, 1, 2, 3, 4, 5, 9, 10, 11, 12, 13, 14};
    assertThat(patched(NARROW, gap, IntStream.generate(() -> 4).limit(12).toArray()))
        .isEqualTo("C0 00 05 04 C0 09 05 04");
  }

  /** Whatever the row, what has to be set is, and what is set has the row's value. */
  @Property(tries = 300, seed = "9")
  void patchesSetWhatTheyShould(
      @ForAll @IntRange(min = 1, max = 400) int count,
      @ForAll @IntRange(min = 1, max = 9) int period,
      @ForAll boolean gaps,
      @ForAll Random random) {
    int[] columns = new int[count];
    int[] row = new int[count];
    boolean[] must = new boolean[count];
    for (int i = 0; i < count; i++) {
      columns[i] = (i > 0 ? columns[i - 1] : -1) + (gaps && random.nextInt(9) == 0 ? 3 : 1);
      row[i] = random.nextInt(20) == 0 ? random.nextInt(256) : 1 + i % period;
      must[i] = random.nextInt(8) > 0;
    }
    ByteSink out = new ByteSink();
    new PatchCoder(table(columns, row), WIDE).write(out, row, must);
    byte[] bytes = out.toBytes();
    int[] frame = new int[columns[count - 1] + 1];
    Arrays.fill(frame, -1);
    int at = 0;
    while (at < bytes.length) {
      int op = bytes[at] & 255;
      int to = (bytes[at + 1] & 255) | (bytes[at + 2] & 255) << 8;
      boolean fill = op >= 0xC0;
      int pattern = fill ? op - 0xBF : op - 0x7F;
      int total = fill ? (bytes[at + 3] & 255) + 1 : pattern;
      at += fill ? 4 : 3;
      for (int i = 0; i < total; i++) {
        frame[to + i] = bytes[at + i % pattern] & 255;
      }
      at += pattern;
    }
    int set = 0;
    for (int i = 0; i < count; i++) {
      if (must[i] || frame[columns[i]] >= 0) {
        assertThat(frame[columns[i]]).as("column %d", columns[i]).isEqualTo(row[i]);
      }
      set += frame[columns[i]] >= 0 ? 1 : 0;
    }
    assertThat(Arrays.stream(frame).filter(v -> v >= 0)).as("no others").hasSize(set);
  }

  /** Column 0 is 1 1 1 2 2, column 1 is 5 5 5 5 6, column 2 is 9 and column 3 is 0 throughout. */
  private static final LampTable EVENTS =
      table(
          upTo(4),
          new int[] {1, 5, 9, 0},
          new int[] {1, 5, 9, 0},
          new int[] {1, 5, 9, 0},
          new int[] {2, 5, 9, 0},
          new int[] {2, 6, 9, 0});

  @Test
  void changesAsHoldsAndPatches() {
    EventCoder events = new EventCoder(EVENTS, NARROW);
    assertThat(hex(events.setup())).isEqualTo("80 02 09");
    assertThat(hex(events.section(0, 5).bytes()))
        .isEqualTo("00 00 81 00 01 05 02 80 00 02 00 80 01 06 00 E1");
    assertThat(hex(events.section(3, 4).bytes())).isEqualTo("00 00 81 00 02 05 00 E1");
    assertThat(hex(events.rest(4).bytes())).isEqualTo("00 00 81 00 02 06 7F E1");
    assertThat(List.of(events.stillUntil(1, 5), events.stillUntil(1, 2), events.stillUntil(4, 5)))
        .containsExactly(3, 2, 4);
    // 300 = 128 + 128 + 44; the most of one hold.
    assertThat(List.of(held(300), held(128), held(129), held(0)))
        .containsExactly("7F 7F 2B", "7F", "7F 00", "");
  }

  private static String held(int frames) {
    ByteSink out = new ByteSink();
    EventCoder.writeHold(out, frames);
    return hex(out.toBytes());
  }

  /** An entry plays 4,096 frames at most. */
  @ParameterizedTest
  @ValueSource(ints = {4096, 4097, 8192})
  void longScores(int frames) {
    int[] values = new int[frames];
    values[frames - 1] = 1;
    LampTable table = column(values);
    EventCoder events = new EventCoder(table, NARROW);
    List<Integer> lengths = frames == 4096 ? List.of(4096) : List.of(4096, frames - 4096);
    assertThat(events.score().entries()).extracting(Score.Entry::frames).isEqualTo(lengths);
    assertThat(events.still()).extracting(Score.Entry::frames).isEqualTo(lengths);
    assertThat(PlainCoder.score(table).entries())
        .extracting(Score.Entry::frames)
        .isEqualTo(lengths);
    assertThat(new EventCoder(column(new int[9]), NARROW).score().entries()).isEmpty();
    assertPlays(table, events.score());
    assertPlays(table, PlainCoder.score(table));
  }

  private static StepsCoder steps(LampTable table, Coding coding) {
    Echoes echoes = new Echoes(table);
    RowPlan plan = new RowPlan(table, echoes, slots(table), true);
    return new StepsCoder(table, echoes, plan, new EventCoder(table, coding), coding);
  }

  private static List<Integer> slots(LampTable table) {
    return IntStream.range(0, table.slots.size()).boxed().toList();
  }

  /**
   * 0 1 3 4 4 6 in steps of 1 2 1 0 2, two bits each: 01 10 01 00 10 is 64 80; with a flag before
   * each that is not 0, 101 110 101 0 110 is BA B0.
   */
  @Test
  void stepsAsRows() {
    LampTable table = column(0, 1, 3, 4, 4, 6);
    assertThat(hex(steps(table, NARROW).rows(0, 6, false).bytes()))
        .isEqualTo("00 06 01 00 01 12 00 00 80 00 00 00 E0 05 64 80 E1");
    assertThat(hex(steps(table, NARROW).rows(0, 6, true).bytes()))
        .isEqualTo("04 06 01 00 01 12 00 00 80 00 00 00 E0 05 BA B0 E1");
    assertThat(hex(steps(column(9, 200, 3), NARROW).raw(0, 3).bytes()))
        .isEqualTo("01 04 01 00 01 00 80 00 09 00 E0 02 C8 03 E1");
    // From 3 on: a hold of two, then 4 and two bits, which steps would take too.
    assertThat(hex(steps(table, NARROW).rows(3, 6, false).bytes()))
        .isEqualTo("00 06 01 00 01 02 04 00 80 00 04 01 E0 01 80 E1");
  }

  /** Remainders 0 to 255 take eight bits, one value none. */
  @Test
  void widthsOfRemainders() {
    assertThat(
            List.of(
                RowPlan.width(7, 7),
                RowPlan.width(-1, 0),
                RowPlan.width(-2, 1),
                RowPlan.width(0, 4),
                RowPlan.width(-128, 127)))
        .containsExactly(0, 1, 2, 3, 8);
  }

  /** A column that is half of another, rounded down, is its copy by 128/256 with nothing left. */
  @Test
  void columnsThatAreScaledCopies() {
    int[][] rows = new int[40][];
    for (int f = 0; f < 40; f++) {
      int v = f * 89 % 251;
      rows[f] = new int[] {v, v / 2};
    }
    LampTable table = table(upTo(2), rows);
    RowPlan plan = new RowPlan(table, new Echoes(table), slots(table), true);
    assertThat(plan.factor[1]).isEqualTo(128);
    assertThat(plan.sourceColumn[1]).isZero();
    for (short rest : plan.rest[1][2]) {
      assertThat(rest).isZero();
    }
    assertThat(plan.rest[0][2]).isNull();
    RowRange range = new RowRange(table, plan, NARROW, new DecodeCost.RowCost(100, 10, 3, 7));
    range.take(RowRange.span(plan, 1, 40));
    assertThat(range.bits()).isEqualTo(8);
    // A rule and a run, and a rule with source and factor that shares the run.
    assertThat(range.headBytes()).isCloseTo(5 + 4.3, within(1e-9));
    // Groups 1, run 00 02 01, rules 08 bias and 20 00 00 80, echoes 0; eight bits a row.
    byte[] section = steps(table, NARROW).rows(0, 40, false).bytes();
    assertThat(hex(Arrays.copyOf(section, 13))).endsWith("20 00 00 80 00");
    assertThat(section).hasSize(2 + 11 + 4 + 1 + 2 + 39 + 1);
  }

  /** Rows of a bit take more than the four bytes of a hold from 33 frames on. */
  @Test
  void longHoldsBetweenRows() {
    int[] values = new int[36];
    Arrays.fill(values, 1, 35, 1);
    values[35] = 2;
    // 1 and one bit: rows 0 and 1 are the bytes 00 and 80; the hold is of 33 frames.
    assertThat(hex(steps(column(values), NARROW).rows(0, 36, false).bytes()))
        .isEqualTo("00 06 01 00 01 01 01 00 80 00 00 00 E0 01 00 20 E0 01 80 E1");
    assertThat(hex(steps(column(values), NARROW).rows(0, 36, true).bytes()))
        .isEqualTo("04 06 01 00 01 01 01 00 80 00 00 00 E0 01 80 20 E0 01 C0 E1");
    int[] fewer = Arrays.copyOfRange(values, 0, 35);
    fewer[34] = 2;
    assertThat(hex(steps(column(fewer), NARROW).rows(0, 35, false).bytes()))
        .isEqualTo("00 06 01 00 01 01 01 00 80 00 00 00 E0 22 00 00 00 00 40 E1");
  }

  /**
   * A row costs 100, a slot 10, a bit 3, a copy 7. Columns 0 and 3 go 0 1 3 6, column 1 5 5 5 6,
   * column 2 0 255 0 255.
   */
  @Test
  void rowsTakeBitsBytesAndCycles() {
    LampTable table =
        table(
            upTo(4),
            new int[] {0, 5, 0, 0},
            new int[] {1, 5, 255, 1},
            new int[] {3, 5, 0, 3},
            new int[] {6, 6, 255, 6});
    RowPlan plan = new RowPlan(table, new Echoes(table), slots(table), true);
    DecodeCost.RowCost cost = new DecodeCost.RowCost(100, 10, 3, 7);
    RowRange range = new RowRange(table, plan, NARROW, cost);
    assertThat(range.cycles()).isEqualTo(100);
    range.take(RowRange.span(plan, 1, 3));
    // Steps of 1 and 2 are a bit, 0 and 255 eight. Each has a run of its own, of 3, and a rule.
    assertThat(List.of(range.slots(), range.bits())).containsExactly(2, 1 + 8);
    assertThat(range.cycles()).isEqualTo(100 + (10 + 7 + 3) + (10 + 8 * 3));
    assertThat(range.headBytes()).isEqualTo(2 * (2 + 3));
    range.take(RowRange.span(plan, 3, 4));
    // Steps of 1 to 3; 5 or 6; and what is beside another is taken to share its run, all but 0.3.
    assertThat(List.of(range.slots(), range.bits())).containsExactly(3, 2 + 1 + 8);
    assertThat(range.cycles()).isEqualTo(100 + (17 + 2 * 3) + (10 + 3) + (10 + 8 * 3));
    assertThat(range.headBytes()).isCloseTo(5 + 2.3 + 2.3, within(1e-9));
    RowRange counted = new RowRange(table, plan, NARROW, cost);
    counted.takeSlots(RowRange.span(plan, 1, 3));
    assertThat(counted.slots()).isEqualTo(2);
    counted.takeSlots(RowRange.span(plan, 3, 4));
    assertThat(counted.slots()).isEqualTo(3);
    RowPlan noRows = new RowPlan(table, new Echoes(table), slots(table), false);
    RowRange steps = new RowRange(table, noRows, NARROW, cost);
    steps.takeSlots(RowRange.span(noRows, 1, 3));
    assertThat(steps.slots()).isEqualTo(2);
  }

  /** 1 x 31 + 0 and 0 x 31 + 31: two columns whose hashes are equal are two slots all the same. */
  @Test
  void columnsOfOneHashAreTwoSlots() {
    LampTable table =
        table(upTo(3), new int[] {0, 0, 0}, new int[] {1, 0, 1}, new int[] {0, 31, 0});
    assertThat(table.slots).extracting(slot -> slot.length).containsExactly(2, 1);
    assertThat(table.still(1)).isFalse();
  }

  /** Sections are the same if bytes and waves are. */
  @Test
  void sameSections() {
    Section section = new Section(toBytes(2, 0, 0), List.of(new Section.WaveRef(1, toBytes(5, 6))));
    Section same = new Section(toBytes(2, 0, 0), List.of(new Section.WaveRef(1, toBytes(5, 6))));
    Section otherWave = new Section(toBytes(2, 0, 0), List.of(new Section.WaveRef(1, toBytes(5))));
    Section noWave = new Section(toBytes(2, 0, 0), List.of());
    Section otherBytes = new Section(toBytes(2, 0, 1), section.waves());
    assertThat(section.sameAs(same)).isTrue();
    assertThat(
            List.of(section.sameAs(otherWave), section.sameAs(noWave), section.sameAs(otherBytes)))
        .containsOnly(false);
    LampPart part = new LampPart(toBytes(1), Score.of(5, 5, section));
    assertThat(part.sameAs(new LampPart(toBytes(1), Score.of(5, 5, same)))).isTrue();
    assertThat(part.sameAs(new LampPart(toBytes(2), Score.of(5, 5, same)))).isFalse();
    assertThat(part.sameAs(new LampPart(toBytes(1), Score.of(6, 6, same)))).isFalse();
    assertThat(part.sameAs(new LampPart(toBytes(1), Score.of(5, 5, noWave)))).isFalse();
    assertThat(part.sameAs(new LampPart(toBytes(1), new Score(List.of())))).isFalse();
    assertThat(part.dark()).isFalse();
    assertThat(new LampPart(toBytes(1), new Score(List.of())).dark()).isFalse();
    assertThat(new LampPart(toBytes(), Score.of(5, 5, noWave)).dark()).isFalse();
    assertThat(new LampPart(toBytes(), new Score(List.of())).dark()).isTrue();
  }

  /**
   * Behind the header a wave of three bytes, once, then a section of two bytes and a place; so the
   * tables begin 5 bytes and a place behind the wave, and 2 and a place behind the section.
   */
  @ParameterizedTest
  @ValueSource(ints = {2, 3})
  void placesCountBackFromTheTables(int placeBytes) {
    Assembly out = new Assembly(placeBytes);
    int header = 12 + 2 * placeBytes;
    out.bytes.all(new byte[header]);
    byte[] wave = toBytes(7, 8, 9);
    assertThat(out.place(wave, List.of())).isEqualTo(header);
    assertThat(out.place(wave, List.of())).isEqualTo(header);
    byte[] bytes = new byte[2 + placeBytes];
    bytes[0] = 2;
    Section section = new Section(bytes, List.of(new Section.WaveRef(1, wave)));
    assertThat(out.section(section)).isEqualTo(header + 3);
    assertThat(out.section(section)).isEqualTo(header + 3);
    byte[] tables = new byte[1 + placeBytes];
    tables[1] = (byte) (header + 3);
    byte[] whole = out.finish(tables, List.of(1));
    int start = header + 5 + placeBytes;
    assertThat(whole).hasSize(start + 1 + placeBytes);
    assertThat(whole[header + 4]).isEqualTo((byte) (5 + placeBytes));
    assertThat(whole[start + 1]).isEqualTo((byte) (2 + placeBytes));
    assertThat(whole[12]).isEqualTo((byte) whole.length);
    assertThat(whole[12 + placeBytes]).isEqualTo((byte) start);
    for (int i = 1; i < placeBytes; i++) {
      assertThat(whole[header + 4 + i]).isZero();
      assertThat(whole[start + 1 + i]).isZero();
    }
  }

  @Property(tries = 60, seed = "11")
  void sectionsPlayTheirFrames(
      @ForAll @IntRange(min = 1, max = 24) int columns,
      @ForAll @IntRange(min = 2, max = 600) int frames,
      @ForAll @IntRange(min = 0, max = 4) int kind,
      @ForAll boolean gaps,
      @ForAll Random random) {
    LampTable table = random(columns, frames, kind, gaps, random);
    if (table.slots.isEmpty()) {
      return;
    }
    Echoes echoes = new Echoes(table);
    RowPlan plan = new RowPlan(table, echoes, slots(table), true);
    EventCoder events = new EventCoder(table, WIDE);
    StepsCoder steps = new StepsCoder(table, echoes, plan, events, WIDE);
    LampCoder.Options options =
        new LampCoder.Options(WIDE, List.of(), 0, Target.slowestDecodeCost(), false);
    Segmenter segmenter = new Segmenter(table, plan, steps, events, options);
    int from = random.nextInt(frames - 1);
    int to = from + 1 + random.nextInt(frames - from);
    List<Section> ways = new ArrayList<>(segmenter.codings(from, to));
    ways.add(steps.rows(from, to, false));
    ways.add(steps.rows(from, to, true));
    for (Section way : ways) {
      // Twice, to go on with the first instruction.
      assertPlays(
          table.part(from, to), WIDE, events.setup(), Score.of(2 * (to - from), to - from, way));
    }
    for (List<Score.Entry> entries :
        List.of(segmenter.sections(0, frames), segmenter.sectionsAtHolds(0, frames))) {
      assertPlays(table, WIDE, events.setup(), new Score(entries));
      assertThat(new Score(entries).size(WIDE))
          .isLessThanOrEqualTo(5 * events.section(0, frames).length());
    }
  }

  /** Fades, few changes, noise, what repeats, and holds. */
  private static LampTable random(int columns, int frames, int kind, boolean gaps, Random random) {
    int[] numbers = new int[columns];
    int[][] rows = new int[frames][columns];
    for (int c = 0; c < columns; c++) {
      numbers[c] = c == 0 ? 0 : numbers[c - 1] + (gaps && random.nextInt(4) == 0 ? 2 : 1);
      int same = random.nextInt(4) == 0 && c > 0 ? random.nextInt(c) : c;
      int value = random.nextInt(256);
      for (int f = 0; f < frames; f++) {
        if (same < c) {
          value = rows[f][same];
        } else if (kind == 0) {
          value = Math.max(0, Math.min(255, value + random.nextInt(4) - 1));
        } else if (kind == 1) {
          value = random.nextInt(30) == 0 ? random.nextInt(256) : value;
        } else if (kind == 2) {
          value = random.nextInt(256);
        } else if (kind == 3) {
          value = (f % 13) * (f % 13) * (c + 1) % 256;
        } else {
          value = f / 20 % 2 == 0 ? value : random.nextInt(256);
        }
        rows[f][c] = value;
      }
    }
    return table(numbers, rows);
  }

  private static void assertPlays(LampTable table, Score score) {
    assertPlays(table, NARROW, new byte[0], score);
  }

  /**
   * Makes data of the one score, over and over where it is longer than the table; a score of no
   * entries stays as it was set up.
   */
  static void assertPlays(LampTable table, Coding coding, byte[] setup, Score score) {
    int played = score.entries().stream().mapToInt(Score.Entry::frames).sum();
    int frames = played == 0 ? table.frames : played;
    int frameBytes = table.columns[table.columns.length - 1] + 1;
    List<Integer> columns = Arrays.stream(table.columns).boxed().toList();
    byte[] data =
        new Attempt(
                new PackLayout(
                    coding.equals(WIDE) ? 300 : frameBytes,
                    0,
                    List.of(new PackLayout.LampColumns("lamp", columns))),
                List.of(table.columns),
                List.of(new PackScene("scene", frames, false, 20_000, (f, into) -> {})),
                coding,
                Target.slowestDecodeCost(),
                false,
                List.of(List.of(new LampPart(setup, score))),
                List.of(new FoundWaves(1)))
            .data;
    List<int[]> rows = new SecondReader(data).play(0, 3);
    for (int f = 0; f < rows.size(); f++) {
      int[] row = rows.get(f);
      int shown = Math.min(f, frames - 1) % table.frames;
      int[] want = table.row(shown);
      for (int i = 0; i < want.length; i++) {
        if (row[table.columns[i]] != want[i]) {
          assertThat(row[table.columns[i]]).as("frame %d, column %d", f, i).isEqualTo(want[i]);
        }
      }
    }
  }

  /** 100 for each frame and what its lamps take, against 150; the costliest first. */
  @Test
  void framesThatTakeTooLong() {
    Load load = new Load(new FrameOf100(), 150);
    Load any = new Load(new FrameOf100(), 0);
    for (int[] lamps : new int[][] {{20, 30}, {20, 31}, {0, 0}, {90, 10}, {30, 21}}) {
      load.take(lamps);
      any.take(lamps);
    }
    assertThat(load.late()).extracting(Load.Late::frame).containsExactly(3, 1, 4);
    assertThat(load.late()).extracting(Load.Late::cycles).containsExactly(200, 151, 151);
    assertThat(load.late().get(0).cyclesOfLamps().asList()).containsExactly(90, 10);
    assertThat(any.late()).isEmpty();
  }

  private record FrameOf100() implements DecodeCost {
    @Override
    public double megahertz() {
      return 16;
    }

    @Override
    public int cycles(PlayerStep step) {
      return step == PlayerStep.FRAME ? 100 : 0;
    }

    @Override
    public RowCost row() {
      return new RowCost(0, 0, 0, 0);
    }
  }
}
