package lampwright.engine.meter;

/**
 * A caution on a scene: a figure, the limit that it passes, where the limit comes from, and a
 * remedy.
 *
 * @param weight how much it matters
 * @param subject the part concerned: {@code supply}, {@code chain roof}, {@code lamp beacon}
 * @param finding what was measured, with its figure
 * @param limit what it is held against
 * @param source where the limit comes from
 * @param remedy what a builder can do
 */
public record Advice(
    Weight weight, String subject, String finding, String limit, String source, String remedy) {
  /** All of it in one line. */
  public String text() {
    return subject + ": " + finding + "; " + limit + " (" + source + "): " + remedy;
  }
}
