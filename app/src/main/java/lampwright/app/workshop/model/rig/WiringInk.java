package lampwright.app.workshop.model.rig;

import lampwright.exporters.picture.Ink;

/** The colours of the wiring. */
public enum WiringInk implements Ink {
  PAPER,
  TEXT,
  TEXT_SOFT,
  LINE,
  FREE,
  OWNED,
  MARKED,
  CHOSEN,
  WARNING,
  DANGER
}
