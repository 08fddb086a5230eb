package lampwright.app.picture;

import lampwright.app.outline.Tone;
import lampwright.exporters.picture.Ink;

/** The colours of the drawing. */
public enum DrawingInk implements Ink {
  /** Behind the model: darker than paper by day, so that white light shows. */
  WASH,
  LINE,
  BODY,
  SECOND,
  CHASSIS,
  GLASS,
  TYRE,
  RIM,
  LENS,
  SHADE,
  GLEAM,
  WATER,
  /** An unlit pixel, as in the ribbons: dim light is seen on it too. */
  FILM,
  LEADER,
  LEADER_CHOSEN,
  LABEL,
  LABEL_BACK,
  SOCKET;

  /** The colour of areas of a tone. */
  static DrawingInk of(Tone tone) {
    return switch (tone) {
      case BODY -> BODY;
      case SECOND -> SECOND;
      case CHASSIS -> CHASSIS;
      case GLASS -> GLASS;
      case TYRE -> TYRE;
      case RIM -> RIM;
      case LENS -> LENS;
      case SHADE -> SHADE;
      case GLEAM -> GLEAM;
      case WATER -> WATER;
      case OUTLINE, DETAIL, HAIR -> LINE;
    };
  }
}
