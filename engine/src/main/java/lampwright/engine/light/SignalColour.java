package lampwright.engine.light;

import java.util.List;
import lampwright.engine.facts.TradeNumbers;

/**
 * The signal colours of vehicles and vessels. Each is a point of our choosing well inside the
 * boundary of that colour: of UN Regulation 48, for blue UN Regulation 65, annex 3, for green
 * COLREG 1972, annex I.
 */
public enum SignalColour {
  AMBER("amber"),
  RED("red"),
  WHITE("white"),
  BLUE("blue"),
  GREEN("green"),
  SELECTIVE_YELLOW("selective-yellow");

  private final String key;
  private final Chromaticity chromaticity;

  SignalColour(String key) {
    this.key = key;
    List<Double> xy = TradeNumbers.get("signal colour", key).numbers();
    this.chromaticity = new Chromaticity(xy.get(0), xy.get(1));
  }

  /** The word for this colour in project files. */
  public String key() {
    return key;
  }

  public Chromaticity chromaticity() {
    return chromaticity;
  }
}
