package lampwright.exporters;

/** Ends an export that is no longer wanted. */
public final class CancelledException extends Exception {
  private static final long serialVersionUID = 1L;

  public CancelledException() {
    super("the export was cancelled");
  }
}
