package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import lampwright.engine.rig.Feel;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.LampFunction;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Place;
import lampwright.engine.rig.View;

/** The values of a lamp. The ranges are those of the records. */
public final class LampSettings {
  private static final Kind.Amount SHARE = Kind.Amount.of("", 0, 1, 0.05);

  private LampSettings() {}

  /** All but its id and place. */
  public static List<Setting<Lamp, ?>> of(Lamp lamp) {
    List<Setting<Lamp, ?>> settings =
        new ArrayList<>(
            List.of(
                new Setting<>("name", new Kind.Text(200), Lamp::name, Lamp::withName),
                new Setting<>(
                    "function",
                    new Kind.Choice<>(
                        "function", List.of(LampFunction.values()), LampFunction::key),
                    Lamp::function,
                    Lamp::withFunction)));
    if (lamp.fitting() instanceof Fitting.Pixels) {
      settings.add(
          new Setting<>(
              "runs",
              new Kind.Runs(),
              l -> l.fitting() instanceof Fitting.Pixels p ? p.runs() : List.<PixelRun>of(),
              (l, v) -> l.withFitting(new Fitting.Pixels(v))));
    }
    settings.add(feel("riseMs", Feel::riseMs, (f, v) -> new Feel(v, f.fallMs())));
    settings.add(feel("fallMs", Feel::fallMs, (f, v) -> new Feel(f.riseMs(), v)));
    return List.copyOf(settings);
  }

  /** Where it stands on the drawing. */
  public static List<Setting<Lamp, ?>> place() {
    Place first =
        new Place(Place.DEFAULT_VIEW, Place.DEFAULT_X, Place.DEFAULT_Y, Place.DEFAULT_SIZE);
    return List.of(
        new Setting<>(
            "place.view",
            new Kind.Maybe<>(
                new Kind.Choice<>("view", List.of(View.values()), View::key), View.SIDE),
            l -> l.place().map(Place::view),
            (l, v) ->
                l.withPlace(
                    v.map(
                        view -> {
                          Place p = l.place().orElse(first);
                          return new Place(view, p.x(), p.y(), p.size());
                        }))),
        placed("place.x", SHARE, Place::x, (p, v) -> new Place(p.view(), v, p.y(), p.size())),
        placed("place.y", SHARE, Place::y, (p, v) -> new Place(p.view(), p.x(), v, p.size())),
        placed(
            "place.size",
            Kind.Amount.of("", 0.001, 1, 0.01),
            Place::size,
            (p, v) -> new Place(p.view(), p.x(), p.y(), v)));
  }

  private static Setting<Lamp, BigDecimal> feel(
      String key, Function<Feel, Double> get, BiFunction<Feel, Double, Feel> set) {
    Feel none = new Feel(Feel.DEFAULT_RISE_MS, Feel.DEFAULT_FALL_MS);
    return new Setting<>(
        "feel." + key,
        Kind.Amount.of("ms", 0, 60_000, 10),
        l -> BigDecimal.valueOf(l.feel().map(get).orElse(0.0)),
        (l, v) -> {
          Feel feel = set.apply(l.feel().orElse(none), v.doubleValue());
          return l.withFeel(feel.equals(none) ? Optional.empty() : Optional.of(feel));
        });
  }

  private static Setting<Lamp, BigDecimal> placed(
      String key,
      Kind.Amount kind,
      Function<Place, Double> get,
      BiFunction<Place, Double, Place> set) {
    Place first =
        new Place(Place.DEFAULT_VIEW, Place.DEFAULT_X, Place.DEFAULT_Y, Place.DEFAULT_SIZE);
    return new Setting<>(
        key,
        kind,
        l -> BigDecimal.valueOf(get.apply(l.place().orElse(first))),
        (l, v) -> l.withPlace(l.place().map(p -> set.apply(p, v.doubleValue()))));
  }
}
