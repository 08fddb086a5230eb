package lampwright.app.outline;

import java.util.Arrays;
import java.util.Optional;

/**
 * What a piece of a drawing is. The look gives each its colour, by day and by night; its line is as
 * wide at every scale.
 */
public enum Tone {
  BODY("body", true, Tone.OUTLINE_WIDTH),
  /** A second tone of the body. */
  SECOND("second", true, Tone.DETAIL_WIDTH),
  CHASSIS("chassis", true, Tone.DETAIL_WIDTH),
  GLASS("glass", true, Tone.DETAIL_WIDTH),
  TYRE("tyre", true, Tone.OUTLINE_WIDTH),
  RIM("rim", true, Tone.DETAIL_WIDTH),
  /** An unlit lamp. */
  LENS("lens", true, Tone.DETAIL_WIDTH),
  OUTLINE("outline", false, Tone.OUTLINE_WIDTH),
  DETAIL("detail", false, Tone.DETAIL_WIDTH),
  HAIR("hair", false, Tone.HAIR_WIDTH),
  /** What is turned from the light: darkens what is below. */
  SHADE("shade", true, 0),
  /** Light on glass and tyres: lightens what is below. */
  GLEAM("gleam", true, 0),
  WATER("water", true, 0);

  private static final double OUTLINE_WIDTH = 1.5;
  private static final double DETAIL_WIDTH = 0.9;
  private static final double HAIR_WIDTH = 0.55;

  private final String key;
  private final boolean filled;
  private final double lineWidth;

  Tone(String key, boolean filled, double lineWidth) {
    this.key = key;
    this.filled = filled;
    this.lineWidth = lineWidth;
  }

  /** The class of such pieces in the files. */
  public String key() {
    return key;
  }

  /** Whether it is an area, else lines alone. */
  public boolean isFilled() {
    return filled;
  }

  /** The width of its line in pixels of the screen, whatever the scale; 0 of what has none. */
  public double lineWidth() {
    return lineWidth;
  }

  /** The tone with this class. */
  public static Optional<Tone> of(String key) {
    return Arrays.stream(values()).filter(tone -> tone.key.equals(key)).findFirst();
  }
}
