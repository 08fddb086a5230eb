package lampwright.app.workshop.model.cue;

import lampwright.engine.light.Colour;
import lampwright.engine.light.MatchedMix;

/**
 * What a lamp makes of every hue and saturation: a field of cells, hues from the left, saturation
 * from full at the top to none at the bottom.
 */
public final class ColourReach {
  public static final int HUES = 72;
  public static final int STEPS = 21;
  private static final double DEGREES = 360;

  private final int[] argb = new int[HUES * STEPS];
  private final boolean[] reached = new boolean[HUES * STEPS];

  private ColourReach() {}

  /** The field of a lamp. */
  public static ColourReach of(PixelLook look) {
    ColourReach reach = new ColourReach();
    for (int step = 0; step < STEPS; step++) {
      for (int hue = 0; hue < HUES; hue++) {
        Colour colour = colour(hue, step);
        reach.argb[step * HUES + hue] = look.argb(colour);
        reach.reached[step * HUES + hue] =
            look.explain(colour).map(MatchedMix::reachesTarget).orElse(true);
      }
    }
    return reach;
  }

  /** The colour that a cell stands for. */
  public static Colour.Hue colour(int hue, int step) {
    return new Colour.Hue(DEGREES * hue / HUES, 1 - step / (STEPS - 1.0));
  }

  /** The colour at a place of the field, whose sides are 1; whole degrees and percent. */
  public static Colour.Hue at(double x, double y) {
    return new Colour.Hue(
        Math.min(DEGREES - 1, Math.rint(DEGREES * within(x))),
        Math.rint(100 * (1 - within(y))) / 100);
  }

  private static double within(double share) {
    return Math.max(0, Math.min(1, share));
  }

  /** What the lamp makes of a cell's colour, opaque ARGB. */
  public int argb(int hue, int step) {
    return argb[step * HUES + hue];
  }

  /** Whether its emitters can mix it, but for a difference that is not visible. */
  public boolean reached(int hue, int step) {
    return reached[step * HUES + hue];
  }
}
