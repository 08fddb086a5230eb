package lampwright.app.workshop.model.drawing;

import java.util.ArrayList;
import java.util.List;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Place;
import lampwright.engine.rig.View;

/** Where each pixel of the lamps of one view is drawn. */
public final class Dots {
  /**
   * One pixel.
   *
   * @param lamp index in the rig
   * @param pixel index in the lamp
   * @param x of its middle, in pixels of the screen
   * @param y of its middle
   * @param radius in pixels of the screen, at least 1.5
   */
  public record Dot(int lamp, int pixel, double x, double y, double radius) {}

  /** Where a drawing stands in its pane, in pixels of the screen. */
  public record Frame(double x, double y, double width, double height) {
    /** The largest drawing of this shape in the middle of a pane. */
    public static Frame within(double paneWidth, double paneHeight, double aspect, double margin) {
      double roomWidth = Math.max(1, paneWidth - 2 * margin);
      double roomHeight = Math.max(1, paneHeight - 2 * margin);
      double width = Math.min(roomWidth, roomHeight * aspect);
      double height = width / aspect;
      return new Frame((paneWidth - width) / 2, (paneHeight - height) / 2, width, height);
    }

    /** Where a place is in the pane, from its left edge. */
    public double atX(Place place) {
      return x + place.x() * width;
    }

    /** Where a place is in the pane, from its upper edge. */
    public double atY(Place place) {
      return y + place.y() * height;
    }
  }

  private Dots() {}

  /**
   * The dots of the lamps that are drawn in a view.
   *
   * @param pixels how many pixels each lamp has, by index
   */
  public static List<Dot> of(
      List<Lamp> lamps, java.util.function.IntUnaryOperator pixels, View view, Frame frame) {
    List<Dot> dots = new ArrayList<>();
    for (int i = 0; i < lamps.size(); i++) {
      int lamp = i;
      int count = pixels.applyAsInt(i);
      lamps
          .get(i)
          .place()
          .filter(place -> place.view() == view)
          .ifPresent(place -> add(dots, lamp, count, place, frame));
    }
    return dots;
  }

  // One in the middle, two side by side, more in a ring whose first is in front (below).
  private static void add(List<Dot> dots, int lamp, int count, Place place, Frame frame) {
    double x = frame.atX(place);
    double y = frame.atY(place);
    double half = Math.max(1.5, place.size() * frame.width() / 2);
    if (count == 1) {
      dots.add(new Dot(lamp, 0, x, y, half));
      return;
    }
    double radius;
    double ring;
    if (count == 2) {
      radius = half / 2;
      ring = half / 2;
    } else {
      double share = Math.sin(Math.PI / count);
      radius = half * share / (1 + share);
      ring = half - radius;
    }
    for (int k = 0; k < count; k++) {
      double angle = count == 2 ? (k == 0 ? Math.PI : 0) : Math.PI / 2 + 2 * Math.PI * k / count;
      dots.add(
          new Dot(
              lamp,
              k,
              x + ring * Math.cos(angle),
              y + ring * Math.sin(angle),
              Math.max(1.5, radius)));
    }
  }
}
