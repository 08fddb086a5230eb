package lampwright.engine.light;

/**
 * The signal colours of vehicle lighting. Each is a point of our choosing well inside the boundary
 * that UN Regulation 48 (for blue UN Regulation 65, annex 3) draws for that colour.
 */
public enum SignalColour {
  AMBER("amber", 0.578, 0.411),
  RED("red", 0.692, 0.300),
  WHITE("white", 0.3451, 0.3516),
  BLUE("blue", 0.140, 0.065),
  SELECTIVE_YELLOW("selective-yellow", 0.500, 0.460);

  private final String key;
  private final Chromaticity chromaticity;

  SignalColour(String key, double x, double y) {
    this.key = key;
    this.chromaticity = new Chromaticity(x, y);
  }

  /** The word for this colour in project files. */
  public String key() {
    return key;
  }

  public Chromaticity chromaticity() {
    return chromaticity;
  }
}
