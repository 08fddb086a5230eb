package lampwright.app.workshop.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DatesTest {
  private static final Clock NOON =
      Clock.fixed(Instant.parse("2026-05-02T12:00:00Z"), ZoneId.of("Europe/Berlin"));

  private static String of(String instant, Locale locale) {
    return new Dates(NOON, locale).of(Instant.parse(instant));
  }

  // The day changes at 22:00Z: Berlin has summer time in May.
  @ParameterizedTest
  @CsvSource({
    "2026-05-02T12:00:00Z, today 14:00",
    "2026-05-01T22:00:00Z, today 00:00",
    "2026-05-01T21:59:59Z, yesterday 23:59",
    "2026-04-30T22:00:00Z, yesterday 00:00",
    "2026-04-30T21:59:59Z, 30.04.2026",
    "2025-05-02T12:00:00Z, 02.05.2025"
  })
  void dayIsThatOfTheUsersZone(String instant, String words) {
    assertThat(of(instant, Locale.GERMANY)).isEqualTo(words);
  }

  @Test
  void formIsThatOfTheUsersLocale() {
    assertThat(of("2026-05-02T12:00:00Z", Locale.US)).matches("today 2:00.PM");
    assertThat(of("2026-04-01T12:00:00Z", Locale.US)).isEqualTo("Apr 1, 2026");
    assertThat(of("2026-04-01T12:00:00Z", Locale.JAPAN)).isEqualTo("2026/04/01");
  }
}
