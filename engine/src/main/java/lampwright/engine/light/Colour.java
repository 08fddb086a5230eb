package lampwright.engine.light;

import lampwright.engine.check.Checks;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.Unit;

/** A colour as a builder states it; what an emitter does for it is the {@link Mixer}'s work. */
public sealed interface Colour {
  /** The default colour of every pattern. */
  Colour WHITE = new Srgb(255, 255, 255);

  /**
   * An sRGB colour.
   *
   * @param red code value 0 to 255
   * @param green code value 0 to 255
   * @param blue code value 0 to 255
   */
  record Srgb(int red, int green, int blue) implements Colour {
    public Srgb {
      Checks.of("srgb")
          .range("red", red, 0, 255)
          .range("green", green, 0, 255)
          .range("blue", blue, 0, 255)
          .done();
    }
  }

  /**
   * A hue of the HSV hexcone at value 1.
   *
   * @param degrees 0 to 360
   * @param saturation 0 to 1
   */
  record Hue(double degrees, double saturation) implements Colour {
    public Hue {
      Checks.of("hue").range("hue", degrees, 0, 360).range("saturation", saturation, 0, 1).done();
    }
  }

  /**
   * The white of a black body.
   *
   * @param kelvin its temperature, 1,667 to 25,000 K
   */
  record Kelvin(double kelvin) implements Colour {
    public static final double MIN = 1667;
    public static final double MAX = 25000;
    public static final NumberType RANGE = new NumberType(Unit.KELVIN, MIN, MAX);

    public Kelvin {
      Checks.of("kelvin").range("kelvin", kelvin, MIN, MAX).done();
    }
  }

  /** A signal colour of vehicle lighting. */
  record Signal(SignalColour colour) implements Colour {}

  /**
   * The drives themselves, past every curve.
   *
   * @param r red, 0 to 1, linear
   * @param g green, 0 to 1, linear
   * @param b blue, 0 to 1, linear
   * @param w white, 0 to 1, linear; ignored where a pixel has no white emitter
   */
  record Drive(double r, double g, double b, double w) implements Colour {
    public Drive {
      Checks.of("drive")
          .range("r", r, 0, 1)
          .range("g", g, 0, 1)
          .range("b", b, 0, 1)
          .range("w", w, 0, 1)
          .done();
    }
  }
}
