package lampwright.engine.meter;

import lampwright.engine.facts.SourcedNumber;
import lampwright.engine.facts.TradeNumbers;

/**
 * Ranges in which real lamps flash. For realism and caution, not for approval: models are no road
 * vehicles.
 */
public enum FlashRange {
  DIRECTION_INDICATOR("direction indicator"),
  FARM_WARNING("flashing warning lamp of farm vehicles"),
  SERVICE_WARNING("warning device of service vehicles"),
  SPECIAL_WARNING("special warning lamp"),
  EMERGENCY_STOP("emergency stop signal");

  /** The longest on time of a special warning lamp, as a share of its period. */
  public static final double SPECIAL_WARNING_ON_SHARE =
      TradeNumbers.number("special warning lamp", "longest on time");

  /** The shortest off time of a special warning lamp, s. */
  public static final double SPECIAL_WARNING_OFF_SECONDS =
      TradeNumbers.number("special warning lamp", "shortest off time");

  /** Where both are. */
  public static final String SPECIAL_WARNING_TIMES_SOURCE =
      TradeNumbers.get("special warning lamp", "longest on time").citation();

  private static final double ROUNDING = 1e-9;

  private final double least;
  private final double most;
  private final String words;
  private final String source;

  FlashRange(String words) {
    SourcedNumber given = TradeNumbers.get("flash rate", words);
    this.least = given.numbers().get(0);
    this.most = given.numbers().get(1);
    this.words = words;
    this.source = given.citation();
  }

  /** Least rate, per minute. */
  public double leastPerMinute() {
    return least;
  }

  /** Greatest rate, per minute. */
  public double mostPerMinute() {
    return most;
  }

  /** The lamp in words. */
  public String words() {
    return words;
  }

  /** The document, and the range in its own words. */
  public String source() {
    return source;
  }

  /** Below 0 if a rate is slower than the real lamp, 0 if like it, above 0 if faster. */
  public int compare(double perMinute) {
    if (perMinute < least * (1 - ROUNDING)) {
      return -1;
    }
    return perMinute > most * (1 + ROUNDING) ? 1 : 0;
  }
}
