package lampwright.engine.rig;

import java.util.List;
import java.util.Optional;
import lampwright.engine.check.Checks;
import lampwright.engine.check.ListLimit;

/**
 * One light as fitted and named.
 *
 * @param id unique among the lamps
 * @param name for people; empty if it has none
 * @param function what it is on the vehicle
 * @param fitting its pixels or its driver output
 * @param place where it stands on the drawing
 * @param feel its warm-up
 */
public record Lamp(
    String id,
    String name,
    LampFunction function,
    Fitting fitting,
    Optional<Place> place,
    Optional<Feel> feel) {
  /** The most runs of pixels that one lamp may join. */
  public static final ListLimit RUNS = new ListLimit(1, 4096, "runs of pixels");

  public Lamp {
    Checks checks = Checks.of("lamp").id("id", id).name("name", name);
    if (fitting instanceof Fitting.Pixels pixels) {
      checks.size("pixels", pixels.runs(), RUNS);
    }
    checks.done();
  }

  /** A lamp with pixels, and defaults for all else. */
  public static Lamp ofPixels(String id, PixelRun... runs) {
    return new Lamp(
        id,
        "",
        LampFunction.OTHER,
        new Fitting.Pixels(List.of(runs)),
        Optional.empty(),
        Optional.empty());
  }

  /** A lamp on a driver output, with defaults for all else. */
  public static Lamp ofOutput(String id, String output) {
    return new Lamp(
        id, "", LampFunction.OTHER, new Fitting.Output(output), Optional.empty(), Optional.empty());
  }

  /** The name if there is one, else the id. */
  public String title() {
    return name.isEmpty() ? id : name;
  }

  public Lamp withId(String newId) {
    return new Lamp(newId, name, function, fitting, place, feel);
  }

  public Lamp withName(String newName) {
    return new Lamp(id, newName, function, fitting, place, feel);
  }

  public Lamp withFunction(LampFunction newFunction) {
    return new Lamp(id, name, newFunction, fitting, place, feel);
  }

  public Lamp withFitting(Fitting newFitting) {
    return new Lamp(id, name, function, newFitting, place, feel);
  }

  public Lamp withPlace(Optional<Place> newPlace) {
    return new Lamp(id, name, function, fitting, newPlace, feel);
  }

  public Lamp withFeel(Optional<Feel> newFeel) {
    return new Lamp(id, name, function, fitting, place, newFeel);
  }
}
