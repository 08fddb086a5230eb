package lampwright.exporters.proof;

import static org.assertj.core.api.Assertions.assertThat;

import lampwright.engine.time.Ratio;
import lampwright.exporters.target.LineLimits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Edges by hand, in cycles of 8 ns, against the WS2812B data sheet: T0H 400, T0L 850, T1H 800 and
 * T1L 450 ns, each 150 ns more or less; a reset of 300 us.
 */
class ChainJudgeTest {
  private static final LineLimits WS2812B =
      new LineLimits(
          new LineLimits.Range(250, 550),
          new LineLimits.Range(700, 1000),
          new LineLimits.Range(650, 950),
          new LineLimits.Range(300, 600),
          new LineLimits.Range(650, 1850));

  private static final long RESET = 37_500;
  private static final int T0H = 50;
  private static final int T0L = 106;
  private static final int T1H = 100;
  private static final int T1L = 56;

  /** Two bytes of the chain, behind one of another. */
  private static final byte[] TABLE = {9, (byte) 0xA5, 0x0F, 9, (byte) 0x80, 0x01};

  private final Faults faults = new Faults();
  private final FrameClock clock = new FrameClock(Ratio.of(100_000), 8);
  private ChainJudge judge = judge(WS2812B);
  private long now = 1000;
  private long fall;

  private ChainJudge judge(LineLimits limits) {
    ChainLine line = new ChainLine(2, 1, 2, limits, 300_000);
    return new ChainJudge(4, line, new ExpectedFrames(TABLE, 3, true), faults, clock, 8);
  }

  private void bit(int high, int low) {
    judge.changed(true, now);
    fall = now + high;
    judge.changed(false, fall);
    now += high + low;
  }

  private void bits(int value, int count) {
    for (int i = count - 1; i >= 0; i--) {
      boolean one = (value >> i & 1) != 0;
      bit(one ? T1H : T0H, one ? T1L : T0L);
    }
  }

  /** The line stays low for so long, then a 0 bit begins another frame. */
  private void reset(long cycles) {
    now = fall + cycles;
    bit(T0H, T0L);
  }

  @Test
  void framesOfRightTimesAreRight() {
    judge.changed(false, 10); // no edge of a bit
    assertThat(clock.opened()).isFalse();
    bits(0xA50F, 16);
    assertThat(clock.opened()).isTrue();
    assertThat(clock.nominal(0)).isEqualTo(1000);
    assertThat(judge.frames()).isZero();
    reset(RESET);
    bits(0x8001 & 0x7FFF, 15); // reset() sent a 0 where frame 1 has a 1
    reset(RESET + 100);
    assertThat(judge.frames()).isEqualTo(2);
    assertThat(judge.bitsCompared()).isEqualTo(32);
    assertThat(judge.bitsWrong()).isEqualTo(1);
    assertThat(judge.framesWrong()).isEqualTo(1);
    assertThat(judge.outside()).isZero();
    assertThat(faults.words()).containsExactly("chain 4, frame 1: byte 0 is 00, expected 80");
    Figures figures = new Figures();
    judge.report(figures);
    assertThat(figures.all())
        .containsEntry("/chains/4/pin", "GP2")
        .containsEntry("/chains/4/framesCompared", "2")
        .containsEntry("/chains/4/framesWrong", "1")
        .containsEntry("/chains/4/bitsCompared", "32")
        .containsEntry("/chains/4/bitsWrong", "1")
        .containsEntry("/chains/4/bitsOutsideLimits", "0")
        .containsEntry("/chains/4/leastResetUs", "300.0")
        .containsEntry("/chains/4/t0h/minNs", "400.0")
        .containsEntry("/chains/4/t0h/maxNs", "400.0")
        .containsEntry("/chains/4/t0l/maxNs", "848.0")
        .containsEntry("/chains/4/t1h/minNs", "800.0")
        .containsEntry("/chains/4/t1l/minNs", "448.0")
        .containsEntry("/chains/4/period/minNs", "1248.0");
  }

  /** A low time of a cycle less than 300 us is no reset, but much too long. */
  @Test
  void shorterPauseIsNoReset() {
    bits(0xA50F, 16);
    reset(RESET - 1);
    assertThat(judge.frames()).isZero();
    assertThat(judge.outside()).isEqualTo(1);
    assertThat(faults.words()).containsExactly("chain 4, frame 0, bit 16: T1L 299992.0 ns");
  }

  @ParameterizedTest
  @CsvSource({
    "31, 106, T0H 248.0 ns", "32, 106,", "68, 106,", "69, 106, T0H 552.0 ns",
    "50, 87, T0L 696.0 ns", "50, 88,", "50, 125,", "50, 126, T0L 1008.0 ns",
    "81, 56, T1H 648.0 ns", "82, 56,", "118, 56,", "119, 56, T1H 952.0 ns",
    "100, 37, T1L 296.0 ns", "100, 38,", "100, 75,", "100, 76, T1L 608.0 ns",
    "75, 106, T0H 600.0 ns", "76, 56, T1H 608.0 ns"
  })
  void timesOutsideTheDataSheetAreFound(int high, int low, String found) {
    bit(high, low);
    bit(T0H, T0L);
    assertThat(judge.outside()).isEqualTo(found == null ? 0 : 1);
    if (found != null) {
      assertThat(faults.words().get(0)).startsWith("chain 4, frame 0, bit ").endsWith(found);
    }
  }

  /** 1,250 ns more or less 30: high and low are inside their limits each, but not both. */
  @ParameterizedTest
  @CsvSource({"50, 102, 1", "50, 103, 0", "50, 110, 0", "50, 111, 1"})
  void lengthOfABitHasLimitsToo(int high, int low, int outside) {
    judge =
        judge(
            new LineLimits(
                WS2812B.t0h(),
                WS2812B.t0l(),
                WS2812B.t1h(),
                WS2812B.t1l(),
                new LineLimits.Range(1220, 1280)));
    bit(high, low);
    bit(high, low);
    assertThat(judge.outside()).isEqualTo(outside);
  }

  /** 0xA5 and 0x0F are expected: 0x5A is wrong in all bits, 0x0E in one. */
  @Test
  void wrongBitsAreCountedAndTheFirstByteIsTold() {
    bits(0x5A0E, 16);
    reset(RESET);
    assertThat(judge.bitsWrong()).isEqualTo(9);
    assertThat(judge.framesWrong()).isEqualTo(1);
    assertThat(faults.count()).isEqualTo(1);
    assertThat(faults.words()).containsExactly("chain 4, frame 0: byte 0 is 5A, expected A5");
  }

  @ParameterizedTest
  @CsvSource({"15, 0x5287", "17, 0x14A1F"})
  void frameOfOtherLengthIsWrongAltogether(int count, String sent) {
    bits(Integer.decode(sent), count);
    reset(RESET);
    assertThat(judge.framesWrong()).isEqualTo(1);
    assertThat(judge.bitsWrong()).isEqualTo(16);
    assertThat(faults.words()).containsExactly("chain 4, frame 0: " + count + " bits, expected 16");
  }
}
