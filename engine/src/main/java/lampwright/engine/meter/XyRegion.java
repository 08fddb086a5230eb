package lampwright.engine.meter;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lampwright.engine.light.Chromaticity;

/**
 * A region of the CIE 1931 x y diagram with straight sides, each of which knows what lies beyond
 * it; nothing where no real colour does.
 */
final class XyRegion {
  private static final double ROUNDING = 1e-9;

  // y <= 0.992 - x, y >= 0.440, x <= 0.133 + 0.600 y
  private static final Pattern LINE =
      Pattern.compile("([xy]) ([<>])= (-?[0-9.]+)(?: ([+-]) (?:([0-9.]+) )?[xy])?");

  /** A corner and what lies beyond the side that starts at it. */
  private record Corner(double x, double y, String beyond) {}

  private final List<Corner> corners;

  private XyRegion(List<Corner> corners) {
    this.corners = corners;
  }

  /**
   * The region between corners.
   *
   * @param corners x and y of each, in order round the region
   * @param beyond what lies beyond the side from each corner to the next
   */
  static XyRegion ofCorners(List<List<Double>> corners, List<String> beyond) {
    List<Corner> all = new ArrayList<>();
    for (int i = 0; i < corners.size(); i++) {
      all.add(new Corner(corners.get(i).get(0), corners.get(i).get(1), beyond.get(i)));
    }
    return new XyRegion(all);
  }

  /**
   * What lines leave of the diagram's triangle.
   *
   * @param lines such as {@code y <= 0.992 - x}
   * @param beyond what lies beyond each
   */
  static XyRegion ofLines(List<String> lines, List<String> beyond) {
    List<Corner> left = List.of(new Corner(0, 0, ""), new Corner(1, 0, ""), new Corner(0, 1, ""));
    for (int i = 0; i < lines.size(); i++) {
      left = cut(left, Side.parse(lines.get(i)), beyond.get(i));
    }
    return new XyRegion(left);
  }

  /** Distance in x y to the border: 0 or more inside, below 0 outside. */
  double margin(Chromaticity point) {
    double distance = distance(nearestSide(point), point);
    if (distance <= ROUNDING) {
      return 0;
    }
    return inside(point) ? distance : -distance;
  }

  /** What lies beyond the side nearest to a point. */
  String towards(Chromaticity point) {
    return corners.get(nearestSide(point)).beyond();
  }

  /** One side of a line: how far a point is on the right side of it, in units of its own. */
  private record Side(double sign, double onX, double onY, double constant) {
    static Side parse(String line) {
      Matcher read = LINE.matcher(line);
      if (!read.matches()) {
        throw new IllegalArgumentException(line + ": must be a line such as y <= 0.992 - x");
      }
      double slope = read.group(5) == null ? 1 : Double.parseDouble(read.group(5));
      double other = read.group(4) == null ? 0 : read.group(4).equals("-") ? -slope : slope;
      boolean ofX = read.group(1).equals("x");
      return new Side(
          read.group(2).equals("<") ? 1 : -1,
          ofX ? -1 : other,
          ofX ? other : -1,
          Double.parseDouble(read.group(3)));
    }

    double of(Corner point) {
      return sign * (constant + onX * point.x() + onY * point.y());
    }
  }

  private static List<Corner> cut(List<Corner> region, Side side, String beyond) {
    List<Corner> left = new ArrayList<>();
    for (int i = 0; i < region.size(); i++) {
      Corner from = region.get(i);
      Corner to = region.get((i + 1) % region.size());
      double here = side.of(from);
      double there = side.of(to);
      if (here >= 0) {
        left.add(from);
      }
      if (here >= 0 != there >= 0) {
        double part = here / (here - there);
        left.add(
            new Corner(
                from.x() + part * (to.x() - from.x()),
                from.y() + part * (to.y() - from.y()),
                here >= 0 ? beyond : from.beyond()));
      }
    }
    return left;
  }

  private int nearestSide(Chromaticity point) {
    int nearest = -1;
    for (int i = 0; i < corners.size(); i++) {
      if (!corners.get(i).beyond().isEmpty() && (nearest < 0 || isNearer(i, nearest, point))) {
        nearest = i;
      }
    }
    return nearest;
  }

  // Beyond a corner two sides are equally near: the one that is overstepped more counts.
  private boolean isNearer(int side, int than, Chromaticity point) {
    double difference = distance(side, point) - distance(than, point);
    return Math.abs(difference) > ROUNDING
        ? difference < 0
        : offLine(side, point) > offLine(than, point);
  }

  private double offLine(int side, Chromaticity point) {
    Corner from = corners.get(side);
    double dx = end(side).x() - from.x();
    double dy = end(side).y() - from.y();
    double turn = dx * (point.y() - from.y()) - dy * (point.x() - from.x());
    return Math.abs(turn) / Math.sqrt(dx * dx + dy * dy);
  }

  private double distance(int side, Chromaticity point) {
    Corner from = corners.get(side);
    double dx = end(side).x() - from.x();
    double dy = end(side).y() - from.y();
    double along =
        ((point.x() - from.x()) * dx + (point.y() - from.y()) * dy) / (dx * dx + dy * dy);
    double place = Math.min(1, Math.max(0, along));
    double x = point.x() - from.x() - place * dx;
    double y = point.y() - from.y() - place * dy;
    return Math.sqrt(x * x + y * y);
  }

  // A ray to the right crosses the border an odd number of times from inside. White is not convex.
  private boolean inside(Chromaticity point) {
    boolean inside = false;
    for (int i = 0; i < corners.size(); i++) {
      Corner from = corners.get(i);
      Corner to = end(i);
      if (from.y() > point.y() != to.y() > point.y()) {
        double x = from.x() + (point.y() - from.y()) / (to.y() - from.y()) * (to.x() - from.x());
        inside ^= point.x() < x;
      }
    }
    return inside;
  }

  private Corner end(int side) {
    return corners.get((side + 1) % corners.size());
  }
}
