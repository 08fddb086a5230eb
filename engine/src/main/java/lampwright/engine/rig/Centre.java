package lampwright.engine.rig;

import lampwright.engine.field.ChoiceType;

/** Where the centre of a servo pulse comes from. */
public enum Centre {
  /** Always 1,500 us. */
  FIXED("fixed"),
  /** Learnt from the first pulses, with the stick at rest. */
  POWER_UP("power-up");

  /** How project files write it. */
  public static final ChoiceType<Centre> TYPE = ChoiceType.of("centre", Centre.class, Centre::key);

  private final String key;

  Centre(String key) {
    this.key = key;
  }

  /** The word for this in project files. */
  public String key() {
    return key;
  }
}
