package lampwright.exporters.picture;

/** How wide a line of text is. */
@FunctionalInterface
public interface TypeMeasure {
  /** About what it is in a condensed face, for those who can't measure type. */
  TypeMeasure ESTIMATE = (text, size) -> 0.5 * size * text.length();

  /** The width of a text in pixels, at this size of the type. */
  double width(String text, double size);
}
