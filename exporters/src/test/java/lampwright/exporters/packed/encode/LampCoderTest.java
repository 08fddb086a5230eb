package lampwright.exporters.packed.encode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import lampwright.exporters.packed.format.Coding;
import lampwright.exporters.target.Target;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Where a lamp is cut, and that what comes of it plays the lamp's frames by the second reader. */
class LampCoderTest {
  private static final Coding CODING = new Coding(1, 2);

  private static LampCoder coder(
      LampTable table, boolean loop, CueBorders borders, boolean givesUp) {
    LampCoder.Options options =
        new LampCoder.Options(CODING, Speeds.of(20_000), 0, Target.slowestDecodeCost(), givesUp);
    return new LampCoder(table, loop, borders, options, new FoundWaves(1).ofLamp(0));
  }

  private static LampTable table(byte[]... values) {
    return new LampTable(IntStream.range(0, values.length).toArray(), values, values[0].length);
  }

  private static byte[] noise(int count, long seed) {
    byte[] noise = new byte[count];
    new Random(seed).nextBytes(noise);
    return noise;
  }

  /** A piece has four frames or more: so 2, 7 and 97 of 100 are no borders. */
  @Test
  void piecesHaveFourFramesOrMore() {
    CueBorders borders = new CueBorders(List.of(2, 4, 7, 8, 40, 96, 97), List.of());
    LampTable table = table(noise(100, 1));
    assertThat(coder(table, false, borders, false).pieces().asList())
        .containsExactly(0, 4, 8, 40, 96, 100);
    // One that repeats each 20 frames is cut in its first 20, if it goes round.
    byte[] round = new byte[100];
    for (int f = 0; f < 100; f++) {
      round[f] = noise(20, 2)[f % 20];
    }
    assertThat(coder(table(round), true, borders, false).pieces().asList())
        .containsExactly(0, 4, 8, 20);
    assertThat(coder(table(round), false, borders, false).pieces().asList())
        .containsExactly(0, 4, 8, 40, 96, 100);
    assertThat(coder(table, false, CueBorders.NONE, false).pieces().asList())
        .containsExactly(0, 100);
  }

  /** Noise of 1,900 x 35 bytes can't be shorter than 65,279, to which places of two bytes reach. */
  @Test
  void placesThatAreTooShortAreGivenUp() {
    byte[][] values = new byte[35][];
    for (int c = 0; c < values.length; c++) {
      values[c] = noise(2400, c);
    }
    List<Integer> cues = List.of(600, 1200, 1800, 1900);
    CueBorders borders = new CueBorders(cues, cues);
    assertThatThrownBy(() -> coder(table(values), false, borders, true).score(SpeedLevels.NONE))
        .isInstanceOf(PlacesTooShortException.class);
  }

  @Test
  void lampThatNeverChangesHasNoEntries() {
    LampTable table = table(new byte[50], new byte[50]);
    assertThat(coder(table, true, CueBorders.NONE, false).score(SpeedLevels.NONE).entries())
        .isEmpty();
  }

  @Property(tries = 40, seed = "12")
  void scoresPlayTheirFrames(
      @ForAll @IntRange(min = 1, max = 12) int columns,
      @ForAll @IntRange(min = 8, max = 400) int frames,
      @ForAll @IntRange(min = 0, max = 4) int kind,
      @ForAll @IntRange(min = 0, max = 3) int level,
      @ForAll boolean cut,
      @ForAll Random random) {
    byte[][] values = new byte[columns][frames];
    int period = 5 + random.nextInt(40);
    byte[] wave = new byte[period];
    for (int i = 0; i < period; i++) {
      wave[i] = (byte) (127 - 127 * Math.cos(2 * Math.PI * i / period));
    }
    byte[] noise = noise(period, frames);
    int still = random.nextInt(frames);
    for (int c = 0; c < columns; c++) {
      int phase = c * (1 + random.nextInt(3));
      for (int f = 0; f < frames; f++) {
        values[c][f] =
            switch (kind) {
              case 0 -> wave[(f + phase) % period];
              case 1 -> noise[(f + phase) % period];
              case 2 -> (byte) (f < still ? wave[(f + phase) % period] : 7 * c);
              case 3 -> (byte) (f / 30 * 40 + c);
              default -> (byte) (f < still ? 3 : random.nextInt(256));
            };
      }
    }
    LampTable table = table(values);
    List<Integer> borders = cut ? List.of(frames / 3, frames / 2) : List.of();
    SpeedLevels levels = SpeedLevels.NONE;
    for (int i = 0; i < level; i++) {
      levels = levels.raised(0);
    }
    Score score = coder(table, false, new CueBorders(borders, borders), false).score(levels);
    CodersByHandTest.assertPlays(table, CODING, new EventCoder(table, CODING).setup(), score);
  }
}
