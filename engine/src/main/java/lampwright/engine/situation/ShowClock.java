package lampwright.engine.situation;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * The clock of a show: frame n is at n / framesPerSecond seconds. Times become whole frames once,
 * exactly, so that the machine compares nothing but small integers: for whole d, d x 1000 &gt;= ms
 * x framesPerSecond is d &gt;= {@link #ceiling}, and d x 1000 &lt;= ms x framesPerSecond is d &lt;=
 * {@link #floor}.
 *
 * @param framesPerSecond 1 to 1,000
 */
public record ShowClock(BigDecimal framesPerSecond) {
  /** The frames of a time, rounded up: also the first frame that sees what ended then. */
  public int ceiling(BigDecimal ms) {
    return frames(ms, RoundingMode.CEILING);
  }

  /** The frames of a time, rounded down: also the last frame before the next instant. */
  public int floor(BigDecimal ms) {
    return frames(ms, RoundingMode.FLOOR);
  }

  private int frames(BigDecimal ms, RoundingMode rounding) {
    return ms.multiply(framesPerSecond).movePointLeft(3).setScale(0, rounding).intValueExact();
  }
}
