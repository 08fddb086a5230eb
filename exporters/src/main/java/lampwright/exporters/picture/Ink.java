package lampwright.exporters.picture;

/**
 * A colour by its meaning, such as the text or what is selected; an enum of each drawing. Whoever
 * paints knows which colour that is by day or by night.
 */
public interface Ink {
  /** The name of the enum's constant. */
  String name();
}
