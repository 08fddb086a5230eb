package lampwright.engine.rig;

import lampwright.engine.field.ChoiceType;

/** How a lamp is drawn. */
public enum LampShape {
  /** All its pixels on one spot. */
  DOT("dot"),
  /** Its pixels in a row. */
  BAR("bar"),
  /** Its pixels in a circle. */
  RING("ring"),
  /** Its pixels in rows, one below another, as near to a square as they come. */
  GRID("grid"),
  /** A spot that throws its light to one side. */
  BEAM("beam");

  /** How project files write it. */
  public static final ChoiceType<LampShape> TYPE =
      ChoiceType.of("lampShape", LampShape.class, LampShape::key);

  private final String key;

  LampShape(String key) {
    this.key = key;
  }

  /** The word for this in project files. */
  public String key() {
    return key;
  }
}
