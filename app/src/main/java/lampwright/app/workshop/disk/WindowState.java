package lampwright.app.workshop.disk;

import java.util.List;
import java.util.Optional;
import lampwright.engine.rig.View;

/**
 * How the window was left.
 *
 * @param place of its frame; none before it was first closed
 * @param maximised whether it filled the screen
 * @param dividers positions of the dividers between its parts, 0 to 1, in the window's own order
 * @param dark whether its colours are dark
 * @param view from which the model is drawn
 * @param rows how the ribbons are seen
 */
public record WindowState(
    Optional<Frame> place,
    boolean maximised,
    List<Double> dividers,
    boolean dark,
    View view,
    Rows rows) {
  /**
   * How the ribbons are seen.
   *
   * @param titles width of the titles in lines of text, 0 to 1,000; 0 for the usual one
   * @param height word for their height; empty for the usual one
   * @param folded groups of which only one ribbon is shown
   */
  public record Rows(double titles, String height, List<String> folded) {
    /** As at first. */
    public static final Rows FIRST = new Rows(0, "", List.of());

    private static final double MOST = 1000;

    public Rows {
      folded = List.copyOf(folded);
      if (!(titles >= 0 && titles <= MOST)) {
        throw new IllegalArgumentException("titles: " + titles + ": must be between 0 and 1000");
      }
    }
  }

  /** A window that was never open. */
  public static final WindowState FIRST =
      new WindowState(Optional.empty(), false, List.of(), false, View.SIDE, Rows.FIRST);

  /**
   * Where a window stands, in pixels of the screen that JavaFX counts.
   *
   * @param x of its left edge
   * @param y of its top edge
   * @param width at least {@link #LEAST}
   * @param height at least {@link #LEAST}
   */
  public record Frame(double x, double y, double width, double height) {
    /** A smaller window can't be used. */
    public static final double LEAST = 200;

    private static final double MOST = 100_000;

    public Frame {
      // Written so that NaN is refused.
      if (!(Math.abs(x) <= MOST
          && Math.abs(y) <= MOST
          && width >= LEAST
          && width <= MOST
          && height >= LEAST
          && height <= MOST)) {
        throw new IllegalArgumentException(
            "window: " + x + ", " + y + ", " + width + ", " + height + ": needs a usable frame");
      }
    }
  }

  public WindowState {
    dividers = List.copyOf(dividers);
    for (double divider : dividers) {
      if (!(divider >= 0 && divider <= 1)) {
        throw new IllegalArgumentException("dividers: " + divider + ": needs 0 to 1");
      }
    }
  }
}
