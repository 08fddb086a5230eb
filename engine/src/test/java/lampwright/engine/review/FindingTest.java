package lampwright.engine.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class FindingTest {
  private static Finding finding(String value) {
    return Finding.of(Code.EXPORT_REFUSED, new Subject.OneExport("hex"))
        .with("value", Figure.words(value))
        .with("allowed", Figure.words("must be less"))
        .make();
  }

  @Test
  void wordsAreMadeFromTheFields() {
    assertThat(finding("at: 0x20").text())
        .isEqualTo("hex export: at: 0x20; must be less [export-refused]");
  }

  @Test
  void missingFigureIsRefused() {
    assertThatThrownBy(() -> Finding.of(Code.LEAD_HEAT, new Subject.OneChain("roof")).make())
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("lead-heat")
        .hasMessageContaining("limit");
  }

  @Test
  void hostileWordsCannotMoveTheCursorOrNameFigures() {
    assertThat(finding("\u001b[2J{allowed}\u202e").what()).isEqualTo("\\u001b[2J{allowed}\\u202e");
    assertThat(new Subject.OneLamp("l", "a\nb").words()).isEqualTo("lamp a\nb");
    Finding named =
        Finding.of(Code.RESERVED_COLOUR, new Subject.OneLamp("l", "a\nb\u001b"))
            .with("colour", Figure.words("blue"))
            .make();
    assertThat(named.about()).isEqualTo("lamp a\\u000ab\\u001b");
  }

  @Test
  void figuresDoNotHangOnTheLocale() {
    Locale before = Locale.getDefault();
    try {
      for (String tag : List.of("de", "tr", "ar-u-nu-arab")) {
        Locale.setDefault(Locale.forLanguageTag(tag));
        assertThat(Figure.volts(4.956).text()).isEqualTo("4.96 V");
      }
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void codesAreWordsOfTheirOwn() {
    assertThat(Code.values()).extracting(Code::key).doesNotHaveDuplicates();
    assertThat(Arrays.stream(Code.values()).map(Code::key))
        .allMatch(key -> key.matches("[a-z][a-z0-9]*(-[a-z0-9]+)*"));
  }

  /** People know settings by their labels; ids of fields are for files. */
  @Test
  void noWordsAreIdsOfFields() {
    for (Code code : Code.values()) {
      String words = code.what().text() + " " + code.limit().text() + " " + code.remedy().text();
      assertThat(words.replaceAll("\\{[A-Za-z]+}", ""))
          .as(code.key())
          .doesNotContainPattern("\\b[a-z]+[A-Z][a-z]");
    }
  }

  /** Nothing that can burn or hurt is ever called safe. */
  @Test
  void noWordsSaySafe() {
    for (Code code : Code.values()) {
      String words = code.what().text() + code.limit().text() + code.remedy().text();
      assertThat(words.toLowerCase(Locale.ROOT)).as(code.key()).doesNotContain("safe");
    }
  }
}
