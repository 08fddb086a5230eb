package lampwright.exporters.proof.rp2040;

/** What the settings of a state machine mean, taken apart when they are written. */
final class PioConfig {
  static final BitField EXEC_STALLED = field("SM0_EXECCTRL", "EXEC_STALLED");

  private static final BitField DIVIDER_INT = field("SM0_CLKDIV", "INT");
  private static final BitField DIVIDER_FRAC = field("SM0_CLKDIV", "FRAC");
  private static final BitField SIDE_EN = field("SM0_EXECCTRL", "SIDE_EN");
  private static final BitField SIDE_PINDIR = field("SM0_EXECCTRL", "SIDE_PINDIR");
  private static final BitField JMP_PIN = field("SM0_EXECCTRL", "JMP_PIN");
  private static final BitField INLINE_OUT_EN = field("SM0_EXECCTRL", "INLINE_OUT_EN");
  private static final BitField OUT_STICKY = field("SM0_EXECCTRL", "OUT_STICKY");
  private static final BitField WRAP_TOP = field("SM0_EXECCTRL", "WRAP_TOP");
  private static final BitField WRAP_BOTTOM = field("SM0_EXECCTRL", "WRAP_BOTTOM");
  private static final BitField STATUS_SEL = field("SM0_EXECCTRL", "STATUS_SEL");
  private static final BitField STATUS_N = field("SM0_EXECCTRL", "STATUS_N");
  private static final BitField FJOIN_RX = field("SM0_SHIFTCTRL", "FJOIN_RX");
  private static final BitField FJOIN_TX = field("SM0_SHIFTCTRL", "FJOIN_TX");
  private static final BitField PULL_THRESH = field("SM0_SHIFTCTRL", "PULL_THRESH");
  private static final BitField PUSH_THRESH = field("SM0_SHIFTCTRL", "PUSH_THRESH");
  private static final BitField OUT_SHIFTDIR = field("SM0_SHIFTCTRL", "OUT_SHIFTDIR");
  private static final BitField IN_SHIFTDIR = field("SM0_SHIFTCTRL", "IN_SHIFTDIR");
  private static final BitField AUTOPULL = field("SM0_SHIFTCTRL", "AUTOPULL");
  private static final BitField AUTOPUSH = field("SM0_SHIFTCTRL", "AUTOPUSH");
  private static final BitField SIDESET_COUNT = field("SM0_PINCTRL", "SIDESET_COUNT");
  private static final BitField SET_COUNT = field("SM0_PINCTRL", "SET_COUNT");
  private static final BitField OUT_COUNT = field("SM0_PINCTRL", "OUT_COUNT");
  private static final BitField IN_BASE = field("SM0_PINCTRL", "IN_BASE");
  private static final BitField SIDESET_BASE = field("SM0_PINCTRL", "SIDESET_BASE");
  private static final BitField SET_BASE = field("SM0_PINCTRL", "SET_BASE");
  private static final BitField OUT_BASE = field("SM0_PINCTRL", "OUT_BASE");

  /** Bits of an instruction that are shared by side-set and delay. */
  private static final int SHARED_BITS = 5;

  private long divider = 256;
  private int execution;
  private int shift;
  private int pullThreshold;
  private int pushThreshold;
  private boolean autopull;
  private boolean autopush;
  private boolean outRight;
  private boolean inRight;
  private int wrapTop;
  private int wrapBottom;
  private int pins;
  private int sideBits;
  private int sideBase;
  private int sideCount;
  private boolean sideOptional;

  private static BitField field(String register, String name) {
    return RegisterTable.get("PIO0", register).field(name);
  }

