package lampwright.engine.meter;

/**
 * Counts the flashes of one spot of a screen by W3C WCAG 2.2, 2.3.1, from what is painted there:
 * relative luminance of the screen, whose white is 1. A loop is shown twice, with {@link
 * #nextRound} in between.
 */
public final class ScreenFlashes {
  private final double framesPerSecond;
  private final FlashCounter counter;

  /**
   * A spot, before its first frame.
   *
   * @param framesPerSecond above 0 to 1,000
   * @param frames of the scene
   * @param loop whether the first frame follows the last
   */
  public ScreenFlashes(double framesPerSecond, int frames, boolean loop) {
    this.framesPerSecond = framesPerSecond;
    this.counter = new FlashCounter(SecondWindow.frames(framesPerSecond), frames, loop);
  }

  /**
   * Takes the colour of a frame. Frames in which it does not change may be left out, the first of
   * all excepted.
   *
   * @param frame of the scene, past the one before
   * @param r linear red, 0 to 1, and {@code g}, {@code b} likewise
   */
  public void frame(int frame, double r, double g, double b) {
    counter.screen(frame, r, g, b);
  }

  /** The first frame of a loop is shown again. */
  public void nextRound() {
    counter.nextRound();
  }

  /** What was found; to be asked for once, at the end. */
  public FlashCaution found() {
    return counter.found(framesPerSecond);
  }
}
