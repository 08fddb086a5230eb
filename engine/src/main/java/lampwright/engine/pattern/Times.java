package lampwright.engine.pattern;

import lampwright.engine.field.DecimalType;
import lampwright.engine.field.Unit;

/** The bounds that the times of patterns share. */
public final class Times {
  /** A day: the longest time, in ms, that anything may last. */
  public static final long MAX_MS = 86_400_000;

  /** A time from 0 to a day. */
  public static final DecimalType MS = new DecimalType(Unit.MILLISECONDS, 0, MAX_MS);

  /** A time above 0, to a day. */
  static final DecimalType MS_ABOVE_0 = DecimalType.above0(Unit.MILLISECONDS, MAX_MS);

  /** The greatest rate per minute. */
  static final long MAX_PER_MINUTE = 60_000;

  /** A rate above 0. */
  static final DecimalType PER_MINUTE = DecimalType.above0(Unit.PER_MINUTE, MAX_PER_MINUTE);

  static final long MINUTE_MS = 60_000;

  private Times() {}
}
