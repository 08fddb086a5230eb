package lampwright.app.live;

/** How a link is. {@link LinkWords} has the words. */
public sealed interface LinkState {
  /** There is none. */
  record Closed() implements LinkState {}

  /** Its port is opened, and the controller asked whether it is there. */
  record Asking(String port) implements LinkState {}

  /** Frames go to the controller. */
  record Live(String port, LinkFigures figures) implements LinkState {}

  /** It was there, and is tried again. */
  record Lost(String port) implements LinkState {}

  /** It is over. */
  record Failed(LinkTrouble trouble) implements LinkState {}
}
