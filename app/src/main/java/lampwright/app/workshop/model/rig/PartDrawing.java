package lampwright.app.workshop.model.rig;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwright.exporters.picture.DisplayList;
import lampwright.exporters.picture.Mark;
import lampwright.exporters.picture.Stroke;
import lampwright.exporters.wiring.WiringPart;
import lampwright.exporters.wiring.WiringPart.State;

/** Draws strips of parts: signs on a wire, with name and figure below each. */
final class PartDrawing {
  private static final double HALF = 0.55;

  private final DisplayList.Builder list;
  private final double em;

  PartDrawing(DisplayList.Builder list, double em) {
    this.list = list;
    this.em = em;
  }

  /**
   * Draws a strip.
   *
   * @param left edge
   * @param top edge
   * @param end where the wire of the last line ends
   */
  void strip(PartStrip strip, double left, double top, double end) {
    List<PartStrip.Place> places = strip.places();
    for (int i = 0; i < places.size(); i++) {
      PartStrip.Place place = places.get(i);
      boolean last = i + 1 == places.size() || places.get(i + 1).line() != place.line();
      double y = top + strip.wire(place.line());
      double to = i + 1 == places.size() || last ? end : left + places.get(i + 1).x();
      boolean first = place.x() == 0;
      // A wire comes in from the line above.
      double from = left + place.x() - (first && place.line() > 0 ? 0.8 * em : 0);
      list.line(from, y, Math.max(to, left + place.x() + place.width()), y, wire());
      part(place, left + place.x(), y);
    }
  }

  private Stroke wire() {
    return Stroke.thin(WiringInk.TEXT);
  }

  private static WiringInk ink(State state) {
    return switch (state) {
      case FITTED -> WiringInk.TEXT;
      case ASKED -> WiringInk.WARNING;
      case TROUBLE -> WiringInk.DANGER;
    };
  }

  private void part(PartStrip.Place place, double x, double y) {
    WiringPart part = place.part();
    WiringInk ink = ink(part.state());
    Stroke line = new Stroke(ink, part.state() == State.FITTED ? 1 : 2);
    double middle = x + place.width() / 2;
    switch (part.symbol()) {
      case BOX -> box(part, x, y, place.width(), line);
      case FUSE -> {
        rect(middle, y, 0.9, 0.32, line);
        list.line(middle - 0.9 * em, y, middle + 0.9 * em, y, line);
      }
      case WIRE -> list.line(x, y, x + place.width(), y, new Stroke(ink, 3));
      case CAPACITOR -> capacitor(middle, y, line);
      case RESISTOR -> rect(middle, y, 0.9, 0.32, line);
      case SHIFTER -> triangle(middle, y, line);
      case LED -> {
        triangle(middle, y, line);
        list.line(middle + 0.6 * em, y - HALF * em, middle + 0.6 * em, y + HALF * em, line);
      }
    }
    double below = y + 0.85 * em;
    boolean box = part.symbol() == WiringPart.Symbol.BOX;
    if (!box) {
      words(part.name(), x, below, WiringInk.TEXT_SOFT, place.width());
    }
    String sign = part.state() == State.TROUBLE ? "! " : "";
    words(sign + part.figure(), x, below + (box ? 0.1 : 1.25) * em, ink, place.width());
  }

  private void words(String text, double x, double top, WiringInk ink, double most) {
    if (!text.isEmpty()) {
      list.text(x, top, text, PartStrip.SMALL * em, Mark.Height.TOP, ink, most);
    }
  }

  private void box(WiringPart part, double x, double y, double width, Stroke line) {
    double high = 0.8 * em;
    list.add(
        new Mark.Rect(
            x, y - high, width, 2 * high, Optional.of(WiringInk.FREE), Optional.of(line)));
    list.add(
        new Mark.Text(
            x + width / 2,
            y,
            part.name(),
            PartStrip.SMALL * em,
            false,
            Mark.Side.MIDDLE,
            Mark.Height.CENTRE,
            line.ink(),
            OptionalDouble.of(width - 4)));
  }

  private void rect(double x, double y, double halfWide, double halfHigh, Stroke line) {
    list.add(
        new Mark.Rect(
            x - halfWide * em,
            y - halfHigh * em,
            2 * halfWide * em,
            2 * halfHigh * em,
            Optional.of(WiringInk.FREE),
            Optional.of(line)));
  }

  // Two plates, the lower one to ground.
  private void capacitor(double x, double y, Stroke line) {
    list.line(x, y, x, y + 0.2 * em, line);
    list.line(x - 0.6 * em, y + 0.2 * em, x + 0.6 * em, y + 0.2 * em, new Stroke(line.ink(), 2));
    list.line(x - 0.6 * em, y + 0.42 * em, x + 0.6 * em, y + 0.42 * em, new Stroke(line.ink(), 2));
    list.line(x, y + 0.42 * em, x, y + 0.6 * em, line);
    list.line(x - 0.35 * em, y + 0.6 * em, x + 0.35 * em, y + 0.6 * em, line);
    list.line(x - 0.18 * em, y + 0.74 * em, x + 0.18 * em, y + 0.74 * em, line);
  }

  private void triangle(double x, double y, Stroke line) {
    list.add(
        new Mark.Path(
            List.of(
                new Mark.Point(x - 0.5 * em, y - HALF * em),
                new Mark.Point(x + 0.6 * em, y),
                new Mark.Point(x - 0.5 * em, y + HALF * em)),
            true,
            Optional.of(WiringInk.FREE),
            Optional.of(line)));
  }
}
