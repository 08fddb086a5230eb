package lampwright.engine.render;

import java.util.Optional;

/**
 * The ceiling of a rig's current over the frames of a show: a frame that would draw more than the
 * supply's limit is scaled as a whole. All is in whole numbers, so that players do the same;
 * weights are rounded up and the factor down, so that the scaled frame is never over the limit,
 * unless what all pixels draw when dark already is. Immutable.
 */
public final class Ceiling {
  /** The factor of a frame that is left as it is. */
  public static final int WHOLE = 256;

  /** Greatest weight of a byte: a table of a player keeps it in two bytes. */
  public static final int MOST_WEIGHT = 0xFFFF;

  /**
   * Greatest sum of all weights: times 255 it is less than 2^32, which is what a player adds up in.
   */
  public static final long MOST_SUM = 0xFFFF_FFFFL / 255;

  private static final int FULL = 255;

  private final int[] weights;
  private final long limit;

  private Ceiling(FrameLayout layout) {
    FrameCurrent current = new FrameCurrent(layout);
    double[] milliamps = new double[layout.bytes()];
    for (int i = 0; i < milliamps.length; i++) {
      milliamps[i] = current.fullMilliamps(i);
    }
    // A power of two: scaling by it is exact.
    int scale = Short.SIZE;
    while (!fits(milliamps, scale)) {
      scale--;
    }
    weights = new int[milliamps.length];
    for (int i = 0; i < weights.length; i++) {
      weights[i] = (int) Math.ceil(Math.scalb(milliamps[i], scale));
    }
    double room = layout.rig().supplyLimitMilliamps() - current.idleMilliamps();
    limit = (long) Math.max(0, Math.min(0xFFFF_FFFFL, Math.scalb(room * FULL, scale)));
  }

  private Ceiling(int[] weights, long limit) {
    this.weights = weights.clone();
    this.limit = limit;
  }

  /**
   * The ceiling that a table has.
   *
   * @param weights of the bytes of a frame, each to {@link #MOST_WEIGHT} and together to {@link
   *     #MOST_SUM}
   * @param limit less than 2^32
   */
  public static Ceiling of(int[] weights, long limit) {
    return new Ceiling(weights, limit);
  }

  private static boolean fits(double[] milliamps, int scale) {
    long sum = 0;
    for (double one : milliamps) {
      double weight = Math.ceil(Math.scalb(one, scale));
      if (weight > MOST_WEIGHT) {
        return false;
      }
      sum += (long) weight;
    }
    return sum <= MOST_SUM;
  }

  /** The ceiling of a layout's rig; none if it has none. */
  public static Optional<Ceiling> of(FrameLayout layout) {
    return layout.rig().ceiling() ? Optional.of(new Ceiling(layout)) : Optional.empty();
  }

  /** What a byte of a frame counts, 0 to {@link #MOST_WEIGHT}. */
  public int weight(int column) {
    return weights[column];
  }

  /** The greatest sum of weight times byte of a frame that is left as it is, less than 2^32. */
  public long limit() {
    return limit;
  }

  /** The factor of a frame in 256ths: {@link #WHOLE}, or 0 to 255. */
  public int factor(byte[] frame) {
    long sum = 0;
    for (int i = 0; i < weights.length; i++) {
      sum += (long) weights[i] * (frame[i] & 0xFF);
    }
    // The sum in 256ths is rounded up: the quotient is then the lower one, and fits a byte.
    return sum <= limit ? WHOLE : (int) (limit / ((sum + 0xFF) / WHOLE));
  }

  /** Scales a frame that is over the limit; bytes past it are left alone. */
  public void apply(byte[] frame) {
    int factor = factor(frame);
    for (int i = 0; factor < WHOLE && i < weights.length; i++) {
      frame[i] = (byte) ((frame[i] & 0xFF) * factor / WHOLE);
    }
  }
}
