package lampwright.engine.document;

import lampwright.engine.field.ChoiceType;

/** The kind of model, of which the workshop has drawings. */
public enum ModelKind {
  ROAD_TRACTOR("road-tractor"),
  RECOVERY_VEHICLE("recovery-vehicle"),
  FIRE_CARRIER("fire-carrier"),
  FARM_TRACTOR("farm-tractor"),
  CAR("car"),
  LAUNCH("launch"),
  MOBILE_CRANE("mobile-crane"),
  LOCOMOTIVE("locomotive"),
  AIRCRAFT("aircraft"),
  HOUSE("house"),
  HARBOUR_FRONT("harbour-front");

  /** How project files write it. */
  public static final ChoiceType<ModelKind> TYPE =
      ChoiceType.of("model", ModelKind.class, ModelKind::key);

  private final String key;

  ModelKind(String key) {
    this.key = key;
  }

  /** The word for this in project files. */
  public String key() {
    return key;
  }
}
