package lampwright.exporters.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.CharRange;
import net.jqwik.api.constraints.Chars;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CTextTest {
  @ParameterizedTest
  @CsvSource({
    "working, working",
    "a-b, a_b",
    "a--b, a_Hb",
    "a---b, a_H_b",
    "1st, 1st",
    "-, H",
    "--, HH",
    "-a, Ha",
    "a-, aH",
    "a--, a_H",
    "int, int"
  })
  void nameKeepsLettersAndTurnsHyphens(String id, String name) {
    assertThat(CText.name(id)).isEqualTo(name);
  }

  @Property(seed = "20260301")
  void idCanBeReadBackFromItsName(
      @ForAll
          @Chars({'-', 'h', '7'})
          @CharRange(from = 'a', to = 'c')
          @StringLength(min = 1, max = 12)
          String id) {
    String name = CText.name(id);
    assertThat(name.replace('_', '-').replace('H', '-')).isEqualTo(id);
    assertThat(name).doesNotContain("__").doesNotStartWith("_").doesNotEndWith("_");
  }

  @ParameterizedTest
  @ValueSource(strings = {"A", "a_b", "a b", "a*/", "\u00fc", "a\n"})
  void nameRefusesWhatNoIdHolds(String id) {
    assertThatThrownBy(() -> CText.name(id))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("id: " + id + ": must have lower-case letters, digits or hyphens only");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "*/|* /",
        "/*|/ *",
        "**/|** /",
        "*/*/|* / * /",
        "/*/|/ * /",
        "??/|? ?/",
        "????|? ? ? ?",
        "a\\|a<U+005C>",
        "Zürich|Z<U+00FC>rich",
        "// #x \"y\"|// #x \"y\""
      })
  void commentKeepsTextInside(String text, String comment) {
    assertThat(CText.comment(text)).isEqualTo(comment);
  }

  @Test
  void commentShowsControlCharactersAndSurrogates() {
    assertThat(CText.comment("a\r\n\u0000\t\u007f\ud83d\ude9c\ud83d"))
        .isEqualTo("a<U+000D><U+000A><U+0000><U+0009><U+007F><U+1F69C><U+D83D>");
  }

  @Property(seed = "20260302")
  void commentNeverHoldsWhatEndsOrStartsOne(
      @ForAll @Chars({'*', '/', '?', '\\', '\n', 'x', '\u00e9', '<'}) @StringLength(max = 30)
          String text) {
    assertThat(CText.comment(text))
        .doesNotContain("*/")
        .doesNotContain("/*")
        .doesNotContain("??")
        .matches("[ -~]*");
  }
}
