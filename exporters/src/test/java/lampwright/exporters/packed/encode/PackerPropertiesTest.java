package lampwright.exporters.packed.encode;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.zip.CRC32;
import lampwright.exporters.packed.Model;
import lampwright.exporters.packed.PackedCorpus;
import lampwright.exporters.packed.SecondReader;
import lampwright.exporters.packed.play.PackedDataException;
import lampwright.exporters.packed.play.Unpacker;
import lampwright.exporters.target.Target;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

class PackerPropertiesTest {
  /** Any table comes back from both decoders, whatever its columns do. */
  @Property(tries = 60, seed = "20261125")
  void anyTableComesBack(
      @ForAll @IntRange(min = 1, max = 90) int frames,
      @ForAll @IntRange(min = 1, max = 5) int lamps,
      @ForAll boolean loop,
      @ForAll long seed) {
    Random random = new Random(seed);
    Model model = new Model();
    for (int i = 0; i < lamps; i++) {
      model.chain(random.nextBoolean(), 1 + random.nextInt(5), 1 + random.nextInt(3));
    }
    model.outputs(random.nextInt(3));
    byte[][] columns = new byte[model.frameBytes][];
    for (int c = 0; c < columns.length; c++) {
      columns[c] = column(random, frames, c, columns);
    }
    PackScene scene =
        new PackScene(
            "any",
            frames,
            loop,
            1_000_000 / (1 + random.nextInt(120)),
            (f, into) -> {
              for (int c = 0; c < into.length; c++) {
                into[c] = columns[c][f];
              }
            });
    byte[] packed =
        Packer.pack(model.layout(), List.of(scene), Target.slowestDecodeCost(), PackProgress.NONE)
            .data();
    List<int[]> rows = new SecondReader(packed).play(0, frames / 2);
    for (int f = 0; f < rows.size(); f++) {
      int shown = f < frames ? f : loop ? f - frames : frames - 1;
      for (int c = 0; c < columns.length; c++) {
        assertThat(rows.get(f)[c])
            .as("frame %d, column %d", f, c)
            .isEqualTo(columns[c][shown] & 255);
      }
    }
  }

  /** No table grows by more than 64 bytes, however many lamps of one byte share it. */
  @Property(tries = 150, seed = "20261127")
  void packedIsNeverLongerThanTheTableAnd64Bytes(
      @ForAll @IntRange(min = 1, max = 40) int frames,
      @ForAll @IntRange(min = 0, max = 10) int chains,
      @ForAll @IntRange(min = 0, max = 30) int outputs,
      @ForAll boolean loop,
      @ForAll long seed) {
    Random random = new Random(seed);
    Model model = new Model();
    for (int i = 0; i < chains; i++) {
      model.chain(random.nextBoolean(), 1 + random.nextInt(3));
    }
    model.outputs(chains == 0 ? Math.max(1, outputs) : outputs);
    byte[][] columns = new byte[model.frameBytes][];
    boolean noise = random.nextBoolean();
    for (int c = 0; c < columns.length; c++) {
      columns[c] = column(random, frames, c, columns);
      if (noise) {
        random.nextBytes(columns[c]);
      }
    }
    PackScene scene =
        new PackScene(
            "any",
            frames,
            loop,
            20000,
            (f, into) -> {
              for (int c = 0; c < into.length; c++) {
                into[c] = columns[c][f];
              }
            });
    byte[] packed =
        Packer.pack(model.layout(), List.of(scene), Target.slowestDecodeCost(), PackProgress.NONE)
            .data();
    assertThat(packed.length).isLessThanOrEqualTo(frames * columns.length + 64);
    assertThat(new SecondReader(packed).play(0, 0).get(frames - 1)[0])
        .isEqualTo(columns[0][frames - 1] & 255);
  }

  private static byte[] column(Random random, int frames, int number, byte[][] before) {
    byte[] v = new byte[frames];
    int kind = random.nextInt(7);
    if (kind == 0 && number > 0) {
      return before[random.nextInt(number)];
    }
    int period = 1 + random.nextInt(20);
    int level = random.nextInt(256);
    for (int f = 0; f < frames; f++) {
      switch (kind) {
        case 1 -> v[f] = (byte) level;
        case 2 -> v[f] = (byte) (f % period < period / 2 ? level : 0);
        case 3 -> v[f] = (byte) (f * level / frames);
        case 4 -> v[f] = (byte) random.nextInt(256);
        case 5 -> v[f] = number > 0 ? (byte) (((before[number - 1][f] & 255) * level) >> 8) : 9;
        default -> {
          int at = Math.floorMod(f - number, period);
          v[f] = (byte) (255 * Math.min(at, period - at) / period);
        }
      }
    }
    return v;
  }

  /** Damage under a forged checksum never leads the decoder anywhere but to a fault or a frame. */
  @Property(tries = 400, seed = "20261126")
  void damagedDataIsRefusedOrPlayedWithinBounds(@ForAll long seed) {
    Random random = new Random(seed);
    List<String> names = List.of("hazards", "chase-tail", "tint-sweep", "one-pixel", "seam");
    byte[] bad = PackedCorpus.packed(PackedCorpus.table(names.get(random.nextInt(5))));
    for (int hits = 1 + random.nextInt(6); hits > 0; hits--) {
      bad[11 + random.nextInt(bad.length - 11)] = (byte) random.nextInt(256);
    }
    CRC32 crc = new CRC32();
    crc.update(bad, 6, bad.length - 6);
    for (int i = 0; i < 4; i++) {
      bad[2 + i] = (byte) (crc.getValue() >> (8 * i));
    }
    List<PackedDataException> refusals = new ArrayList<>();
    try {
      Unpacker unpacker = new Unpacker(bad);
      byte[] buffer = new byte[unpacker.frameBytes()];
      unpacker.select(0, buffer);
      for (int f = 0; f < 60; f++) {
        unpacker.frame(buffer);
      }
    } catch (PackedDataException e) {
      refusals.add(e);
    }
    assertThat(refusals).hasSizeLessThanOrEqualTo(1);
  }
}
