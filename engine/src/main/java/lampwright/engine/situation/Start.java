package lampwright.engine.situation;

import lampwright.engine.field.ChoiceType;

/** Where the scene of a situation begins. */
public enum Start {
  /** At its first frame, where the situation becomes active. */
  RESTART("restart"),
  /** With the show: scenes that share its clock keep in step. */
  SHARED("shared");

  /** How project files write it. */
  public static final ChoiceType<Start> TYPE = ChoiceType.of("start", Start.class, Start::key);

  private final String key;

  Start(String key) {
    this.key = key;
  }

  /** The word for this in project files. */
  public String key() {
    return key;
  }
}
