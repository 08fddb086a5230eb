package lampwright.engine.meter;

import com.google.common.collect.Ordering;
import java.util.Optional;
import java.util.Set;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.rig.LampFunction;

/**
 * Where a colour lies against the boundaries that a lamp's function allows.
 *
 * @param boundary the one that it lies in, or nearest to
 * @param margin distance in x y to its border: below 0 outside
 * @param towards what it leans to
 */
public record ColourPlace(ColourBoundary boundary, double margin, String towards) {
  /** The place of a colour; none for a function without a colour of its own. */
  public static Optional<ColourPlace> of(LampFunction function, Chromaticity point) {
    Set<ColourBoundary> allowed = ColourBoundary.ofFunction(function.key());
    return allowed.stream()
        .sorted()
        .max(Ordering.natural().onResultOf(boundary -> boundary.margin(point)))
        .map(nearest -> new ColourPlace(nearest, nearest.margin(point), nearest.towards(point)));
  }

  /** Whether it lies inside or on the border. */
  public boolean inside() {
    return margin >= 0;
  }
}
