package lampwright.engine.review;

/** How much a finding matters, the gravest first. */
public enum Severity {
  /** The project can't be used, or an export or proof of it would be refused. */
  ERROR("error"),
  /** It may hurt someone or destroy something. */
  DANGER("danger"),
  /** It will not work as it is meant, or not as on the real one. */
  CAUTION("caution"),
  /** Worth knowing; nothing has to be done, and it does not count as a problem. */
  NOTE("note");

  private final String key;

  Severity(String key) {
    this.key = key;
  }

  /** The word for this in messages and in JSON. */
  public String key() {
    return key;
  }

  /** Whether a finding of this severity is a problem, and no mere note. */
  public boolean problem() {
    return this != NOTE;
  }
}
