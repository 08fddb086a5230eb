package lampwright.engine.light;

/** The HSV hexcone at value 1 (A. R. Smith, Color Gamut Transform Pairs, SIGGRAPH 1978). */
final class Hexcone {
  private Hexcone() {}

  /**
   * Writes the code values red, green, blue, each 0 to 1, to {@code into[at .. at + 2]}.
   *
   * @param sixths hue in sixths of the circle, 0 to 6
   * @param saturation 0 to 1
   */
  static void codes(double sixths, double saturation, double[] into, int at) {
    into[at] = code(sixths, saturation);
    into[at + 1] = code(sixths + 4, saturation);
    into[at + 2] = code(sixths + 2, saturation);
  }

  // The remainder of a division by 6, which takes the machine ten times as long.
  private static double withinTurn(double sixths) {
    return sixths < 6 ? sixths : sixths < 12 ? sixths - 6 : sixths % 6;
  }

  // One trapezoid serves the three channels, each shifted by a third of the circle.
  private static double code(double sixths, double saturation) {
    double away = Math.abs(withinTurn(sixths) - 3);
    return 1 - saturation * (1 - Math.min(1, Math.max(0, away - 1)));
  }
}
