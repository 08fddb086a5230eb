package lampwright.app.workshop.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Locale;
import java.util.Properties;
import java.util.TimeZone;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class TextsTest {
  private static final Path BUNDLES = Path.of("src/main/resources/lampwright/app/workshop");

  static Stream<Path> bundles() throws IOException {
    try (Stream<Path> files = Files.list(BUNDLES)) {
      return files.filter(f -> f.toString().endsWith(".properties")).toList().stream();
    }
  }

  @Test
  void namesNeitherTurnTheWritingNorHideNorBreakLines() {
    Texts texts = Texts.of("files");

    assertThat(texts.get("title", "a\u202eb\u200b")).startsWith("a\\u202eb\\u200b ");
    assertThat(texts.get("replace.text", Path.of("a\nb"))).contains("a\\u000ab ");
    assertThat(texts.get("damaged.text", "one\ntwo\u001b")).endsWith("one\ntwo\\u001b");
  }

  // In a text with values an apostrophe is written twice, in one without it is not.
  @ParameterizedTest
  @MethodSource("bundles")
  void apostrophesAreAsTheirTextIsRead(Path bundle) throws IOException {
    Properties texts = new Properties();
    try (var in = Files.newBufferedReader(bundle)) {
      texts.load(in);
    }
    assertThat(texts).isNotEmpty();
    texts.forEach(
        (key, value) -> {
          String text = (String) value;
          if (text.matches("(?s).*\\{\\d.*")) {
            assertThat(text.replace("''", "")).as((String) key).doesNotContain("'");
          } else {
            assertThat(text).as((String) key).doesNotContain("''");
          }
        });
  }

  @Test
  void numbersInTextsAreTheSameInEveryLanguage() {
    Locale before = Locale.getDefault();
    try {
      for (String language : new String[] {"de", "tr"}) {
        Locale.setDefault(Locale.forLanguageTag(language));
        assertThat(Texts.of("gauges").get("supply.reading", "0.50", "2.00"))
            .isEqualTo("0.50 of 2.00\u00a0A");
      }
    } finally {
      Locale.setDefault(before);
    }
  }

  // Medium date and short time as in Unicode's CLDR; the texts from memory.
  @ParameterizedTest
  @CsvSource({"de-DE, '04.03.2026, 15:06'", "en-GB, '4 Mar 2026, 15:06'"})
  void datesAreInTheUsersForm(String language, String shown) {
    Locale before = Locale.getDefault();
    TimeZone zone = TimeZone.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag(language));
      TimeZone.setDefault(TimeZone.getTimeZone("UTC"));
      assertThat(Texts.of("files").get("discard.text", Instant.parse("2026-03-04T15:06:07Z")))
          .contains("up to " + shown + " were");
    } finally {
      Locale.setDefault(before);
      TimeZone.setDefault(zone);
    }
  }
}
