package lampwright.engine.meter;

import java.util.Arrays;
import lampwright.engine.facts.TradeNumbers;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.light.SrgbSpace;

/**
 * Counts the flashes of one light, frame by frame; what it keeps does not grow with the length of a
 * scene.
 *
 * <p>A scene that plays once is shown once. A loop is shown twice, with {@link #nextRound} in
 * between: what the first round leaves behind is what was before its seam, and the second round is
 * counted. What comes past its end is the second round again.
 */
final class FlashCounter {
  /** A state below this share of the greatest luminance counts as black. */
  private static final double BLACK_BELOW = TradeNumbers.number("flash caution", "black below");

  /**
   * Linear red, green and blue below this, 1 the screen's white, count as black: WCAG 2.0 did not
   * see red flashes in less.
   */
  static final double SCREEN_BLACK_BELOW =
      TradeNumbers.number("flash caution", "red not seen below") / 320;

  /** Far above what rounding adds to a share, far below what an eye sees. */
  private static final double ROUNDING = 1e-9;

  private static final double BLACK_U = Chromaticity.D65.uPrime();
  private static final double BLACK_V = Chromaticity.D65.vPrime();

  private final int frames;
  private final boolean loop;
  private final Changes general;
  private final Changes red;
  private final LuminanceTurns luminance = new LuminanceTurns();
  private final RedTurns redness = new RedTurns();
  private boolean counting;

  /**
   * @param second number of frames in one second
   * @param frames of the scene
   * @param loop whether the first frame follows the last
   */
  FlashCounter(int second, int frames, boolean loop) {
    this.frames = frames;
    this.loop = loop;
    this.counting = !loop;
    general = new Changes(second);
    red = new Changes(second);
  }

  /** Whether light could be a saturated red, if it is not too dim for one. */
  static boolean isRed(double x, double y, double z) {
    return RedTurns.isSaturated(
        SrgbSpace.red(x, y, z), SrgbSpace.green(x, y, z), SrgbSpace.blue(x, y, z));
  }

  /**
   * Takes the light of a frame; frames in which it does not change may be left out, the first of
   * all excepted.
   *
   * @param frame of the scene
   * @param x CIE X, and {@code y}, {@code z} likewise
   * @param greatest the greatest Y of the scene, above 0
   * @param everRed whether any frame of the scene {@link #isRed}
   */
  void light(int frame, double x, double y, double z, double greatest, boolean everRed) {
    double relative = y / greatest;
    if (luminance.next(relative)) {
      general.add(frame, counting);
    }
    if (everRed) {
      boolean black = relative < BLACK_BELOW - ROUNDING;
      redness(frame, black, !black && isRed(x, y, z), x, y, z);
    }
  }

  /**
   * Takes what a screen shows in a frame, likewise.
   *
   * @param r linear red, 0 to 1, and {@code g}, {@code b} likewise
   */
  void screen(int frame, double r, double g, double b) {
    double y = SrgbSpace.y(r, g, b);
    if (luminance.next(y)) {
      general.add(frame, counting);
    }
    boolean black = Math.max(r, Math.max(g, b)) < SCREEN_BLACK_BELOW;
    boolean saturated = !black && RedTurns.isSaturated(r, g, b);
    redness(frame, black, saturated, SrgbSpace.x(r, g, b), y, SrgbSpace.z(r, g, b));
  }

  private void redness(int frame, boolean black, boolean saturated, double x, double y, double z) {
    double scale = x + 15 * y + 3 * z;
    double u = black ? BLACK_U : 4 * x / scale;
    double v = black ? BLACK_V : 9 * y / scale;
    if (redness.next(saturated, u, v)) {
      red.add(frame, counting);
    }
  }

  /** The first frame of a loop is shown again. */
  void nextRound() {
    counting = true;
    general.total = 0;
  }

  /** How many changes of luminance there were since the scene, or its second round, began. */
  int changes() {
    return general.total;
  }

  /** What was found; to be asked for once, at the end. */
  FlashCaution found(double framesPerSecond) {
    return new FlashCaution(
        general.worst(frames, loop, framesPerSecond), red.worst(frames, loop, framesPerSecond));
  }

  /** The changes of one kind. */
  private static final class Changes {
    private final int second;
    private final SecondWindow window;
    // Those of the first second of the round: in a loop they follow after its end.
    private int[] early = {};
    private int earlyCount;
    private int total;

    Changes(int second) {
      this.second = second;
      this.window = new SecondWindow(second);
    }

    void add(int frame, boolean counting) {
      total++;
      if (!counting) {
        return;
      }
      window.add(frame);
      if (frame < second) {
        if (earlyCount == early.length) {
          early = Arrays.copyOf(early, Math.max(4, 2 * earlyCount));
        }
        early[earlyCount++] = frame;
      }
    }

    FlashCaution.Worst worst(int frames, boolean loop, double framesPerSecond) {
      // A short loop goes round as often as a second needs.
      for (int round = frames; loop && round < frames + second; round += frames) {
        for (int i = 0; i < earlyCount && round + early[i] < frames + second; i++) {
          window.add(round + early[i]);
        }
      }
      return new FlashCaution.Worst(
          window.mostPairs(), window.mostStart() % frames / framesPerSecond);
    }
  }
}
