package lampwright.exporters.wiring;

import java.util.Locale;
import java.util.ResourceBundle;
import lampwright.engine.words.TextBundle;

/**
 * A part between supply, controller and light, as the wiring draws it.
 *
 * @param symbol its sign
 * @param name what it is, as {@code fuse}
 * @param figure its value, as {@code 2 A}; may be empty
 * @param state whether it is set, asked for or in trouble
 */
public record WiringPart(Symbol symbol, String name, String figure, State state) {
  /** The signs. */
  public enum Symbol {
    /** A device with its name in it: supply, battery, regulator, controller, driver. */
    BOX,
    FUSE,
    WIRE,
    CAPACITOR,
    RESISTOR,
    SHIFTER,
    LED
  }

  /** How a part is. */
  public enum State {
    /** As set in the rig, or as common practice has it. */
    FITTED,
    /** Not set, and asked for by a finding. */
    ASKED,
    /** Set, and a finding is about it. */
    TROUBLE
  }

  static final TextBundle TEXTS =
      TextBundle.of(
          ResourceBundle.getBundle(
              "lampwright.exporters.wiring.wiring", Locale.ROOT, WiringPart.class.getModule()));

  /** The part in words. */
  public String words() {
    return TEXTS.get("words", name, figure).strip();
  }
}
