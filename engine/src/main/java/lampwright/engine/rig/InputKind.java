package lampwright.engine.rig;

import lampwright.engine.field.ChoiceType;

/** What an input listens to. */
public enum InputKind {
  /** Servo pulses of one channel of a receiver. */
  SERVO_PULSE("servo-pulse"),
  /** A contact or a logic level. */
  SWITCH("switch");

  /** How project files write it. */
  public static final ChoiceType<InputKind> TYPE =
      ChoiceType.of("inputKind", InputKind.class, InputKind::key);

  private final String key;

  InputKind(String key) {
    this.key = key;
  }

  /** The word for this in project files. */
  public String key() {
    return key;
  }
}
