package lampwright.app.workshop.model.ribbon;

import lampwright.exporters.picture.Ink;

/** The colours of the ribbons. */
public enum RibbonInk implements Ink {
  PAPER,
  HEADING,
  ROW_CHOSEN,
  TEXT,
  TEXT_SOFT,
  LINE,
  /** A sign that is off. */
  SIGN,
  UNLIT,
  ON_FILM,
  ON_FILM_CHOSEN,
  CUE_EDGE,
  CUE_TEXT,
  CUE_CHOSEN_EDGE,
  PAST_END,
  BAND,
  /** The waveform of a sound. */
  WAVE,
  CURVE_R,
  CURVE_G,
  CURVE_B,
  CURVE_W
}
