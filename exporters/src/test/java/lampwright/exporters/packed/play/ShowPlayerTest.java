package lampwright.exporters.packed.play;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.zip.CRC32;
import lampwright.engine.render.ShowFrames;
import lampwright.engine.situation.ShowMachine;
import lampwright.exporters.CancelledException;
import lampwright.exporters.OutsideTools;
import lampwright.exporters.Progress;
import lampwright.exporters.packed.encode.ScenePacker;
import lampwright.exporters.packed.format.ByteSink;
import lampwright.exporters.packed.format.Format;
import lampwright.exporters.packed.format.ShowFormat;
import lampwright.exporters.target.Target;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Four machines, one drive: the engine's, which a plain reading of the rules judges, the player of
 * the tables in Java, the C code under gcc's sanitizers, and the assembler on a simulated
 * ATmega328P. Shows and drives are by chance.
 */
class ShowPlayerTest {
  private static final String SOURCES = "src/main/resources/lampwright/exporters/firmware/src";
  private static final int FRAMES = 250;
  private static final String CEILING = "-DLAMPWRIGHT_CEILING=1";

  @TempDir Path dir;

  /** A case of situations_check.c and what must come of it. */
  private static byte[] trial(long seed, int rounds, ByteSink in) throws CancelledException {
    RandomShow made = new RandomShow(seed);
    byte[] packed = made.packed();
    ShowFrames frames = new ShowFrames(made.show);
    ShowMachine machine = frames.machine();
    ShowPlayer player = new ShowPlayer(packed);
    int bytes = frames.frameBytes();
    in.number(packed.length, 4).all(packed).u16(bytes).number(FRAMES, 4).u16(rounds);
    byte[] want = new byte[bytes];
    byte[] got = new byte[bytes];
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    boolean dense = made.upTo(2) == 0;
    for (int f = 0; f < FRAMES; f++) {
      int readings = dense ? made.upTo(2 * RandomShow.INPUTS) : made.upTo(3);
      in.u16(readings);
      for (; readings > 0; readings--) {
        int input = made.upTo(RandomShow.INPUTS);
        int reading = made.reading(input);
        in.u8(input).u16(reading);
        machine.take(input, reading);
        player.take(input, reading);
      }
      frames.next(want);
      player.frame(got);
      assertThat(player.sent(got)).as("seed %d, frame %d", seed, f).isEqualTo(want);
      all.write(0);
      all.writeBytes(want);
    }
    return all.toByteArray();
  }

  /** Cases of as many shows in the form of situations_check.c, and what must come of them. */
  @SuppressWarnings("ArrayRecordComponent")
  private record Trials(byte[] in, List<byte[]> wanted, long firstSeed) {
    static Trials of(long firstSeed, int shows, int rounds) throws CancelledException {
      ByteSink in = new ByteSink();
      List<byte[]> wanted = new ArrayList<>();
      for (long seed = firstSeed; seed < firstSeed + shows; seed++) {
        wanted.add(trial(seed, rounds, in));
      }
      return new Trials(in.toBytes(), wanted, firstSeed);
    }

    void judge(byte[] out) {
      int at = 0;
      for (int i = 0; i < wanted.size(); i++) {
        byte[] want = wanted.get(i);
        int end = Math.min(at + want.length, out.length);
        byte[] got = Arrays.copyOfRange(out, at, end);
        assertThat(Arrays.mismatch(got, want)).as("seed %d", firstSeed + i).isEqualTo(-1);
        at = end;
      }
      assertThat(at).isEqualTo(out.length);
    }
  }

  @Test
  void tablesInJavaAndInCShowWhatTheEngineShows()
      throws IOException, InterruptedException, CancelledException {
    int rounds = Integer.getInteger("lampwright.damages", 40);
    Trials trials = Trials.of(0, Integer.getInteger("lampwright.shows", 300), rounds);
    Path program = portable(dir);
    trials.judge(AvrSituations.execute(dir, List.of(program.toString()), trials.in()));
  }

  /**
   * The C sources for all controllers, with sanitizers, as a program of this machine.
   *
   * @param room what there is room for; all of it, unless told otherwise
   */
  static Path portable(Path dir, String... room) throws IOException, InterruptedException {
    OutsideTools.onThisMachine().find("gcc", "gcc");
    Path program = dir.resolve("situations");
    List<String> build = new ArrayList<>(List.of("gcc", "-std=c99", "-O1", "-g", "-Wall"));
    build.addAll(List.of("-Wextra", "-Wpedantic", "-Werror", "-Isrc/test/c", "-I" + SOURCES));
    build.addAll(List.of("-fsanitize=address,undefined", "-fno-sanitize-recover=all"));
    build.addAll(List.of("-DLAMPWRIGHT_MAX_LAMPS=255", "src/test/c/situations_check.c"));
    build.addAll(List.of(SOURCES + "/lampwright_player.c", SOURCES + "/lampwright_situations.c"));
    build.addAll(List.of("-DLAMPWRIGHT_CEILING=1", SOURCES + "/lampwright_ceiling.c"));
    build.addAll(List.of(room));
    build.addAll(List.of("-o", program.toString()));
    AvrSituations.execute(dir, build, new byte[0]);
    return program;
  }

