package lampwright.engine.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import lampwright.engine.time.Moment;
import lampwright.engine.time.Ratio;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Against the notation of the international chart (INT 1, section P) and the IALA rhythmic
 * characters; the bounds of the latter from memory.
 */
class RhythmTest {
  private static final BigDecimal UNIT = BigDecimal.valueOf(500);

  /** Lengths in ms of light, dark, light, … over one period, in steps of 10 ms. */
  private static List<Integer> parts(String character) {
    Rhythm rhythm = Rhythm.of(character, UNIT);
    long period = rhythm.periodMs().floor();
    List<Integer> parts = new ArrayList<>();
    boolean lit = true;
    int length = 0;
    for (long t = 0; t < period; t += 10) {
      if (rhythm.lit(Moment.of(Ratio.of(t))) == lit) {
        length += 10;
      } else {
        parts.add(length);
        lit = !lit;
        length = 10;
      }
    }
    parts.add(length);
    return parts;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "F | 1000 | 1",
        "Iso 4s | 4000 | 1",
        "Oc 6s | 6000 | 1",
        "Oc(2) 8s | 8000 | 2",
        "Fl 5s | 5000 | 1",
        "Fl(2) 10s | 10000 | 2",
        "Fl(2+1) 15s | 15000 | 3",
        "LFl 10s | 10000 | 1",
        "Q | 1000 | 1",
        "VQ | 500 | 1",
        "UQ | 250 | 1",
        "Q(3) 10s | 10000 | 3",
        "Q(6)+LFl 15s | 15000 | 7",
        "VQ(6)+LFl 10s | 10000 | 7",
        "Q(9)15s | 15000 | 9",
        "IQ 12s | 12000 | 8",
        "Mo(A) 8s | 8000 | 2",
        "Mo(U) 15s | 15000 | 3"
      })
  void periodAndAppearancesOfLightAreAsWritten(String character, long periodMs, int lights) {
    assertThat(Rhythm.of(character, UNIT).periodMs()).isEqualTo(Ratio.of(periodMs));
    assertThat((parts(character).size() + 1) / 2).isEqualTo(lights);
    assertThat(parts(character).stream().mapToInt(Integer::intValue).sum()).isEqualTo(periodMs);
  }

  @Test
  void isophaseHasEqualLightAndDark() {
    assertThat(parts("Iso 4s")).containsExactly(2000, 2000);
  }

  @Test
  void flashingIsShorterLightThanDark() {
    assertThat(parts("Fl 5s")).containsExactly(1000, 4000);
    assertThat(parts("Fl 2s")).containsExactly(500, 1500);
  }

  @Test
  void occultingIsLongerLightThanDark() {
    assertThat(parts("Oc 6s")).containsExactly(5000, 1000);
    assertThat(parts("Oc(2) 8s")).containsExactly(5000, 1000, 1000, 1000);
  }

  @Test
  void groupEndsInADarkAtLeastThreeTimesThatWithinIt() {
    assertThat(parts("Fl(2) 10s")).containsExactly(1000, 1000, 1000, 7000);
    assertThat(parts("Fl(3) 6s")).containsExactly(750, 750, 750, 750, 750, 2250);
  }

  @Test
  void compositeGroupsStandApart() {
    assertThat(parts("Fl(2+1) 15s")).containsExactly(1000, 1000, 1000, 3000, 1000, 8000);
  }

  /** Chart 1, section P: in Q(6)+LFl the long flash follows after the usual dark. */
  @Test
  void longFlashOfASouthMarkFollowsAfterTheUsualDark() {
    assertThat(parts("Q(6)+LFl 15s"))
        .containsExactly(500, 500, 500, 500, 500, 500, 500, 500, 500, 500, 500, 500, 2000, 7000);
    assertThat(parts("VQ(6)+LFl 10s"))
        .containsExactly(250, 250, 250, 250, 250, 250, 250, 250, 250, 250, 250, 250, 2000, 5000);
    assertThat(
            assertThrows(IllegalArgumentException.class, () -> Rhythm.of("VQ(6)+LFl 5s", UNIT))
                .getMessage())
        .isEqualTo("must have a period longer than 5.25 s");
  }

  /** IALA: a long flash has 2 s or more. */
  @Test
  void longFlashLastsTwoSeconds() {
    assertThat(parts("LFl 10s")).containsExactly(2000, 8000);
    assertThat(parts("VQ(6)+LFl 10s").get(12)).isEqualTo(2000);
  }

  /** IALA: quick 50 to 79, very quick 80 to 159 a minute; ultra quick 160 or more. */
  @ParameterizedTest
  @CsvSource({"Q, 50, 79", "VQ, 80, 159", "UQ, 160, 300"})
  void quickLightsFlashWithinTheirRange(String character, double least, double most) {
    double perMinute = 60_000 / Rhythm.of(character, UNIT).periodMs().doubleValue();
    assertThat(perMinute).isBetween(least, most);
  }

  /** ITU-R M.1677-1: a dash is three dots, the space within a letter one, between letters three. */
  @Test
  void morseLettersAreDotsAndDashes() {
    assertThat(parts("Mo(A) 8s")).containsExactly(500, 500, 1500, 5500);
    assertThat(parts("Mo(AE)")).containsExactly(500, 500, 1500, 1500, 500, 3500);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "Fl",
        "Iso",
        "LFl",
        "Fl(0) 10s",
        "Fl(2) 0s",
        "LFl 4s",
        "Q 10s",
        "Q(3) 3s",
        "Q+LFl 10s",
        "IQ(3) 10s",
        "Mo(a) 8s",
        "Mo(A) 3s",
        "Mo() 8s",
        "Al WR 10s",
        "Fl(2) 10",
        "Fl(2)R 10s",
        "Fl(2) 10s 10s"
      })
  void anythingElseIsRefusedWithWhatIsNeeded(String character) {
    assertThat(
            assertThrows(IllegalArgumentException.class, () -> Rhythm.of(character, UNIT))
                .getMessage())
        .startsWith("must ");
  }

  @Test
  void tooShortAPeriodSaysHowLongItMustBe() {
    assertThat(
            assertThrows(IllegalArgumentException.class, () -> Rhythm.of("Q(3) 3s", UNIT))
                .getMessage())
        .isEqualTo("must have a period longer than 3.5 s");
  }
}
