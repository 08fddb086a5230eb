package lampwright.exporters.packed.encode;

/** Thrown where a section would need more runs or echoes than a byte can count. */
final class TooManyPartsException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  TooManyPartsException(String what, int count) {
    super(what + ": " + count);
  }
}
