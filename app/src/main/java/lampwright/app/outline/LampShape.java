package lampwright.app.outline;

import java.util.Arrays;
import java.util.Optional;

/** How a lamp is drawn. */
public enum LampShape {
  DOT("dot"),
  /** Pixels side by side; its size is its length. */
  BAR("bar"),
  /** Pixels around. */
  RING("ring"),
  GRID("grid"),
  /** A lamp that throws its light one way. */
  BEAM("beam");

  private final String key;

  LampShape(String key) {
    this.key = key;
  }

  /** The word for this in files. */
  public String key() {
    return key;
  }

  /** The shape with this word. */
  public static Optional<LampShape> of(String key) {
    return Arrays.stream(values()).filter(shape -> shape.key.equals(key)).findFirst();
  }
}
