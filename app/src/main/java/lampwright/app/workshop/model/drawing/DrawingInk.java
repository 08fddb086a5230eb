package lampwright.app.workshop.model.drawing;

import lampwright.app.picture.Ink;

/** The colours of the drawing. */
public enum DrawingInk implements Ink {
  PAPER,
  NIGHT,
  NIGHT_BODY,
  NIGHT_LINE,
  DAY,
  DAY_BODY,
  DAY_LINE,
  LEADER,
  LEADER_CHOSEN,
  LABEL,
  LABEL_BACK,
  SOCKET
}
