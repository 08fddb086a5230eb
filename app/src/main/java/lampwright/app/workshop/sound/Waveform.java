package lampwright.app.workshop.sound;

/** The least and the greatest value of a sound in each millisecond. Immutable. */
public final class Waveform {
  /** The values within a stretch of time, -1 to 1. */
  public record Span(double least, double greatest) {
    public static final Span SILENCE = new Span(0, 0);
  }

  /** How many milliseconds are taken together for a look at much of it. */
  private static final int COARSE_MS = 64;

  private static final double FULL = 128;

  private final byte[] least;
  private final byte[] greatest;
  private final byte[] coarseLeast;
  private final byte[] coarseGreatest;

  /** Takes both over: as many values in one as in the other, -128 to 127. */
  Waveform(byte[] least, byte[] greatest) {
    this.least = least;
    this.greatest = greatest;
    int coarse = (least.length + COARSE_MS - 1) / COARSE_MS;
    coarseLeast = new byte[coarse];
    coarseGreatest = new byte[coarse];
    for (int i = 0; i < least.length; i++) {
      int at = i / COARSE_MS;
      boolean first = i % COARSE_MS == 0;
      coarseLeast[at] = first ? least[i] : (byte) Math.min(coarseLeast[at], least[i]);
      coarseGreatest[at] = first ? greatest[i] : (byte) Math.max(coarseGreatest[at], greatest[i]);
    }
  }

  public int lengthMs() {
    return least.length;
  }

  /** The values from a time to another; before its beginning and after its end is silence. */
  public Span between(double fromMs, double toMs) {
    int from = (int) Math.max(0, Math.min(least.length, Math.floor(fromMs)));
    int to = (int) Math.max(0, Math.min(least.length, Math.ceil(toMs)));
    if (from >= to) {
      return Span.SILENCE;
    }
    int firstWhole = (from + COARSE_MS - 1) / COARSE_MS;
    int lastWhole = to / COARSE_MS;
    if (firstWhole >= lastWhole) {
      return new Span(low(least, from, to) / FULL, high(greatest, from, to) / FULL);
    }
    // Whole stretches at once, what is before and after them one by one.
    int before = firstWhole * COARSE_MS;
    int after = lastWhole * COARSE_MS;
    int low =
        Math.min(
            low(coarseLeast, firstWhole, lastWhole),
            Math.min(low(least, from, before), low(least, after, to)));
    int high =
        Math.max(
            high(coarseGreatest, firstWhole, lastWhole),
            Math.max(high(greatest, from, before), high(greatest, after, to)));
    return new Span(low / FULL, high / FULL);
  }

  private static int low(byte[] values, int from, int to) {
    int low = Byte.MAX_VALUE;
    for (int i = from; i < to; i++) {
      low = Math.min(low, values[i]);
    }
    return low;
  }

  private static int high(byte[] values, int from, int to) {
    int high = Byte.MIN_VALUE;
    for (int i = from; i < to; i++) {
      high = Math.max(high, values[i]);
    }
    return high;
  }
}
