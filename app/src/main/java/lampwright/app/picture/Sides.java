package lampwright.app.picture;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.View;

/** Which side of a model shows most. */
public final class Sides {
  private Sides() {}

  /** The side on which the most lamps are drawn; of equals the first of {@link View}. */
  public static View fullest(List<Lamp> lamps) {
    return Stream.of(View.values())
        .max(Comparator.comparingLong(view -> count(lamps, view)))
        .orElseThrow();
  }

  /** A side, or the fullest if no lamp is drawn on that. */
  public static View fullest(List<Lamp> lamps, View wanted) {
    return count(lamps, wanted) > 0 ? wanted : fullest(lamps);
  }

  /** How many lamps are drawn on a side. */
  public static long count(List<Lamp> lamps, View view) {
    return lamps.stream().filter(lamp -> lamp.placeIn(view).isPresent()).count();
  }
}
