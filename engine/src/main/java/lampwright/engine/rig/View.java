package lampwright.engine.rig;

import lampwright.engine.field.ChoiceType;

/** A side from which the model is drawn. */
public enum View {
  FRONT("front"),
  SIDE("side"),
  REAR("rear"),
  TOP("top");

  /** How project files write it. */
  public static final ChoiceType<View> TYPE = ChoiceType.of("view", View.class, View::key);

  private final String key;

  View(String key) {
    this.key = key;
  }

  /** The word for this in project files. */
  public String key() {
    return key;
  }
}
