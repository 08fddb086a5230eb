package lampwright.app.start;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import lampwright.app.outline.Models;
import lampwright.app.outline.UsualLamp;
import lampwright.app.outline.UsualLamp.OneLamp;
import lampwright.engine.document.ModelKind;
import lampwright.engine.rig.Place;
import lampwright.engine.rig.View;

/**
 * The order of groups of lamps along the data line: from the left of the drawing that shows most of
 * the model, which is the front of a vehicle, to its right. Lamps of a group stay together.
 */
final class WiringOrder {
  private final View main;

  private WiringOrder(View main) {
    this.main = main;
  }

  static Comparator<UsualLamp> of(ModelKind kind) {
    WiringOrder order = new WiringOrder(Models.mainView(kind));
    return Comparator.comparingDouble(order::along);
  }

  // All that there can be of a group: a lamp more or less must not move the others.
  private double along(UsualLamp group) {
    return group.each().stream().mapToDouble(this::along).average().orElse(0);
  }

  private double along(OneLamp lamp) {
    return x(lamp, main)
        .or(() -> main == View.SIDE ? x(lamp, View.TOP) : x(lamp, View.REAR).map(x -> 1 - x))
        .or(() -> x(lamp, View.FRONT).map(x -> 0.0))
        .or(() -> x(lamp, View.REAR).map(x -> 1.0))
        .orElse(0.5);
  }

  private static Optional<Double> x(OneLamp lamp, View view) {
    List<Place> there = lamp.places().stream().filter(place -> place.view() == view).toList();
    return there.stream().findFirst().map(Place::x);
  }
}
