package lampwright.engine.json;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearNameTest {
  // The textbook pairs of the measure: kitten and sitting from Levenshtein's, ca and abc from the
  // optimal string alignment's, which has 3 where unrestricted swapping has 2 (from memory).
  @ParameterizedTest
  @CsvSource({"kitten,sitting,3", "ca,abc,3", "lamp,lamp,0", "lapm,lamp,1", "'',abc,3"})
  void distanceCountsSlips(String a, String b, int distance) {
    assertThat(NearName.distance(a, b)).isEqualTo(distance);
    assertThat(NearName.distance(b, a)).isEqualTo(distance);
  }

  @Test
  void nearestNameIsSuggested() {
    assertThat(NearName.of("chanis", List.of("chairs", "chains", "lamps"))).contains("chains");
  }

  @Test
  void swappedLettersBeatALostOne() {
    assertThat(NearName.of("rgwb", List.of("rgb", "rgbw"))).contains("rgbw");
  }

  @Test
  void farNamesAreNotSuggested() {
    assertThat(NearName.of("colour", List.of("level", "kind"))).isEmpty();
    assertThat(NearName.of("pixels", List.of("pxlz"))).isEmpty();
  }

  @Test
  void halfOfAShortNameIsNotNear() {
    assertThat(NearName.of("ab", List.of("ac"))).isEmpty();
    assertThat(NearName.of("abc", List.of("abd"))).contains("abd");
  }

  @Test
  void knownNameIsNotMisspelt() {
    assertThat(NearName.of("roof", List.of("roof", "rooft"))).isEmpty();
  }
}
