package lampwright.exporters.picture;

/** Colours of charts on white paper; each is at least 4.5:1 against it, so that it prints. */
public enum ChartInk implements Ink {
  PAPER("#ffffff"),
  TEXT("#1b2733"),
  /** Scale, and names beside the first. */
  SOFT("#5a6470"),
  /** Lines of the scale behind the strips. */
  GRID("#c9ced3"),
  /** What is past a limit. */
  WARNING("#b3261e");

  private final String css;

  ChartInk(String css) {
    this.css = css;
  }

  /** As CSS writes it, {@code #rrggbb}. */
  public String css() {
    return css;
  }
}
