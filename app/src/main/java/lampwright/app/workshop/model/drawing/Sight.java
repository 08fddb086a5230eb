package lampwright.app.workshop.model.drawing;

import lampwright.app.picture.Dots;

/**
 * How near the drawing is looked at. It is the workshop's, not the project's.
 *
 * @param zoom 1 shows the whole drawing, to {@link #MOST}
 * @param x what is in the middle of the pane, as a share of the drawing's width
 * @param y the same of its height
 */
public record Sight(double zoom, double x, double y) {
  /** The nearest look. */
  public static final double MOST = 16;

  /** The whole drawing. */
  public static final Sight WHOLE = new Sight(1, 0.5, 0.5);

  public Sight {
    zoom = Math.max(1, Math.min(MOST, zoom));
    x = zoom == 1 ? 0.5 : Math.max(0, Math.min(1, x));
    y = zoom == 1 ? 0.5 : Math.max(0, Math.min(1, y));
  }

  /** Where the drawing stands in a pane, if whole it stands in {@code whole}. */
  public Dots.Frame of(Dots.Frame whole, double paneWidth, double paneHeight) {
    if (zoom == 1) {
      return whole;
    }
    double width = whole.width() * zoom;
    double height = whole.height() * zoom;
    return new Dots.Frame(paneWidth / 2 - x * width, paneHeight / 2 - y * height, width, height);
  }

  /**
   * Looks nearer by a factor, or from further away with one below 1; what is at a point stays
   * there.
   *
   * @param frame where the drawing stands now
   */
  public Sight zoomed(
      double factor,
      Dots.Frame frame,
      double atX,
      double atY,
      double paneWidth,
      double paneHeight) {
    double next = Math.max(1, Math.min(MOST, zoom * factor));
    double grown = next / zoom;
    double left = atX - (atX - frame.x()) * grown;
    double top = atY - (atY - frame.y()) * grown;
    return new Sight(
        next,
        (paneWidth / 2 - left) / (frame.width() * grown),
        (paneHeight / 2 - top) / (frame.height() * grown));
  }

  /** Moves the drawing by pixels. */
  public Sight moved(double byX, double byY, Dots.Frame frame) {
    return new Sight(zoom, x - byX / frame.width(), y - byY / frame.height());
  }
}
