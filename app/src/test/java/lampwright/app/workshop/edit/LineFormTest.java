package lampwright.app.workshop.edit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.LineTime;
import lampwright.engine.rig.LineTiming;
import lampwright.engine.rig.PixelType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class LineFormTest {
  static List<PixelType> types() {
    return BuiltInPixelTypes.all();
  }

  @ParameterizedTest
  @MethodSource("types")
  void anotherFormNeverWidensALimit(PixelType type) {
    for (LineForm form : LineForm.values()) {
      LineTiming changed = form.apply(type.line());
      for (int i = 0; i < 4; i++) {
        LineTime before = type.line().times().get(i);
        LineTime after = changed.times().get(i);
        assertThat(after.leastNs()).isGreaterThanOrEqualTo(before.leastNs());
        assertThat(after.greatestNs()).isLessThanOrEqualTo(before.greatestNs());
      }
      assertThat(LineForm.of(changed)).isEqualTo(form);
      assertThat(changed.bit()).isEqualTo(type.line().bit());
      assertThat(changed.resetUs()).isEqualTo(type.line().resetUs());
    }
  }

  /** WS2813 manual: 300-450, 750-1,000, low times from 300 ns; by hand: 375 +-75 is narrowest. */
  @Test
  void wideRangesBecomeTimesWithTheNarrowestTolerance() {
    LineTiming line = BuiltInPixelTypes.find("ws2813").orElseThrow().line();
    LineTiming changed = LineForm.TOLERANCE.apply(line);

    assertThat(changed.times())
        .containsExactly(
            new LineTime.Nominal(375, 75),
            new LineTime.Nominal(875, 75),
            new LineTime.Nominal(875, 75),
            new LineTime.Nominal(375, 75));
  }

  @Test
  void toleranceBecomesTheRangeThatItMeant() {
    LineTiming line = BuiltInPixelTypes.find("ws2812b").orElseThrow().line();

    assertThat(LineForm.RANGES.apply(line).times())
        .containsExactly(
            new LineTime.Range(250, 550),
            new LineTime.Range(700, 1000),
            new LineTime.Range(650, 950),
            new LineTime.Range(300, 600));
  }

  @ParameterizedTest
  @MethodSource("types")
  void settingsOfACopyAreThoseOfItsForm(PixelType type) {
    List<String> keys = PixelTypeSettings.of(type).stream().map(Setting::key).toList();

    assertThat(keys.contains("line.toleranceNs")).isEqualTo(type.line().toleranceNs().isPresent());
    assertThat(keys.contains("line.t0lNs.least"))
        .isEqualTo(type.line().t0l() instanceof LineTime.Range);
    assertThat(keys.contains("line.bitNs.least")).isEqualTo(type.line().bit().isPresent());
  }
}
