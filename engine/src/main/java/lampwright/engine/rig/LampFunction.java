package lampwright.engine.rig;

import lampwright.engine.light.Colour;
import lampwright.engine.light.SignalColour;

/** What a lamp is on the vehicle: the lamp names of UN Regulation 48, or other. */
public enum LampFunction {
  OTHER("other"),
  DIRECTION_INDICATOR("direction-indicator"),
  STOP("stop"),
  POSITION("position"),
  REVERSING("reversing"),
  MAIN_BEAM("main-beam"),
  DIPPED_BEAM("dipped-beam"),
  HAZARD("hazard"),
  SPECIAL_WARNING("special-warning"),
  FRONT_FOG("front-fog"),
  REAR_FOG("rear-fog"),
  SIDE_MARKER("side-marker"),
  END_OUTLINE_MARKER("end-outline-marker"),
  DAYTIME_RUNNING("daytime-running"),
  WORK("work"),
  DRIVING("driving");

  private final String key;

  LampFunction(String key) {
    this.key = key;
  }

  /** The word for this in project files. */
  public String key() {
    return key;
  }

  /** The colour that such lamps usually have (UN Regulation 48); white for the others. */
  public Colour usualColour() {
    return switch (this) {
      case DIRECTION_INDICATOR, HAZARD, SPECIAL_WARNING, SIDE_MARKER ->
          new Colour.Signal(SignalColour.AMBER);
      case STOP, REAR_FOG -> new Colour.Signal(SignalColour.RED);
      default -> Colour.WHITE;
    };
  }
}
