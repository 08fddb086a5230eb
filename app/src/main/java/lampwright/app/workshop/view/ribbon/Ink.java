package lampwright.app.workshop.view.ribbon;

/** The colours of the ribbons. */
enum Ink {
  PAPER,
  ROW_CHOSEN,
  TEXT,
  TEXT_SOFT,
  LINE,
  UNLIT,
  CUE,
  CUE_EDGE,
  CUE_TEXT,
  CUE_CHOSEN,
  CUE_CHOSEN_EDGE,
  PAST_END,
  BAND,
  CURVE_R,
  CURVE_G,
  CURVE_B,
  CURVE_W
}