  /** With room for any of the shows, for times of each width. */
  @Test
  void assemblerShowsWhatTheEngineShowsAndWritesItsOwnAloneWhenTablesAreDamaged()
      throws IOException, InterruptedException, CancelledException {
    int rounds = Integer.getInteger("lampwright.damages", 5);
    Trials trials = Trials.of(0, Integer.getInteger("lampwright.shows", 100), rounds);
    AvrSituations avr = new AvrSituations(dir);
    List<Path> firmware = new ArrayList<>();
    for (int timeBytes : new int[] {1, 2, 4}) {
      firmware.add(
          avr.build(new ShowRoom(timeBytes, RandomShow.INPUTS, 4, 16, 150, 8, 0xFFFF), CEILING));
    }
    trials.judge(avr.run(trials.in(), firmware));
    System.out.print(avr.report());
  }

  /** With the room and the parts that a show needs and no more, as firmware has them. */
  @Test
  void assemblerOfPartsShowsWhatTheEngineShows()
      throws IOException, InterruptedException, CancelledException {
    AvrSituations avr = new AvrSituations(dir);
    for (long seed = 500; seed < 512; seed++) {
      Trials trials = Trials.of(seed, 1, 20);
      RandomShow made = new RandomShow(seed);
      String ceiling = CEILING.replace('1', made.rig.ceiling() ? '1' : '0');
      Path firmware = avr.build(ShowRoom.of(made.packed()), ceiling);
      trials.judge(avr.run(trials.in(), List.of(firmware)));
    }
  }

  /** More than there is memory for, so that bits would be kept beyond all that situations have. */
  @Test
  void conditionsBeyondTheMemoryMakeAllDarkOnAvr()
      throws IOException, InterruptedException, CancelledException {
    int situations = 6;
    byte[] scenes =
        ScenePacker.pack(
                "packed", new RandomShow(1).tables(), Target.slowestDecodeCost(), Progress.SILENT)
            .data();
    ByteSink data = new ByteSink().all(scenes).u8(1).u8(0).u8(0).u8(situations).u8(2).u8(1);
    for (int i = 0; i < situations; i++) {
      data.u8(ShowFormat.NONE).u8(ShowFormat.NONE);
    }
    for (int i = 0; i < situations; i++) {
      data.u8(0).u8(255);
      for (int c = 0; c < 255; c++) {
        data.u8(ShowFormat.TAPS | ShowFormat.NEVER).u8(0).u8(0).u8(1).u8(1).u8(1).u8(1);
      }
    }
    for (int lamp = 0; lamp < scenes[Format.LAMPS_AT]; lamp++) {
      data.u8(0);
    }
    byte[] bad = data.toBytes();
    bad[Format.FLAGS_AT] |= Format.SHOW;
    bad[Format.SIZE_AT] = (byte) bad.length;
    bad[Format.SIZE_AT + 1] = (byte) (bad.length >> 8);
    int frameBytes = new Unpacker(scenes).frameBytes();
    ByteSink in = new ByteSink().number(bad.length, 4).all(signed(bad)).u16(frameBytes);
    AvrSituations avr = new AvrSituations(dir);
    Path firmware = avr.build(new ShowRoom(1, 1, 0, situations, 2, 1, 0xFFFF));
    byte[] out = avr.run(in.number(1, 4).u16(0).u16(0).toBytes(), List.of(firmware));
    byte[] dark = new byte[1 + frameBytes];
    dark[0] = 6; // LAMPWRIGHT_FAULT
    assertThat(out).isEqualTo(dark);
  }

  /** Without a show the data is to the byte what it was before there were shows. */
  @Test
  void showIsBehindScenesThatStayAsTheyAre() throws CancelledException {
    RandomShow made = new RandomShow(1);
    byte[] with = made.packed();
    byte[] without =
        ScenePacker.pack("packed", made.tables(), Target.slowestDecodeCost(), Progress.SILENT)
            .data();
    assertThat(without[Format.FLAGS_AT]).isZero();
    assertThat(Arrays.copyOfRange(with, Format.FRAME_BYTES_AT, Format.SIZE_AT))
        .isEqualTo(Arrays.copyOfRange(without, Format.FRAME_BYTES_AT, Format.SIZE_AT));
    assertThat(Arrays.copyOfRange(with, Format.SIZE_AT + 2, without.length))
        .isEqualTo(Arrays.copyOfRange(without, Format.SIZE_AT + 2, without.length));
  }

