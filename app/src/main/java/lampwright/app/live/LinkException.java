package lampwright.app.live;

/** There is no link, or none any more. */
public final class LinkException extends Exception {
  private static final long serialVersionUID = 1;

  private final transient LinkTrouble trouble;

  public LinkException(LinkTrouble trouble) {
    super(LinkWords.of(trouble));
    this.trouble = trouble;
  }

  /** Why. */
  public LinkTrouble trouble() {
    return trouble;
  }
}
