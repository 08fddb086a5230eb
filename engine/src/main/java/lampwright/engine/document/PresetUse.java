package lampwright.engine.document;

import lampwright.engine.field.ChoiceType;

/** What a preset is for. */
public enum PresetUse {
  WARNING("warning"),
  ROAD("road"),
  WORK("work"),
  SCENERY("scenery"),
  HARBOUR("harbour"),
  TEST("test");

  /** How files write it. */
  public static final ChoiceType<PresetUse> TYPE =
      ChoiceType.of("use", PresetUse.class, PresetUse::key);

  private final String key;

  PresetUse(String key) {
    this.key = key;
  }

  /** The word for this in files. */
  public String key() {
    return key;
  }
}
