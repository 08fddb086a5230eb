package lampwright.engine.json;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;

/** What the characters of a JSON number are worth, at a bounded cost. */
final class Numbers {
  /** The longest number that is read, in characters; no field needs as many. */
  static final int MAX_LENGTH = 400;

  // Past this power of ten every field refuses a number, whatever it is.
  private static final int MAX_POWER = 400;
  private static final int MAX_EXPONENT_DIGITS = 9;
  private static final BigDecimal HUGE = BigDecimal.ONE.scaleByPowerOfTen(MAX_POWER);
  private static final BigDecimal TINY = BigDecimal.ONE.scaleByPowerOfTen(-MAX_POWER);

  private Numbers() {}

  /**
   * The exact value, or one as hopeless: numbers of more than 400 digits before the point are
   * 10^400, those with more than 400 zeros behind it 10^-400. Empty for what is no number (NaN) or
   * has too many characters.
   */
  static Optional<BigDecimal> decimal(String raw) {
    // A number starts with a digit or a minus and a digit; NaN and Infinity do not.
    boolean number = Character.isDigit(raw.charAt(raw.startsWith("-") ? 1 : 0));
    if (raw.length() > MAX_LENGTH || !number) {
      return Optional.empty();
    }
    int e = Math.max(raw.indexOf('e'), raw.indexOf('E'));
    BigDecimal mantissa = new BigDecimal(e < 0 ? raw : raw.substring(0, e));
    if (mantissa.signum() == 0) {
      return Optional.of(BigDecimal.ZERO);
    }
    long exponent = e < 0 ? 0 : exponent(raw.substring(e + 1));
    long power = (long) mantissa.precision() - mantissa.scale() + exponent;
    if (Math.abs(power) > MAX_POWER) {
      BigDecimal size = power > 0 ? HUGE : TINY;
      return Optional.of(mantissa.signum() < 0 ? size.negate() : size);
    }
    return Optional.of(mantissa.scaleByPowerOfTen((int) exponent));
  }

  /** The nearest double; empty for what is no number, or is so near 0 that it would become 0. */
  static OptionalDouble nearest(String raw) {
    Optional<BigDecimal> exact = decimal(raw);
    if (exact.isEmpty()) {
      return OptionalDouble.empty();
    }
    double value = exact.get().doubleValue();
    boolean lost = value == 0 && exact.get().signum() != 0;
    return lost ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  /** A whole number, or the nearest long to it; empty if it is none. */
  static Optional<Long> whole(String raw) {
    Optional<BigDecimal> exact = decimal(raw);
    if (exact.isEmpty()) {
      return Optional.empty();
    }
    BigDecimal value = exact.get();
    if (value.signum() != 0 && value.stripTrailingZeros().scale() > 0) {
      return Optional.empty();
    }
    BigDecimal bound = BigDecimal.valueOf(Long.MAX_VALUE);
    return Optional.of(value.min(bound).max(bound.negate()).longValue());
  }

  private static long exponent(String digits) {
    String unsigned = digits.replaceFirst("^[+-]?0*", "");
    if (unsigned.isEmpty()) {
      return 0;
    }
    long size =
        unsigned.length() > MAX_EXPONENT_DIGITS ? Integer.MAX_VALUE : Long.parseLong(unsigned);
    return digits.startsWith("-") ? -size : size;
  }
}
