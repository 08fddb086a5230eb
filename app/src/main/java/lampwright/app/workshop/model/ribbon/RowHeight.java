package lampwright.app.workshop.model.ribbon;

/** How high the ribbons are. */
public enum RowHeight {
  SMALL(0.75, 1),
  MEDIUM(1.2, 2),
  LARGE(2.2, 3.5);

  private final double lines;
  private final double stripe;

  RowHeight(double lines, double stripe) {
    this.lines = lines;
    this.stripe = stripe;
  }

  /** Height of a ribbon of so many stripes, in pixels, where a line of text is {@code em} high. */
  double ribbon(int stripes, double em) {
    return Math.rint(Math.max(lines * em, stripe * stripes + 4));
  }

  /** The next higher one; the smallest after the highest. */
  public RowHeight next() {
    return switch (this) {
      case SMALL -> MEDIUM;
      case MEDIUM -> LARGE;
      case LARGE -> SMALL;
    };
  }
}
