package lampwright.engine.meter;

import lampwright.engine.check.Checks;
import lampwright.engine.facts.TradeNumbers;

/**
 * The flash caution of W3C WCAG 2.2, success criterion 2.3.1: at most three general flashes and at
 * most three red flashes in any one second. That flashes on a small area are exempt is not judged
 * here.
 *
 * @param general flashes of luminance in the second that has most
 * @param red flashes to or from saturated red in the second that has most
 */
public record FlashCaution(Worst general, Worst red) {
  /** The most flashes in one second that pass. */
  public static final int MOST_FLASHES =
      (int) TradeNumbers.number("flash caution", "flashes in one second");

  /** What never flashes. */
  public static final FlashCaution NONE = new FlashCaution(new Worst(0, 0), new Worst(0, 0));

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

  /** The worse of two, of each kind. */
  public FlashCaution orWorse(FlashCaution other) {
    return new FlashCaution(
        other.general.flashes > general.flashes ? other.general : general,
        other.red.flashes > red.flashes ? other.red : red);
  }

  /** Flashes of the kind that has more, in its worst second. */
  public int most() {
    return Math.max(general.flashes, red.flashes);
  }

  /** Whether both kinds of flash are no more than may be. */
  public boolean passes() {
    return general.passes() && red.passes();
  }

  /**
   * Counts the flashes of a light.
   *
   * <p>Relative luminance is Y over the greatest that there is, so that nothing passes for being
   * dim or blue. A state below a tenth of it counts as black. A second is the frame rate, rounded
   * up, of frames one after another. A scene that plays once has nothing before or after; a loop
   * goes on from its end to its start.
   *
   * @param xyz CIE X, Y and Z of each frame, in any unit
   * @param framesPerSecond above 0 to 1,000
   * @param loop whether the first frame follows the last
   * @throws IllegalArgumentException if there is no frame, or light that is no number
   */
  public static FlashCaution measure(double[] xyz, double framesPerSecond, boolean loop) {
    if (xyz.length == 0 || xyz.length % 3 != 0) {
      throw new IllegalArgumentException(
          "xyz: "
              + xyz.length
              + " numbers: must have three for each frame, and at least one frame");
    }
    Checks.require("frames per second", framesPerSecond, 1e-6, 1000);
    int frames = xyz.length / 3;
    double greatest = 0;
    for (int i = 0; i < xyz.length; i++) {
      Checks.require("X, Y or Z", xyz[i], 0, Double.MAX_VALUE);
      greatest = i % 3 == 1 ? Math.max(greatest, xyz[i]) : greatest;
    }
    if (greatest == 0) {
      return NONE;
    }
    FlashCounter counter = new FlashCounter(SecondWindow.frames(framesPerSecond), frames, loop);
    for (int round = loop ? 0 : 1; round < 2; round++) {
      for (int i = 0; i < frames; i++) {
        counter.light(i, xyz[3 * i], xyz[3 * i + 1], xyz[3 * i + 2], greatest, true);
      }
      if (round == 0) {
        counter.nextRound();
      }
    }
    return counter.found(framesPerSecond);
  }
}
