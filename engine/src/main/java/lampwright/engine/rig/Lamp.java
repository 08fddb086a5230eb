package lampwright.engine.rig;

import java.util.List;
import java.util.Optional;
import lampwright.engine.field.ChoiceType;
import lampwright.engine.field.Field;
import lampwright.engine.field.Group;
import lampwright.engine.field.IdType;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.RecordType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.TextType;

/**
 * One light as fitted and named.
 *
 * @param id unique among the lamps
 * @param name for people; empty if it has none
 * @param function what it is on the vehicle
 * @param fitting its pixels or its driver output
 * @param place where it is on the drawing
 * @param feel its warm-up
 */
public record Lamp(
    String id,
    String name,
    LampFunction function,
    Fitting fitting,
    Optional<Place> place,
    Optional<Feel> feel) {

  public static final Field<Lamp, String> ID = Field.required("id", new IdType(), Lamp::id, "");
  public static final Field<Lamp, String> NAME = Field.usual("name", TextType.NAME, Lamp::name, "");
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
  public static final Field<Lamp, Optional<Feel>> FEEL =
      Field.optional("feel", OptionalType.of(RecordType.of(Feel.SHAPE)), Lamp::feel);

  public static final Shape<Lamp> SHAPE =
      Shape.of("lamp", Lamp.class, ID, NAME, FUNCTION, FITTING, PLACE, FEEL);

  public Lamp {
    SHAPE.check(id, name, function, fitting, place, feel).done();
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

  /** The name if there is one, else the id. */
  public String title() {
    return name.isEmpty() ? id : name;
  }
}
