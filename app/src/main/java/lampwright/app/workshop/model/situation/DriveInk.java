package lampwright.app.workshop.model.situation;

import lampwright.exporters.picture.Ink;

/** The colours of the strip of a drive. */
public enum DriveInk implements Ink {
  TEXT,
  TEXT_SOFT,
  LINE,
  TRACE,
  BAR,
  PLAYHEAD
}
