package lampwright.engine.field;

/** What the number of a field counts, as messages, documents and forms write it. */
public enum Unit {
  NONE(""),
  /** Of a chromaticity. */
  COORDINATE(""),
  /** 0 to 1 in files, per cent on the screen. */
  SHARE(""),
  MILLISECONDS("ms"),
  MICROSECONDS("us"),
  NANOSECONDS("ns"),
  HERTZ("Hz"),
  FRAMES_PER_SECOND("frames/s"),
  PER_MINUTE("/min"),
  /** Shares of a whole turn or period, of which there may be more than one. */
  TURNS(""),
  DEGREES("degrees"),
  KELVIN("K"),
  MILLICANDELA("mcd"),
  VOLTS("V"),
  AMPS("A"),
  MILLIAMPS("mA"),
  MILLIAMP_HOURS("mAh"),
  MEGAHERTZ("MHz"),
  MILLIMETRES("mm"),
  SQUARE_MILLIMETRES("mm2"),
  GAUGE("AWG");

  private final String symbol;

  Unit(String symbol) {
    this.symbol = symbol;
  }

  /** Its sign behind a number; empty if it has none. */
  public String symbol() {
    return symbol;
  }
}
