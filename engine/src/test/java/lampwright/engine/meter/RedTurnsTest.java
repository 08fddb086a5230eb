package lampwright.engine.meter;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * W3C WCAG 2.2, red flash: R/(R + G + B) is 0.8 or more, and the change is more than 0.2 in the CIE
 * 1976 u'v' diagram.
 */
class RedTurnsTest {
  @ParameterizedTest
  @CsvSource({
    "0.8, 0.1, 0.1, true", "0.79, 0.1, 0.11, false", "1, 0, 0, true", "0.001, 0, 0, true",
    "0, 0, 0, false", "0, 1, 0, false", "1, 0.26, 0, false", "1, 0.25, 0, true"
  })
  void saturatedRedIsEightTenths(double r, double g, double b, boolean saturated) {
    assertThat(RedTurns.isSaturated(r, g, b)).isEqualTo(saturated);
  }

  /** To red and from it by turns, each 0.3 from the one before; from red to red is none. */
  @Test
  void changesGoToRedAndFromItByTurns() {
    RedTurns turns = new RedTurns();
    assertThat(turns.next(true, 0.5, 0.5)).isFalse();
    assertThat(turns.next(false, 0.2, 0.5)).isTrue();
    // Between two that are no red there is no change, however far.
    assertThat(turns.next(false, 0.2, 0.1)).isFalse();
    assertThat(turns.next(true, 0.5, 0.5)).isTrue();
    assertThat(turns.next(true, 0.5, 0.5)).isFalse();
    // 0.2 is not more than 0.2.
    assertThat(turns.next(false, 0.3, 0.5)).isFalse();
    assertThat(turns.next(false, 0.29, 0.5)).isTrue();
  }

  /** What lies before a change does not count for the next one. */
  @Test
  void changesAreCountedFromTheChangeBefore() {
    RedTurns turns = new RedTurns();
    assertThat(turns.next(true, 0.5, 0.5)).isFalse();
    assertThat(turns.next(false, 0.25, 0.5)).isTrue();
    assertThat(turns.next(true, 0.44, 0.5)).isFalse();
    assertThat(turns.next(true, 0.46, 0.5)).isTrue();
    // 0.21 from the red before, 0.17 from that of the last change.
    assertThat(turns.next(false, 0.29, 0.5)).isFalse();
    assertThat(turns.next(false, 0.25, 0.5)).isTrue();
  }

  /** The same for a change to red: 0.2 was far from 0.44, but lies before the last change. */
  @Test
  void changesToRedAreCountedFromTheChangeBefore() {
    RedTurns turns = new RedTurns();
    assertThat(turns.next(false, 0.2, 0.5)).isFalse();
    assertThat(turns.next(true, 0.5, 0.5)).isTrue();
    assertThat(turns.next(false, 0.25, 0.5)).isTrue();
    assertThat(turns.next(true, 0.44, 0.5)).isFalse();
    assertThat(turns.next(true, 0.46, 0.5)).isTrue();
  }
}
