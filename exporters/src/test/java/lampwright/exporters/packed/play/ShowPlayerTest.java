package lampwright.exporters.packed.play;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
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
  static byte[] trial(long seed, int rounds, ByteSink in) throws CancelledException {
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

  /**
   * Damaged tables that the decoder accepts mean the same to the C code. Where two counters are in
   * one slot, the text of the format leaves open what comes of it.
   */
  @Test
  void damagedTablesMeanTheSameInC() throws IOException, InterruptedException, CancelledException {
    ByteSink in = new ByteSink();
    List<byte[]> wanted = new ArrayList<>();
    List<String> names = new ArrayList<>();
    Random random = new Random(20261130);
    for (long seed = 0; seed < Integer.getInteger("lampwright.shows", 40); seed++) {
      byte[] packed = new RandomShow(seed).packed();
      int show = new Unpacker(packed).data().showAt;
      for (int round = 0; round < Integer.getInteger("lampwright.damages", 40); round++) {
        byte[] bad = packed.clone();
        String name = "seed " + seed;
        for (int hits = random.nextInt(2); hits >= 0; hits--) {
          int at = show + random.nextInt(bad.length - show);
          bad[at] =
              (byte)
                  (random.nextBoolean() ? random.nextInt(256) : bad[at] ^ 1 << random.nextInt(8));
          name += ", byte " + (at - show) + " made " + bad[at];
        }
        RandomShow made = new RandomShow(seed);
        Optional<byte[]> want = played(signed(bad), made, in);
        if (want.isPresent()) {
          wanted.add(want.get());
          names.add(name);
        }
      }
    }
    byte[] out = AvrSituations.execute(dir, List.of(portable(dir).toString()), in.toBytes());
    int at = 0;
    for (int i = 0; i < wanted.size(); i++) {
      byte[] got = Arrays.copyOfRange(out, at, at + wanted.get(i).length);
      assertThat(Arrays.mismatch(got, wanted.get(i))).as(names.get(i)).isEqualTo(-1);
      at += got.length;
    }
    assertThat(at).isEqualTo(out.length);
  }

  /** A case of situations_check.c and what the decoder shows; none if it refuses. */
  private static Optional<byte[]> played(byte[] data, RandomShow made, ByteSink in) {
    ByteSink readings = new ByteSink();
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    try {
      ShowPlayer player = new ShowPlayer(data);
      if (sharesSlots(data)) {
        return Optional.empty();
      }
      int bytes = player.frameBytes();
      byte[] frame = new byte[bytes];
      readings.number(data.length, 4).all(data).u16(bytes).number(60, 4).u16(0);
      for (int f = 0; f < 60; f++) {
        int count = made.upTo(2 * RandomShow.INPUTS);
        readings.u16(count);
        for (; count > 0; count--) {
          int input = made.upTo(player.room().inputs());
          int reading = made.reading(made.upTo(RandomShow.INPUTS));
          readings.u8(input).u16(reading);
          player.take(input, reading);
        }
        player.frame(frame);
        all.write(0);
        all.writeBytes(player.sent(frame));
      }
    } catch (PackedDataException refused) {
      return Optional.empty();
    }
    in.all(readings.toBytes());
    return Optional.of(all.toByteArray());
  }

  private static boolean sharesSlots(byte[] data) {
    Unpacker unpacker = new Unpacker(data);
    int[] frames = IntStream.range(0, unpacker.scenes()).map(unpacker::frames).toArray();
    List<Integer> slots = new ArrayList<>();
    for (ShowTables.TableSituation one : new ShowTables(unpacker.data(), frames).situations) {
      one.after().ifPresent(timer -> slots.add(timer.slot()));
      one.linger().ifPresent(timer -> slots.add(timer.slot()));
      Stream.of(one.last(), one.asked())
          .flatMap(Optional::stream)
          .map(ShowTables.Timer::slot)
          .distinct()
          .forEach(slots::add);
      for (ShowTables.TableCondition condition : one.conditions()) {
        condition.taps().ifPresent(taps -> slots.addAll(List.of(taps.slot(), taps.countSlot())));
      }
    }
    return slots.size() != Set.copyOf(slots).size();
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

  static byte[] signed(byte[] data) {
    CRC32 crc = new CRC32();
    crc.update(data, Format.CHECKED_FROM, data.length - Format.CHECKED_FROM);
    for (int i = 0; i < 4; i++) {
      data[Format.CRC_AT + i] = (byte) (crc.getValue() >> (8 * i));
    }
    return data;
  }
}
