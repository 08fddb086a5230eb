package lampwright.app.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.LampShape;
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
   * @param beam the light that it throws, if it throws any
   */
  public record Dot(int lamp, int pixel, double x, double y, double radius, Optional<Beam> beam) {
    /** One without a beam. */
    public Dot(int lamp, int pixel, double x, double y, double radius) {
      this(lamp, pixel, x, y, radius, Optional.empty());
    }

    /** The same dot where each unit is so many pixels, as on a screen at a scale above 100 %. */
    public Dot times(double scale) {
      return new Dot(
          lamp,
          pixel,
          x * scale,
          y * scale,
          radius * scale,
          beam.map(b -> new Beam(b.turnDegrees(), b.spreadDegrees(), b.length() * scale)));
    }
  }

  /**
   * Light that is thrown to one side.
   *
   * @param turnDegrees its direction, clockwise from the right
   * @param spreadDegrees its angle
   * @param length how far it is seen, in pixels of the screen
   */
  public record Beam(double turnDegrees, double spreadDegrees, double length) {}

  /** Where a drawing is in its pane, in pixels of the screen. */
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

  private static final double LEAST_RADIUS = 1.5;

  /** Of the way from pixel to pixel: a little dark between them tells them apart. */
  private static final double BAR_RADIUS = 0.44;

  /** No pixel of a bar is larger, as a share of the drawing's width: a long bar has gaps. */
  private static final double MOST_PIXEL = 0.014;

  /** Of a work lamp or headlamp, about (common practice). */
  private static final double USUAL_SPREAD_DEGREES = 30;

  /** How far a beam is seen, as a share of the drawing's width. Our own choice. */
  private static final double BEAM_REACH = 0.45;

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
      for (Place place : lamps.get(i).places()) {
        if (place.view() == view) {
          add(dots, lamp, count, place, frame);
        }
      }
    }
    return dots;
  }

  private static void add(List<Dot> dots, int lamp, int count, Place place, Frame frame) {
    double half = Math.max(LEAST_RADIUS, place.size() * frame.width() / 2);
    LampShape shape = place.shape().orElse(count == 1 ? LampShape.DOT : LampShape.BAR);
    Spread spread = new Spread(dots, lamp, place, frame, half);
    switch (shape) {
      case DOT -> spread.cluster(count, Optional.empty());
      case BEAM -> spread.cluster(count, Optional.of(beam(place, frame)));
      case BAR -> spread.rows(count, count);
      case GRID -> spread.rows(count, (int) Math.ceil(Math.sqrt(count)));
      case RING -> spread.ring(count);
    }
  }

  private static Beam beam(Place place, Frame frame) {
    return new Beam(
        place.turnDegrees(),
        place.spreadDegrees().orElse(USUAL_SPREAD_DEGREES),
        BEAM_REACH * frame.width());
  }

  /** Puts the pixels of a lamp around its place. */
  private static final class Spread {
    private final List<Dot> dots;
    private final int lamp;
    private final double x;
    private final double y;
    private final double half;
    private final double width;
    private final double cos;
    private final double sin;

    Spread(List<Dot> dots, int lamp, Place place, Frame frame, double half) {
      this.dots = dots;
      this.lamp = lamp;
      this.x = frame.atX(place);
      this.y = frame.atY(place);
      this.half = half;
      this.width = frame.width();
      this.cos = Math.cos(Math.toRadians(place.turnDegrees()));
      this.sin = Math.sin(Math.toRadians(place.turnDegrees()));
    }

    /** All of them on one spot, one over another: their light adds up. */
    void cluster(int count, Optional<Beam> beam) {
      for (int k = 0; k < count; k++) {
        dots.add(new Dot(lamp, k, x, y, half, beam));
      }
    }

    /** Rows of so many; a single row is a bar. */
    void rows(int count, int across) {
      int down = (count + across - 1) / across;
      double pitch = 2 * half / across;
      double packed = Math.min(BAR_RADIUS * pitch, MOST_PIXEL * width);
      double radius = Math.max(LEAST_RADIUS, across == 1 ? half : packed);
      if (across > 1) {
        pitch = Math.min(pitch, 2 * (half - radius) / (across - 1));
      }
      for (int k = 0; k < count; k++) {
        int row = k / across;
        double along = (k % across - (across - 1) / 2.0) * pitch;
        double aside = (row - (down - 1) / 2.0) * pitch;
        dots.add(
            new Dot(lamp, k, x + along * cos - aside * sin, y + along * sin + aside * cos, radius));
      }
    }

    /** A circle whose first pixel is in front, below, unless it is turned. */
    void ring(int count) {
      if (count < 3) {
        rows(count, count);
        return;
      }
      double share = Math.sin(Math.PI / count);
      double radius = half * share / (1 + share);
      double ring = half - radius;
      for (int k = 0; k < count; k++) {
        double angle = Math.PI / 2 + 2 * Math.PI * k / count;
        double along = ring * Math.cos(angle);
        double aside = ring * Math.sin(angle);
        dots.add(
            new Dot(
                lamp,
                k,
                x + along * cos - aside * sin,
                y + along * sin + aside * cos,
                Math.max(LEAST_RADIUS, radius)));
      }
    }
  }
}
