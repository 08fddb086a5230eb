package lampwright.engine.meter;

/**
 * Ranges in which real lamps flash. For realism and caution, not for approval: models are no road
 * vehicles. The values of UN Regulation 65 are from memory.
 */
public enum FlashRange {
  DIRECTION_INDICATOR(
      60, 120, "direction indicator", "UN Regulations 6 and 48: 90 +- 30 per minute"),
  FARM_WARNING(60, 120, "flashing warning lamp of farm vehicles", "SAE J974: 60 to 120 per minute"),
  SERVICE_WARNING(60, 240, "warning device of service vehicles", "SAE J845 (2013): 1.0 to 4.0 Hz"),
  SPECIAL_WARNING(120, 240, "special warning lamp", "UN Regulation 65, annex 5: 2 to 4 Hz"),
  EMERGENCY_STOP(180, 300, "emergency stop signal", "UN Regulation 48: 4.0 +- 1.0 Hz");

  /** UN Regulation 65, annex 5 (from memory): on time at most 0.4 of the period. */
  public static final double SPECIAL_WARNING_ON_SHARE = 0.4;

  /** UN Regulation 65, annex 5 (from memory): off time at least 0.1 s. */
  public static final double SPECIAL_WARNING_OFF_SECONDS = 0.1;

  private static final double ROUNDING = 1e-9;

  private final double least;
  private final double most;
  private final String words;
  private final String source;

  FlashRange(double least, double most, String words, String source) {
    this.least = least;
    this.most = most;
    this.words = words;
    this.source = source;
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
