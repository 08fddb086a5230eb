package lampwright.app.workshop.words;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.Locale;

/** Dates and times of day in the user's own form. */
public final class Dates {
  private final Texts texts = Texts.of("start");
  private final Clock clock;
  private final Locale locale;

  /**
   * @param clock with the user's time zone
   * @param locale whose form it is
   */
  public Dates(Clock clock, Locale locale) {
    this.clock = clock;
    this.locale = locale;
  }

  /** Those of this machine and its user. */
  public static Dates ofUser() {
    return new Dates(
        Clock.system(ZoneId.systemDefault()), Locale.getDefault(Locale.Category.FORMAT));
  }

  /** An instant: with the time of day if it was today or yesterday, else the date alone. */
  public String of(Instant instant) {
    ZonedDateTime at = instant.atZone(clock.getZone());
    LocalDate today = LocalDate.now(clock);
    String time =
        DateTimeFormatter.ofLocalizedTime(FormatStyle.SHORT).localizedBy(locale).format(at);
    if (at.toLocalDate().equals(today)) {
      return texts.get("date.today", time);
    } else if (at.toLocalDate().equals(today.minusDays(1))) {
      return texts.get("date.yesterday", time);
    }
    return DateTimeFormatter.ofLocalizedDate(FormatStyle.MEDIUM).localizedBy(locale).format(at);
  }
}