  /** Takes a setting. Returns what of it is not modelled; empty if nothing. */
  String read(String register, int value) {
    switch (register) {
      case "SM0_CLKDIV" -> {
        int whole = DIVIDER_INT.of(value);
        if (whole == 0 && DIVIDER_FRAC.of(value) != 0) {
          return "a fraction beside a whole of 0 is not allowed";
        }
        divider = (whole == 0 ? 0x10000L : whole) * 256 + DIVIDER_FRAC.of(value);
      }
      case "SM0_EXECCTRL" -> {
        if (OUT_STICKY.isSet(value) || INLINE_OUT_EN.isSet(value)) {
          return "sticky and enabled output is not modelled";
        }
        execution = value;
        wrapTop = WRAP_TOP.of(value);
        wrapBottom = WRAP_BOTTOM.of(value);
      }
      case "SM0_SHIFTCTRL" -> {
        if (FJOIN_RX.isSet(value) && FJOIN_TX.isSet(value)) {
          return "both queues joined to one another";
        }
        shift = value;
        pullThreshold = threshold(PULL_THRESH.of(value));
        pushThreshold = threshold(PUSH_THRESH.of(value));
        autopull = AUTOPULL.isSet(value);
        autopush = AUTOPUSH.isSet(value);
        outRight = OUT_SHIFTDIR.isSet(value);
        inRight = IN_SHIFTDIR.isSet(value);
      }
      default -> {
        if (SIDESET_COUNT.of(value) > SHARED_BITS
            || SET_COUNT.of(value) > SHARED_BITS
            || OUT_COUNT.of(value) > 32) {
          return Block.hex(value) + " names more pins than there can be";
        }
        pins = value;
      }
    }
    sideBits = SIDESET_COUNT.of(pins);
    sideOptional = SIDE_EN.isSet(execution);
    sideCount = sideBits - (sideOptional ? 1 : 0);
    sideBase = SIDESET_BASE.of(pins);
    return "";
  }

  private static int threshold(int value) {
    return value == 0 ? 32 : value;
  }

  /** System clock cycles a tick, in parts of 256. */
  long divider() {
    return divider;
  }

  boolean joins() {
    return FJOIN_TX.isSet(shift);
  }

  boolean joinsIn() {
    return FJOIN_RX.isSet(shift);
  }

  boolean autopull() {
    return autopull;
  }

  boolean autopush() {
    return autopush;
  }

  int pullThreshold() {
    return pullThreshold;
  }

  int pushThreshold() {
    return pushThreshold;
  }

  boolean outRight() {
    return outRight;
  }

  boolean inRight() {
    return inRight;
  }

  int wrapTop() {
    return wrapTop;
  }

  int wrapBottom() {
    return wrapBottom;
  }

  int jumpPin() {
    return JMP_PIN.of(execution);
  }

  int inBase() {
    return IN_BASE.of(pins);
  }

  boolean statusOfRx() {
    return STATUS_SEL.isSet(execution);
  }

  int statusLevel() {
    return STATUS_N.of(execution);
  }

  int delay(int instruction) {
    return instruction >>> 8 & (1 << (SHARED_BITS - sideBits)) - 1;
  }

  void sideSet(Pio pio, int instruction) {
    int side = (instruction >>> 8 & 31) >>> (SHARED_BITS - sideBits);
    if (sideCount <= 0 || (sideOptional && (side >>> sideCount & 1) == 0)) {
      return;
    }
    put(pio, sideBase, sideCount, side, SIDE_PINDIR.isSet(execution));
  }

  void outPins(Pio pio, int value) {
    put(pio, OUT_BASE.of(pins), OUT_COUNT.of(pins), value, false);
  }

  void outDirections(Pio pio, int value) {
    put(pio, OUT_BASE.of(pins), OUT_COUNT.of(pins), value, true);
  }

  void setPins(Pio pio, int value) {
    put(pio, SET_BASE.of(pins), SET_COUNT.of(pins), value, false);
  }

  void setDirections(Pio pio, int value) {
    put(pio, SET_BASE.of(pins), SET_COUNT.of(pins), value, true);
  }

  private static void put(Pio pio, int base, int count, int value, boolean directions) {
    int mask = Integer.rotateLeft(count == 32 ? -1 : (1 << count) - 1, base);
    int placed = Integer.rotateLeft(value, base);
    if (directions) {
      pio.directions(mask, placed);
    } else {
      pio.levels(mask, placed);
    }
  }
}
