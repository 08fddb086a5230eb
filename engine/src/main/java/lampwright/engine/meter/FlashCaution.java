package lampwright.engine.meter;

import lampwright.engine.light.Checks;

/**
 * The flash caution of W3C WCAG 2.2, success criterion 2.3.1: at most three general flashes and at
 * most three red flashes in any one second. That flashes on a small area are exempt is not judged
 * here.
 *
 * @param general flashes of luminance in the second that has most
 * @param red flashes to or from saturated red in the second that has most
 */
public record FlashCaution(Worst general, Worst red) {
  /** The most flashes in one second that pass (WCAG 2.2, 2.3.1). */
  public static final int MOST_FLASHES = 3;

  /**
   * The second with most flashes.
   *
   * @param flashes pairs of opposing changes in it
   * @param startSeconds when it starts: at the first change in it; 0 if nothing flashes
   */
  public record Worst(int flashes, double startSeconds) {
    /** Whether there are no more than may be. */
    public boolean passes() {
      return flashes <= MOST_FLASHES;
    }
  }

  /** Whether both kinds of flash are no more than may be. */
  public boolean passes() {
    return general.passes() && red.passes();
  }

  /**
   * Counts the flashes of a sequence.
   *
   * <p>A change of luminance is counted in the frame by which it comes to 10 % of white. A window
   * of one second holds its start and not its end, so that three flashes a second pass and four
   * fail.
   *
   * @param rgb linear sRGB of each frame, three numbers each, white is 1; what lies outside 0 to 1
   *     is taken as the bound
   * @param framesPerSecond above 0 to 1,000
   * @param loop whether the first frame follows the last
   */
  public static FlashCaution measure(double[] rgb, double framesPerSecond, boolean loop) {
    if (rgb.length == 0 || rgb.length % 3 != 0) {
      throw new IllegalArgumentException(
          "rgb: " + rgb.length + " numbers: needs three for each frame, and one frame at least");
    }
    Checks.require("frames per second", framesPerSecond, 1e-6, 1000);
    double[] bounded = new double[rgb.length];
    for (int i = 0; i < rgb.length; i++) {
      Checks.require("linear red, green or blue", rgb[i], -Double.MAX_VALUE, Double.MAX_VALUE);
      bounded[i] = Math.min(1, Math.max(0, rgb[i]));
    }
    int frames = rgb.length / 3;
    return new FlashCaution(
        worst(new LuminanceChanges(bounded, loop).frames(), frames, framesPerSecond, loop),
        worst(new RedChanges(bounded, loop).frames(), frames, framesPerSecond, loop));
  }

  /**
   * The window of a second that holds most changes.
   *
   * @param changes frames, rising, each 0 to {@code frames} in a loop where the last is the first
   */
  private static Worst worst(int[] changes, int frames, double framesPerSecond, boolean loop) {
    int most = 0;
    int mostStart = 0;
    long end = 0;
    for (int start = 0; start < changes.length; start++) {
      // The end only moves on, so that this is linear; a short loop is gone round many times.
      while ((loop || end < changes.length)
          && frame(changes, end, frames) - changes[start] < framesPerSecond) {
        end++;
      }
      int count = (int) (end - start);
      if (count / 2 > most) {
        most = count / 2;
        mostStart = changes[start] % frames;
      }
    }
    return new Worst(most, mostStart / framesPerSecond);
  }

  private static double frame(int[] changes, long i, int frames) {
    long rounds = i / changes.length;
    return changes[(int) (i % changes.length)] + (double) rounds * frames;
  }
}