  @Test
  void dataWithoutAShowIsRefused() throws CancelledException {
    byte[] without =
        ScenePacker.pack(
                "packed", new RandomShow(1).tables(), Target.slowestDecodeCost(), Progress.SILENT)
            .data();
    assertThatThrownBy(() -> new ShowPlayer(without)).isInstanceOf(PackedDataException.class);
  }

  /** Damaged, with the checksum put right: refused as it is opened, or played to the end. */
  @Test
  void damagedTablesAreRefusedOrPlayed() throws CancelledException {
    Random random = new Random(15);
    int refused = 0;
    for (long seed = 0; seed < 100; seed++) {
      byte[] packed = new RandomShow(seed).packed();
      int show = new Unpacker(packed).data().showAt;
      for (int round = 0; round < 50; round++) {
        byte[] bad = packed.clone();
        for (int hits = random.nextInt(3); hits >= 0; hits--) {
          bad[show + random.nextInt(bad.length - show)] = (byte) random.nextInt(256);
        }
        refused += playsToTheEnd(signed(bad), random) ? 0 : 1;
      }
    }
    assertThat(refused).isBetween(1000, 4900);
  }

  /** Cut anywhere, with size and checksum put right. */
  @Test
  void cutTablesAreRefused() throws CancelledException {
    byte[] packed = new RandomShow(3).packed();
    int show = new Unpacker(packed).data().showAt;
    for (int size = show + 1; size < packed.length; size++) {
      byte[] cut = Arrays.copyOf(packed, size);
      cut[Format.SIZE_AT] = (byte) size;
      cut[Format.SIZE_AT + 1] = (byte) (size >> 8);
      byte[] whole = signed(cut);
      assertThatThrownBy(() -> new ShowPlayer(whole)).isInstanceOf(PackedDataException.class);
    }
  }

  // Of a frame of 18 bytes: limit, a run of 15 columns of 3 weights, runs of an output each.
  @Test
  void ceilingsThatBreakTheRulesAreRefused() throws CancelledException {
    byte[] packed = new RandomShow(1).packed();
    assertThat(packed[Format.FLAGS_AT]).isEqualTo((byte) (Format.SHOW | Format.CEILING));
    int at = new Unpacker(packed).data().ceilingAt;
    new ShowPlayer(packed);
    assertRefused(packed, at + 4, 0); // a run of no columns
    assertRefused(packed, at + 4, 14); // one column has no weight
    assertRefused(packed, at + 4, 16); // one too many
    assertRefused(packed, at + 6, 0); // no period
    assertRefused(packed, at + 6, 255); // runs over the end
    assertRefused(packed, packed.length - 2, 0); // no bytes
    assertRefused(packed, packed.length - 2, 5);
    assertRefused(packed, packed.length - 1, 255); // begins before the show
    assertRefused(packed, packed.length - 2, packed[packed.length - 2] - 1);
    byte[] alone = packed.clone();
    alone[Format.FLAGS_AT] = Format.CEILING;
    assertThatThrownBy(() -> new Unpacker(signed(alone))).isInstanceOf(PackedDataException.class);
  }

  private static void assertRefused(byte[] packed, int at, int value) {
    byte[] bad = packed.clone();
    assertThat(bad[at]).isNotEqualTo((byte) value);
    bad[at] = (byte) value;
    assertThatThrownBy(() -> new ShowPlayer(signed(bad)))
        .as("byte %d made %d", at, value)
        .isInstanceOf(PackedDataException.class);
  }

  private static boolean playsToTheEnd(byte[] data, Random random) {
    try {
      ShowPlayer player = new ShowPlayer(data);
      byte[] buffer = new byte[player.frameBytes()];
      for (int f = 0; f < 40; f++) {
        player.take(0, 1400 + random.nextInt(200));
        player.frame(buffer);
      }
      return true;
    } catch (PackedDataException refused) {
      assertThat(refused.damage()).isEqualTo(PackedDataException.Damage.CONTENTS);
      return false;
    }
  }

  static byte[] signed(byte[] data) {
    CRC32 crc = new CRC32();
    crc.update(data, Format.CHECKED_FROM, data.length - Format.CHECKED_FROM);
    for (int i = 0; i < 4; i++) {
      data[Format.CRC_AT + i] = (byte) (crc.getValue() >> (8 * i));
    }
    return data;
  }
}
