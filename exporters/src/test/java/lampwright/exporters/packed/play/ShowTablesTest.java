package lampwright.exporters.packed.play;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.Random;
import lampwright.exporters.CancelledException;
import lampwright.exporters.Progress;
import lampwright.exporters.packed.encode.ScenePacker;
import lampwright.exporters.packed.format.ByteSink;
import lampwright.exporters.packed.format.Format;
import lampwright.exporters.target.Target;
import org.junit.jupiter.api.Test;

/** The tables of shows and ceilings as the player in Java reads them, by chance and damaged. */
class ShowTablesTest {
  private static final int SHOWS = 40;

  /** Against the engine's machine, which a plain reading of the rules judges. */
  @Test
  void playerShowsWhatTheEngineShows() throws CancelledException {
    for (long seed = 1000; seed < 1000 + SHOWS; seed++) {
      ShowPlayerTest.trial(seed, 0, new ByteSink());
    }
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
        refused += playsToTheEnd(ShowPlayerTest.signed(bad), random) ? 0 : 1;
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
      byte[] whole = ShowPlayerTest.signed(cut);
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
    assertThatThrownBy(() -> new Unpacker(ShowPlayerTest.signed(alone)))
        .isInstanceOf(PackedDataException.class);
  }

  private static void assertRefused(byte[] packed, int at, int value) {
    byte[] bad = packed.clone();
    assertThat(bad[at]).isNotEqualTo((byte) value);
    bad[at] = (byte) value;
    assertThatThrownBy(() -> new ShowPlayer(ShowPlayerTest.signed(bad)))
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
}
