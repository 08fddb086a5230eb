package lampwright.engine.review;

/** Units of figures, as they are printed. */
public enum Unit {
  NONE(""),
  VOLTS("V"),
  AMPS("A"),
  MILLIAMPS("mA"),
  OHMS("ohm"),
  WATTS("W"),
  SQUARE_MILLIMETRES("mm2"),
  METRES("m"),
  SECONDS("s"),
  MILLISECONDS("ms"),
  MICROSECONDS("us"),
  NANOSECONDS("ns"),
  HERTZ("Hz"),
  FRAMES_PER_SECOND("frames/s"),
  PER_SECOND("per second"),
  PER_MINUTE("per minute"),
  BYTES("bytes"),
  PIXELS("pixels"),
  FRAMES("frames"),
  PERCENT("%"),
  DEGREES_KELVIN("K");

  private final String symbol;

  Unit(String symbol) {
    this.symbol = symbol;
  }

  /** The symbol or word behind a number; empty for a pure number. */
  public String symbol() {
    return symbol;
  }
}
