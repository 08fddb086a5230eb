package lampwright.engine.meter;

import java.util.Set;
import lampwright.engine.light.Chromaticity;

/**
 * The boundaries of the colours that vehicle lamps may emit, in the CIE 1931 x y diagram.
 *
 * <p>The corner points and lines are from memory of the regulations named. Models are no road
 * vehicles: a colour inside looks like the real lamp, which is all that is claimed.
 */
public enum ColourBoundary {
  AMBER(
      "amber",
      "UN Regulation 48, definitions of colour (from memory)",
      new double[][] {{0.545, 0.425}, {0.560, 0.440}, {0.609, 0.390}, {0.597, 0.390}},
      "green",
      "more saturated",
      "red",
      "white"),
  RED(
      "red",
      "UN Regulation 48, definitions of colour (from memory)",
      new double[][] {{0.645, 0.335}, {0.665, 0.335}, {0.735, 0.265}, {0.721, 0.259}},
      "yellow",
      "more saturated",
      "purple",
      "purple"),
  WHITE(
      "white",
      "UN Regulation 48, definitions of colour (from memory)",
      new double[][] {
        {0.310, 0.348},
        {0.453, 0.440},
        {0.500, 0.440},
        {0.500, 0.382},
        {0.443, 0.382},
        {0.310, 0.283}
      },
      "green",
      "green",
      "yellow",
      "red",
      "purple",
      "blue"),
  // Where the lines y = 1.290x - 0.100, y = 0.992 - x, y = 0.138 + 0.580x and y = 0.940 - x meet.
  SELECTIVE_YELLOW(
      "selective yellow",
      "UN Regulation 48, definitions of colour (from memory)",
      new double[][] {
        meet(1.290, -0.100, -1, 0.940),
        meet(1.290, -0.100, -1, 0.992),
        meet(0.580, 0.138, -1, 0.992),
        meet(0.580, 0.138, -1, 0.940)
      },
      "green",
      "more saturated",
      "red",
      "white"),
  // Where y = 0.065 + 0.805x, y = 0.400 - x and x = 0.133 + 0.600y meet; open to the locus, where
  // the axes close it.
  BLUE(
      "blue",
      "UN Regulation 65, annex 3 (from memory)",
      new double[][] {
        {0, 0.065},
        meet(0.805, 0.065, -1, 0.400),
        meet(1 / 0.6, -0.133 / 0.6, -1, 0.400),
        {0.133, 0},
        {0, 0}
      },
      "green",
      "white",
      "purple",
      "",
      "");

  private static final double ROUNDING = 1e-9;

  private final String words;
  private final String source;
  private final double[][] corner;
  // What lies beyond the side that starts at each corner; empty where no real colour does.
  private final String[] beyond;

  ColourBoundary(String words, String source, double[][] corner, String... beyond) {
    this.words = words;
    this.source = source;
    this.corner = corner;
    this.beyond = beyond;
  }

  /** The colour in words. */
  public String words() {
    return words;
  }

  /** Where the boundary stands, and how surely it is known. */
  public String source() {
    return source;
  }

  /** Whether a chromaticity lies inside or on the border. */
  public boolean contains(Chromaticity point) {
    return margin(point) >= 0;
  }

  /** Distance in x y to the border: 0 or more inside, below 0 outside. */
  public double margin(Chromaticity point) {
    double distance = distance(nearestSide(point), point);
    if (distance <= ROUNDING) {
      return 0;
    }
    return inside(point) ? distance : -distance;
  }

  /**
   * What colour a chromaticity leans to: what lies beyond the side nearest to it, as in "too far
   * towards red".
   */
  public String towards(Chromaticity point) {
    return beyond[nearestSide(point)];
  }

  /**
   * The colours that a lamp of an R48 function may have (UN Regulation 48, section 5.15, from
   * memory; special warning lamps by UN Regulation 65). A position lamp is white to the front and
   * red to the rear, so that a function may have several.
   *
   * @param function the word for it in project files
   * @return none for a function without a colour of its own
   */
  public static Set<ColourBoundary> ofFunction(String function) {
    return switch (function) {
      case "direction-indicator", "hazard" -> Set.of(AMBER);
      case "stop", "rear-fog" -> Set.of(RED);
      case "reversing", "main-beam", "dipped-beam", "daytime-running", "work", "driving" ->
          Set.of(WHITE);
      case "front-fog" -> Set.of(WHITE, SELECTIVE_YELLOW);
      case "position", "end-outline-marker" -> Set.of(WHITE, RED);
      case "side-marker" -> Set.of(AMBER, RED);
      case "special-warning" -> Set.of(AMBER, BLUE, RED);
      default -> Set.of();
    };
  }

  private int nearestSide(Chromaticity point) {
    int nearest = -1;
    for (int i = 0; i < corner.length; i++) {
      if (!beyond[i].isEmpty() && (nearest < 0 || isNearer(i, nearest, point))) {
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
    double[] from = corner[side];
    double[] to = corner[(side + 1) % corner.length];
    double dx = to[0] - from[0];
    double dy = to[1] - from[1];
    double turn = dx * (point.y() - from[1]) - dy * (point.x() - from[0]);
    return Math.abs(turn) / Math.sqrt(dx * dx + dy * dy);
  }

  private double distance(int side, Chromaticity point) {
    double[] from = corner[side];
    double[] to = corner[(side + 1) % corner.length];
    double dx = to[0] - from[0];
    double dy = to[1] - from[1];
    double along = ((point.x() - from[0]) * dx + (point.y() - from[1]) * dy) / (dx * dx + dy * dy);
    double place = Math.min(1, Math.max(0, along));
    double x = point.x() - from[0] - place * dx;
    double y = point.y() - from[1] - place * dy;
    return Math.sqrt(x * x + y * y);
  }

  // A ray to the right crosses the border an odd number of times from inside. White is not convex.
  private boolean inside(Chromaticity point) {
    boolean inside = false;
    for (int i = 0; i < corner.length; i++) {
      double[] from = corner[i];
      double[] to = corner[(i + 1) % corner.length];
      if (from[1] > point.y() != to[1] > point.y()) {
        double x = from[0] + (point.y() - from[1]) / (to[1] - from[1]) * (to[0] - from[0]);
        inside ^= point.x() < x;
      }
    }
    return inside;
  }

  private static double[] meet(double slope, double rise, double otherSlope, double otherRise) {
    double x = (otherRise - rise) / (slope - otherSlope);
    return new double[] {x, slope * x + rise};
  }
}
