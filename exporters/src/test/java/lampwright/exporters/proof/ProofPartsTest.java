package lampwright.exporters.proof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.StringWriter;
import java.util.List;
import lampwright.engine.time.Ratio;
import lampwright.exporters.target.LineLimits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a proof is put together from, by hand. */
class ProofPartsTest {
  // 3 1/2 cycles: frame 3 begins 10 1/2 cycles after the first.
  @Test
  void framesBeginByTheFirst() {
    FrameClock clock = new FrameClock(Ratio.of(7).over(Ratio.of(2)), 8);
    assertThat(clock.opened()).isFalse();
    clock.open(100);
    assertThat(clock.opened()).isTrue();
    assertThat(clock.nominal(0)).isEqualTo(100);
    assertThat(clock.nominal(3)).isEqualTo(110);
    assertThat(clock.periodCycles()).isEqualTo(3);
  }

  // The first is opened; then 110, 80 and 95 cycles of 8 ns pass.
  @Test
  void periodsAreMeasuredFromTheSecondFrame() {
    FrameClock clock = new FrameClock(Ratio.of(95), 8);
    clock.frame(0);
    clock.frame(1000);
    assertThat(clock.meanCycles()).isZero();
    clock.frame(1110);
    clock.frame(1190);
    clock.frame(1285);
    assertThat(clock.meanCycles()).isEqualTo(95);
    Figures figures = new Figures();
    clock.report(figures);
    assertThat(figures.all())
        .containsEntry("/framePeriod/averageUs", "0.8")
        .containsEntry("/framePeriod/minUs", "0.6")
        .containsEntry("/framePeriod/maxUs", "0.9")
        .containsEntry("/framePeriod/expectedUs", "0.8");
  }

  /** Two periods of 1 ms, 125,000 cycles, may drift by 1 ms in all. */
  @ParameterizedTest
  @CsvSource({"187500, 0", "187501, 1", "62500, 0", "62499, 1", "125000, 0"})
  void rateMustBeRightOverAll(long period, int found) {
    FrameClock clock = new FrameClock(Ratio.of(125_000), 8);
    Faults faults = new Faults();
    clock.frame(5);
    for (int i = 0; i < 3; i++) {
      clock.frame(1000 + i * period);
    }
    clock.judge(faults);
    assertThat(faults.count()).isEqualTo(found);
    if (period == 187_501) {
      assertThat(faults.words())
          .containsExactly("the frames come every 1500.01 us, expected 1000.00");
    }
  }

  @Test
  void cyclesAwakeAreThoseFromFrameToFrame() {
    AwakeCycles awake = new AwakeCycles();
    Figures none = new Figures();
    awake.frame(100);
    awake.report(none, 1000);
    assertThat(none.all()).containsOnlyKeys("/decode/frames").containsEntry("/decode/frames", "0");
    awake.frame(250);
    awake.frame(300);
    Figures figures = new Figures();
    awake.report(figures, 1000);
    assertThat(figures.all())
        .containsEntry("/decode/frames", "2")
        .containsEntry("/decode/averageCycles", "100.0")
        .containsEntry("/decode/worstCycles", "150")
        .containsEntry("/decode/worstShareOfPeriod", "0.15000");
  }

  @Test
  void framesComeRoundOrStay() {
    byte[] table = {1, 2, 3, (byte) 0xFF};
    ExpectedFrames loops = new ExpectedFrames(table, 2, true);
    ExpectedFrames once = new ExpectedFrames(table, 2, false);
    assertThat(loops.frames()).isEqualTo(2);
    assertThat(loops.frameBytes()).isEqualTo(2);
    assertThat(loops.at(1, 1)).isEqualTo(255);
    assertThat(loops.at(4, 1)).isEqualTo(2);
    assertThat(loops.at(7, 0)).isEqualTo(3);
    assertThat(once.at(0, 0)).isEqualTo(1);
    assertThat(once.at(1, 0)).isEqualTo(3);
    assertThat(once.at(9, 0)).isEqualTo(3);
  }

  @ParameterizedTest
  @CsvSource({"3, 2", "0, 2", "4, 0", "4, -1"})
  void tablesOfNoWholeFramesAreRefused(int bytes, int frameBytes) {
    assertThatThrownBy(() -> new ExpectedFrames(new byte[bytes], frameBytes, true))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(bytes + " bytes are no whole number of frames of " + frameBytes);
  }

  @Test
  void firstTwelveFaultsAreToldInWords() {
    Faults faults = new Faults();
    for (int i = 0; i < 13; i++) {
      faults.add("fault %d", i);
    }
    assertThat(faults.count()).isEqualTo(13);
    assertThat(faults.words()).hasSize(12).endsWith("fault 11");
  }

  /** 250 to 550 ns in cycles of 62.5 ns: 4 are 250, 8 are 500, 9 are 562.5. */
  @Test
  void spanTellsWhatWasSeenAndItsLimits() {
    Span span = new Span(new LineLimits.Range(250, 550), 62.5);
    Figures none = new Figures();
    span.report(none, "/t");
    assertThat(none.all()).containsOnlyKeys("/t/seen", "/t/limitMinNs", "/t/limitMaxNs");
    assertThat(span.take(6)).isTrue();
    assertThat(span.take(4)).isTrue();
    assertThat(span.take(3)).isFalse();
    assertThat(span.take(8)).isTrue();
    assertThat(span.take(9)).isFalse();
    assertThat(span.leastCycles()).isEqualTo(3);
    assertThat(span.limits().greatestNs()).isEqualTo(550);
    Figures figures = new Figures();
    span.report(figures, "/t");
    assertThat(figures.all())
        .containsEntry("/t/seen", "5")
        .containsEntry("/t/minNs", "187.5")
        .containsEntry("/t/maxNs", "562.5")
        .containsEntry("/t/limitMinNs", "250.0")
        .containsEntry("/t/limitMaxNs", "550.0");
  }

  /**
   * IEEE 1364, value change dump. 10 us of idle first; cycles of 62.5 ns go to whole ns so that
   * high times are no shorter; a pause of more than 400 us, 6,400 cycles, is cut to that.
   */
  @Test
  void waveformIsAValueChangeDump() {
    StringWriter out = new StringWriter();
    Waveform waveform = new Waveform(out, List.of("GP0", "GP5"), 62.5);
    waveform.change(0, true, 5001);
    waveform.change(0, false, 5008);
    waveform.change(1, true, 5009);
    waveform.change(1, false, 5010);
    waveform.change(0, true, 5010 + 6400);
    waveform.change(0, false, 5010 + 6400 + 1_000_000);
    waveform.end();
    assertThat(out)
        .hasToString(
            """
            $timescale 1 ns $end
            $scope module chains $end
            $var wire 1 ! GP0 $end
            $var wire 1 " GP5 $end
            $upscope $end
            $enddefinitions $end
            #0
            0!
            0"
            #10000
            1!
            #10438
            0!
            #10500
            1"
            #10563
            0"
            #410562
            1!
            #810563
            0!
            #1210563
            0!
            0"
            """);
  }
}
