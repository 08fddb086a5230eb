package lampwright.exporters.packed.encode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.common.primitives.ImmutableIntArray;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import lampwright.exporters.packed.play.Unpacker;
import lampwright.exporters.target.Target;
import org.junit.jupiter.api.Test;

class SpeedTuningTest {
  private static final int COLUMNS = 12;
  private static final int FRAMES = 200;
  private static final List<Integer> BORDER = List.of(100);

  private static final byte[] NOISE = new byte[100 * COLUMNS];

  static {
    new Random(20261130).nextBytes(NOISE);
  }

  /**
   * Noise for a hundred frames, which are bytes as they are; then each column fades for a while at
   * a rate of its own, which is shortest in bits.
   */
  private static final PackScene SCENE =
      new PackScene(
          "two cues",
          FRAMES,
          true,
          20_000,
          (frame, into) -> {
            for (int c = 0; c < COLUMNS; c++) {
              int fades = Math.min(8, frame - 100) * (c + 3) / 11 + 7 * c;
              into[c] = frame < 100 ? NOISE[frame * COLUMNS + c] : (byte) fades;
            }
          },
          List.of(new CueBorders(BORDER, BORDER)));

  @Test
  void onlyTheCueThatIsLateIsCodedAnew() {
    List<SpeedLevels> asked = new ArrayList<>();
    byte[] shortest = pack(0, asked);
    assertThat(asked).containsExactly(SpeedLevels.NONE);
    double wireMicros = PackerTest.worst(shortest) / 16.0 * 4 * 0.99;
    asked.clear();
    byte[] quicker = pack(wireMicros, asked);
    assertThat(asked).hasSizeGreaterThan(1);
    assertThat(asked).allSatisfy(levels -> assertThat(levels.at(0)).isZero());
    // A quarter of the wire's time at 16 MHz.
    assertThat(PackerTest.worst(quicker)).isLessThanOrEqualTo((int) (wireMicros * 16 / 4));
    assertThat(quicker.length).isBetween(shortest.length + 1, shortest.length * 13 / 10);
    assertPlays(quicker);
  }

  @Test
  void levelsRiseByPiece() {
    SpeedLevels levels = SpeedLevels.NONE.raised(2).raised(0).raised(2).raised(2);
    assertThat(IntStream.range(0, 5).map(levels::at)).containsExactly(1, 0, 3, 0, 0);
    assertThat(levels.most()).isEqualTo(3);
    assertThat(SpeedLevels.NONE.most()).isZero();
    assertThatThrownBy(() -> levels.raised(2)).hasMessageContaining("between 1 and 3");
  }

  @Test
  void frameOfALaterRoundIsInThePieceThatItRepeats() {
    LampPart part =
        new LampPart(new byte[0], new Score(List.of()), ImmutableIntArray.of(0, 30, 50));
    assertThat(IntStream.of(0, 29, 30, 49, 50, 79, 80, 130).map(part::pieceAt))
        .containsExactly(0, 0, 1, 1, 0, 0, 1, 1);
    assertThat(new LampPart(new byte[0], new Score(List.of())).pieceAt(7)).isZero();
  }

  private static byte[] pack(double wireMicros, List<SpeedLevels> asked) {
    List<Integer> columns = IntStream.range(0, COLUMNS).boxed().toList();
    return Packer.pack(
            new PackLayout(
                COLUMNS, wireMicros, List.of(new PackLayout.LampColumns("bar", columns))),
            List.of(SCENE),
            Target.slowestDecodeCost(),
            (scene, lamp, levels) -> {
              asked.add(levels);
              return scene.part(lamp, levels);
            },
            PackProgress.NONE)
        .data();
  }

  private static void assertPlays(byte[] packed) {
    Unpacker unpacker = new Unpacker(packed);
    byte[] want = new byte[COLUMNS];
    byte[] got = new byte[COLUMNS];
    unpacker.select(0, got);
    for (int f = 0; f < 2 * FRAMES; f++) {
      SCENE.source().read(f % FRAMES, want);
      unpacker.frame(got);
      assertThat(got).as("frame %d", f).isEqualTo(want);
    }
  }
}
