package lampwright.app.workshop.edit;

import java.util.List;
import java.util.Optional;
import lampwright.engine.field.Field;
import lampwright.engine.rig.Feel;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Place;

/** The values of a lamp. */
public final class LampSettings {
  private static final Feel AT_ONCE = Feel.SHAPE.draft().make();
  private static final Place MIDDLE = Place.SHAPE.draft().make();

  private LampSettings() {}

  /** All but its id and place. */
  public static List<Setting<Lamp, ?>> of(Lamp lamp) {
    return ShapeSettings.of(Lamp.SHAPE)
        .without(Lamp.ID, Lamp.PLACE, Lamp.ALSO_AT)
        .own(Lamp.FITTING, lamp.fitting() instanceof Fitting.Pixels ? List.of(runs()) : List.of())
        .own(Lamp.FEEL, List.of(feel(Feel.RISE_MS), feel(Feel.FALL_MS)))
        .list();
  }

  private static Setting<Lamp, List<PixelRun>> runs() {
    return new Setting<>(
        "runs",
        new Kind.Runs(),
        lamp -> lamp.fitting() instanceof Fitting.Pixels p ? p.runs() : List.<PixelRun>of(),
        (lamp, runs) -> Lamp.FITTING.with(lamp, new Fitting.Pixels(runs)));
  }

  /** Where it stands on the drawing. */
  public static List<Setting<Lamp, ?>> place() {
    return List.of(
        FieldSettings.stating(Lamp.PLACE, MIDDLE, Place.VIEW, "place.view"),
        FieldSettings.within(Lamp.PLACE, MIDDLE, Place.X, "place.x"),
        FieldSettings.within(Lamp.PLACE, MIDDLE, Place.Y, "place.y"),
        FieldSettings.within(Lamp.PLACE, MIDDLE, Place.SIZE, "place.size"),
        FieldSettings.within(Lamp.PLACE, MIDDLE, Place.SHAPE_DRAWN, "place.shape"),
        FieldSettings.within(Lamp.PLACE, MIDDLE, Place.TURN_DEGREES, "place.turnDegrees"),
        FieldSettings.within(Lamp.PLACE, MIDDLE, Place.SPREAD_DEGREES, "place.spreadDegrees"));
  }

  // A lamp that follows at once has no feel.
  private static <V> Setting<Lamp, ?> feel(Field<Feel, V> field) {
    return FieldSettings.of(field, "feel." + field.name())
        .inside(
            lamp -> lamp.feel().orElse(AT_ONCE),
            (lamp, feel) ->
                Lamp.FEEL.with(lamp, feel.equals(AT_ONCE) ? Optional.empty() : Optional.of(feel)));
  }
}
