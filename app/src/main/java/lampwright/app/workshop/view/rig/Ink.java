package lampwright.app.workshop.view.rig;

/** The colours of the wiring. */
enum Ink {
  PAPER,
  TEXT,
  TEXT_SOFT,
  LINE,
  FREE,
  OWNED,
  MARKED,
  CHOSEN
}
