package lampwright.app.workshop.view.cue;

import javafx.scene.paint.Color;
import lampwright.app.workshop.model.cue.PixelLook;
import lampwright.engine.light.Colour;
import lampwright.engine.light.SignalColour;

/** The forms in which a colour can be given. */
enum ColourForm {
  SRGB,
  HUE,
  KELVIN,
  SIGNAL,
  DRIVE;

  static ColourForm of(Colour colour) {
    if (colour instanceof Colour.Srgb) {
      return SRGB;
    } else if (colour instanceof Colour.Hue) {
      return HUE;
    } else if (colour instanceof Colour.Kelvin) {
      return KELVIN;
    } else if (colour instanceof Colour.Signal) {
      return SIGNAL;
    }
    return DRIVE;
  }

  /** A colour of this form, as near to another as it simply can be. */
  Colour turned(Colour from) {
    int argb = PixelLook.requested(from);
    Color colour = Swatches.paint(argb);
    return switch (this) {
      case SRGB -> new Colour.Srgb(argb >> 16 & 0xFF, argb >> 8 & 0xFF, argb & 0xFF);
      case HUE ->
          new Colour.Hue(
              Math.round(colour.getHue()), Math.round(colour.getSaturation() * 100) / 100.0);
      case KELVIN -> new Colour.Kelvin(colour.getRed() > colour.getBlue() ? 3000 : 6500);
      case SIGNAL -> new Colour.Signal(SignalColour.AMBER);
      case DRIVE -> new Colour.Drive(0, 0, 0, 1);
    };
  }
}
