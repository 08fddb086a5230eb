package lampwright.app.workshop.edit;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Place;
import lampwright.engine.rig.Rig;
import lampwright.engine.rig.View;

/** The order of the ribbons: as the lamps stand on the model, so that leader lines do not cross. */
public final class LampOrder {
  private LampOrder() {}

  /**
   * The lamps of a rig: those drawn in this view from the top down, then from the left; then all
   * others in rig order.
   */
  public static List<Lamp> of(Rig rig, View view) {
    Stream<Lamp> drawn =
        rig.lamps().stream()
            .filter(lamp -> isIn(lamp, view))
            .sorted(
                Comparator.comparingDouble(
                        (Lamp lamp) -> lamp.placeIn(view).map(Place::y).orElse(0.0))
                    .thenComparingDouble(lamp -> lamp.placeIn(view).map(Place::x).orElse(0.0)));
    Stream<Lamp> others = rig.lamps().stream().filter(lamp -> !isIn(lamp, view));
    return Stream.concat(drawn, others).toList();
  }

  private static boolean isIn(Lamp lamp, View view) {
    return lamp.placeIn(view).isPresent();
  }
}
