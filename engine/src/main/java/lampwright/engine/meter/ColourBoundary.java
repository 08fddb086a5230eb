package lampwright.engine.meter;

import java.util.List;
import java.util.Set;
import lampwright.engine.facts.SourcedNumber;
import lampwright.engine.facts.TradeNumbers;
import lampwright.engine.light.Chromaticity;

/**
 * The boundaries of the colours that lamps of vehicles and vessels may emit, in the CIE 1931 x y
 * diagram.
 *
 * <p>Models are no road vehicles: a colour inside looks like the real lamp, which is all that is
 * claimed.
 */
public enum ColourBoundary {
  AMBER("amber", "green", "more saturated", "red", "white"),
  RED("red", "yellow", "more saturated", "purple", "purple"),
  WHITE("white", "green", "green", "yellow", "red", "purple", "blue"),
  SELECTIVE_YELLOW("selective-yellow", "green", "red", "white", "white", "more saturated"),
  BLUE("blue", "green", "white", "purple"),
  GREEN("green", "more saturated", "yellow", "white", "blue");

  private final String words;
  private final SourcedNumber given;
  private final XyRegion region;

  /**
   * @param key its item in the table of numbers, which gives its corners or its lines
   * @param beyond what colours lie beyond its sides, in the order of the corners that they start
   *     at, or of the lines
   */
  ColourBoundary(String key, String... beyond) {
    this.words = key.replace('-', ' ');
    this.given = TradeNumbers.get("colour boundary", key);
    this.region =
        given.unit().equals("lines")
            ? XyRegion.ofLines(given.parts(), List.of(beyond))
            : XyRegion.ofCorners(given.points(), List.of(beyond));
  }

  /** The colour in words. */
  public String words() {
    return words;
  }

  /** Where the boundary is, and how surely it is known. */
  public String source() {
    return given.citation();
  }

  /** Whether a chromaticity lies inside or on the border. */
  public boolean contains(Chromaticity point) {
    return margin(point) >= 0;
  }

  /** Distance in x y to the border: 0 or more inside, below 0 outside. */
  public double margin(Chromaticity point) {
    return region.margin(point);
  }

  /**
   * What colour a chromaticity leans to: what lies beyond the side nearest to it, as in "too far
   * towards red".
   */
  public String towards(Chromaticity point) {
    return region.towards(point);
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
}
