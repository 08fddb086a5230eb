package lampwright.app.workshop.view.drawing;

/** The colours of the drawing. */
enum Ink {
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
