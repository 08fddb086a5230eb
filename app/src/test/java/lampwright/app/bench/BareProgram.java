package lampwright.app.bench;

/** Does nothing: what every Java program pays to start. */
public final class BareProgram {
  private BareProgram() {}

  /** Ends at once. */
  public static void main(String[] arguments) {}
}
