package lampwright.exporters.proof;

import static org.assertj.core.api.Assertions.assertThat;

import lampwright.engine.time.Ratio;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Pulses by hand: frames of 1,600,000 cycles, of which those from a quarter on to a sixteenth
 * before the end are looked at; pulses of 25,500 cycles, of which a byte's 255 parts are 100 each.
 */
class OutputJudgeTest {
  private static final long FRAME = 1_600_000;
  private static final long START = 7;
  private static final long BEGIN = START + FRAME / 4;
  private static final long END = START + FRAME - FRAME / 16;
  private static final int PERIOD = 25_500;

  /** Byte 1 of frames of 2: 51, 0, 255. */
  private static final byte[] TABLE = {9, 51, 9, 0, 9, (byte) 255};

  private final Faults faults = new Faults();
  private final FrameClock clock = new FrameClock(Ratio.of(FRAME), 8);
  private final OutputJudge judge =
      new OutputJudge(3, 17, 1, new ExpectedFrames(TABLE, 2, true), faults, clock);

  private void pulses(long from, int count, int high, int period) {
    for (int i = 0; i < count; i++) {
      judge.changed(true, true, from + (long) i * period);
      judge.changed(false, true, from + (long) i * period + high);
    }
  }

  @Test
  void rightDutiesAreRight() {
    clock.open(START);
    assertThat(judge.gpio()).isEqualTo(17);
    assertThat(judge.at()).isEqualTo(1);
    pulses(BEGIN, 10, 5100, PERIOD);
    judge.advance(END - 1);
    assertThat(judge.frames()).isZero();
    judge.advance(END);
    assertThat(judge.frames()).isEqualTo(1);
    judge.advance(END + FRAME);
    judge.changed(true, true, END + FRAME + 1);
    judge.advance(END + 2 * FRAME);
    assertThat(judge.frames()).isEqualTo(3);
    assertThat(judge.wrong()).isZero();
    assertThat(faults.count()).isZero();
  }

  /** An edge is judged with the frame that it is in, though nothing else told of the time. */
  @Test
  void edgesTellTheTime() {
    clock.open(START);
    pulses(BEGIN, 10, 5100, PERIOD);
    judge.changed(true, true, BEGIN + FRAME + 10);
    assertThat(judge.frames()).isEqualTo(1);
    judge.advance(END + FRAME);
    assertThat(faults.words()).containsExactly("output 3, frame 1: no whole pulse to measure");
  }

  /** Two cycles are what a divider with a fraction may move an edge by. */
  @ParameterizedTest
  @CsvSource({"5097, 1", "5098, 0", "5102, 0", "5103, 1"})
  void pulseOfAnotherWidthIsFound(int high, int wrong) {
    clock.open(START);
    pulses(BEGIN + 1000, 10, high, PERIOD);
    judge.advance(END);
    assertThat(judge.wrong()).isEqualTo(wrong);
    if (wrong > 0) {
      assertThat(faults.words())
          .containsExactly(
              "output 3, frame 0: a pulse of "
                  + high
                  + " in 25500 cycles, expected duty 51 of 255");
    }
  }

  /** One of many is enough, and does not count for the frame after it. */
  @Test
  void oneWrongPulseIsFound() {
    clock.open(START);
    pulses(BEGIN, 3, 5100, PERIOD);
    pulses(BEGIN + 3L * PERIOD, 1, 9000, PERIOD);
    pulses(BEGIN + 4L * PERIOD, 3, 5100, PERIOD);
    judge.advance(END);
    assertThat(judge.wrong()).isEqualTo(1);
    judge.advance(END + FRAME);
    assertThat(judge.frames()).isEqualTo(2);
    assertThat(judge.wrong()).isEqualTo(1);
  }

  /** While a new value comes into force, and before the first frame, nothing is looked at. */
  @Test
  void pulsesOutsideTheMiddleAreLeftOut() {
    pulses(0, 1, 2, 4);
    clock.open(START);
    pulses(BEGIN - 2L * PERIOD, 1, 100, PERIOD);
    pulses(BEGIN + 10, 5, 5100, PERIOD);
    judge.advance(END);
    assertThat(judge.wrong()).isZero();
    assertThat(judge.frames()).isEqualTo(1);
  }

  @Test
  void levelThatStaysIsADutyOfNoneOrAll() {
    clock.open(START);
    judge.changed(true, true, START + 1);
    judge.advance(END);
    assertThat(faults.words()).containsExactly("output 3, frame 0: duty 255, expected 51");
    judge.advance(END + FRAME);
    assertThat(faults.words()).contains("output 3, frame 1: duty 255, expected 0");
    judge.advance(END + 2 * FRAME);
    assertThat(judge.wrong()).isEqualTo(2);
  }

  @Test
  void darkLevelWhereItShouldBeLitIsFound() {
    clock.open(START);
    judge.changed(false, true, START + 1);
    judge.advance(END + 2 * FRAME);
    assertThat(faults.words())
        .containsExactly(
            "output 3, frame 0: duty 0, expected 51", "output 3, frame 2: duty 0, expected 255");
  }

  @Test
  void pinThatIsLetGoIsFound() {
    clock.open(START);
    judge.changed(false, false, START + 1);
    judge.advance(END);
    assertThat(judge.wrong()).isEqualTo(1);
    assertThat(faults.words()).containsExactly("output 3, frame 0: pin GP17 is not driven");
  }

  @Test
  void halfAPulseCannotBeMeasured() {
    clock.open(START);
    judge.changed(true, true, BEGIN + 100);
    judge.changed(false, true, BEGIN + 5200);
    judge.advance(END);
    assertThat(judge.wrong()).isEqualTo(1);
    assertThat(faults.words()).containsExactly("output 3, frame 0: no whole pulse to measure");
  }
}
