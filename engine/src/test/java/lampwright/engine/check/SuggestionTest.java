package lampwright.engine.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SuggestionTest {
  // The textbook pairs of the measure: kitten and sitting from Levenshtein's, ca and abc from the
  // optimal string alignment's, which has 3 where unrestricted swapping has 2 (from memory).
  @ParameterizedTest
  @CsvSource({"kitten,sitting,3", "ca,abc,3", "lamp,lamp,0", "lapm,lamp,1", "'',abc,3"})
  void distanceCountsSlips(String a, String b, int distance) {
    assertThat(Suggestion.distance(a, b)).isEqualTo(distance);
    assertThat(Suggestion.distance(b, a)).isEqualTo(distance);
  }

  @Test
  void nearestNameIsSuggested() {
    assertThat(Suggestion.of("chanis", List.of("chairs", "chains", "lamps"))).contains("chains");
  }

  @Test
  void swappedLettersBeatALostOne() {
    assertThat(Suggestion.of("rgwb", List.of("rgb", "rgbw"))).contains("rgbw");
  }

  @Test
  void farNamesAreNotSuggested() {
    assertThat(Suggestion.of("colour", List.of("level", "kind"))).isEmpty();
    assertThat(Suggestion.of("pixels", List.of("pxlz"))).isEmpty();
  }

  @Test
  void halfOfAShortNameIsNotNear() {
    assertThat(Suggestion.of("ab", List.of("ac"))).isEmpty();
    assertThat(Suggestion.of("abc", List.of("abd"))).contains("abd");
  }

  @Test
  void knownNameIsNotMisspelt() {
    assertThat(Suggestion.of("roof", List.of("roof", "rooft"))).isEmpty();
  }
}
