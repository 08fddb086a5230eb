package lampwright.exporters.packed.encode;

/** A lamp takes more bytes than short places reach, which is known before all of it is coded. */
final class PlacesTooShortException extends RuntimeException {
  private static final long serialVersionUID = 1;
}
