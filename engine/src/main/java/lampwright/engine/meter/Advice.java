package lampwright.engine.meter;

import java.util.OptionalInt;

/**
 * A caution on a scene: a figure, the limit that it passes, where the limit comes from, and a
 * remedy.
 *
 * @param weight how much it matters
 * @param about the part concerned
 * @param frame the frame in which it is found or begins, from 0; none if it is found in no one
 *     frame
 * @param finding what was measured, with its figure
 * @param limit what it is held against
 * @param source where the limit comes from
 * @param remedy what a builder can do
 */
public record Advice(
    Weight weight,
    Subject about,
    OptionalInt frame,
    String finding,
    String limit,
    String source,
    String remedy) {
  /** An advice that belongs to no one frame. */
  Advice(Weight weight, Subject about, String finding, String limit, String source, String remedy) {
    this(weight, about, OptionalInt.empty(), finding, limit, source, remedy);
  }

  /** The part concerned, in words: {@code supply}, {@code chain roof}, {@code lamp beacon}. */
  public String subject() {
    return about.words();
  }

  /** All of it in one line. */
  public String text() {
    return subject() + ": " + finding + "; " + limit + " (" + source + "): " + remedy;
  }
}
