package lampwright.engine.rig;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import lampwright.engine.check.ListLimit;
import lampwright.engine.field.ChoiceType;
import lampwright.engine.field.Field;
import lampwright.engine.field.Group;
import lampwright.engine.field.IdType;
import lampwright.engine.field.ListType;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.RecordType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.TextType;

/**
 * One light as fitted and named.
 *
 * @param id unique among the lamps
 * @param name for people; empty if it has none
 * @param group those that are listed together, such as Roof; empty if it is in none
 * @param function what it is on the vehicle
 * @param fitting its pixels or its driver output
 * @param place where it is on the drawing
 * @param alsoAt further positions, on other sides
 * @param feel its warm-up
 */
public record Lamp(
    String id,
    String name,
    String group,
    LampFunction function,
    Fitting fitting,
    Optional<Place> place,
    List<Place> alsoAt,
    Optional<Feel> feel) {

  public static final Field<Lamp, String> ID = Field.required("id", new IdType(), Lamp::id, "");
  public static final Field<Lamp, String> NAME = Field.usual("name", TextType.NAME, Lamp::name, "");
  public static final Field<Lamp, String> GROUP =
      Field.usual("group", TextType.NAME, Lamp::group, "");
  public static final Field<Lamp, LampFunction> FUNCTION =
      Field.usual(
          "function",
          ChoiceType.of("function", LampFunction.class, LampFunction::key),
          Lamp::function,
          LampFunction.OTHER);
  public static final Group<Lamp, Fitting> FITTING =
      Group.of("fitting", Lamp::fitting, Fittings.SHAPE, new Fitting.Pixels(List.of()));
  public static final Field<Lamp, Optional<Place>> PLACE =
      Field.optional("place", OptionalType.of(RecordType.of(Place.SHAPE)), Lamp::place);
  public static final Field<Lamp, List<Place>> ALSO_AT =
      Field.list(
          "alsoAt",
          new ListType<>(RecordType.of(Place.SHAPE), new ListLimit(0, 8, "places")),
          Lamp::alsoAt);
  public static final Field<Lamp, Optional<Feel>> FEEL =
      Field.optional("feel", OptionalType.of(RecordType.of(Feel.SHAPE)), Lamp::feel);

  public static final Shape<Lamp> SHAPE =
      Shape.of("lamp", Lamp.class, ID, NAME, GROUP, FUNCTION, FITTING, PLACE, ALSO_AT, FEEL);

  public Lamp {
    alsoAt = List.copyOf(alsoAt);
    SHAPE.check(id, name, group, function, fitting, place, alsoAt, feel).done();
  }

  /** A lamp with pixels, and defaults for all else. */
  public static Lamp ofPixels(String id, PixelRun... runs) {
    return of(id, new Fitting.Pixels(List.of(runs)));
  }

  /** A lamp on a driver output, with defaults for all else. */
  public static Lamp ofOutput(String id, String output) {
    return of(id, new Fitting.Output(output));
  }

  private static Lamp of(String id, Fitting fitting) {
    return SHAPE.draft().set(ID, id).set(FITTING, fitting).make();
  }

  /** Every place where it is to be seen, the first one first; empty if it has none. */
  public List<Place> places() {
    return Stream.concat(place.stream(), alsoAt.stream()).toList();
  }

  /** Where it is to be seen from one side, if it is: the first such place. */
  public Optional<Place> placeIn(View view) {
    return places().stream().filter(at -> at.view() == view).findFirst();
  }

  /** With each place of one side changed; if the change gives none, that place is left out. */
  public Lamp withPlacesIn(View view, Function<Place, Optional<Place>> change) {
    List<Place> changed =
        places().stream()
            .flatMap(at -> (at.view() == view ? change.apply(at) : Optional.of(at)).stream())
            .toList();
    return SHAPE
        .draft(this)
        .set(PLACE, changed.stream().findFirst())
        .set(ALSO_AT, changed.stream().skip(1).toList())
        .make();
  }

  /** The name if there is one, else the id. */
  public String title() {
    return name.isEmpty() ? id : name;
  }
}
