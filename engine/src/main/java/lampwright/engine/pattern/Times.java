package lampwright.engine.pattern;

/** The bounds that the times of patterns share. */
public final class Times {
  /** A day: the longest time, in ms, that anything may last. */
  public static final long MAX_MS = 86_400_000;

  /** The greatest rate a minute. */
  static final long MAX_PER_MINUTE = 60_000;

  static final long MINUTE_MS = 60_000;

  private Times() {}
}
