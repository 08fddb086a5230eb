package lampwright.app.workshop.model.rig;

import java.util.ArrayList;
import java.util.List;
import lampwright.exporters.picture.TypeMeasure;
import lampwright.exporters.wiring.WiringPart;

/**
 * Parts in a row on their wire, which goes on in the next line where the width ends.
 *
 * @param places of the parts, in order
 * @param lines how many there are
 * @param em height of a line of text, in pixels
 */
record PartStrip(List<Place> places, int lines, double em) {
  /**
   * Where a part is.
   *
   * @param x of its left edge, from that of the strip
   * @param width of the part with its words
   * @param line from 0
   */
  record Place(WiringPart part, double x, double width, int line) {}

  /** Size of the words, in em. */
  static final double SMALL = 0.9;

  private static final double LINE = 4.4;
  private static final double BETWEEN = 1.2;

  PartStrip {
    places = List.copyOf(places);
  }

  static PartStrip of(List<WiringPart> parts, double width, double em, TypeMeasure measure) {
    List<Place> places = new ArrayList<>();
    double x = 0;
    int line = 0;
    for (WiringPart part : parts) {
      double wide = Math.min(width, width(part, em, measure));
      if (x > 0 && x + wide > width) {
        x = 0;
        line++;
      }
      places.add(new Place(part, x, wide, line));
      x += wide + BETWEEN * em;
    }
    return new PartStrip(places, parts.isEmpty() ? 0 : line + 1, em);
  }

  private static double width(WiringPart part, double em, TypeMeasure measure) {
    double words =
        Math.max(measure.width(part.name(), SMALL * em), measure.width(part.figure(), SMALL * em));
    return Math.ceil(words + (part.symbol() == WiringPart.Symbol.BOX ? em : 0.2 * em));
  }

  double height() {
    return lines * LINE * em;
  }

  /** The height of a line's wire, from the top of the strip. */
  double wire(int line) {
    return (line * LINE + 0.9) * em;
  }
}
