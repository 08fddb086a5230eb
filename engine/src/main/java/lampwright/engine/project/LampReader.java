package lampwright.engine.project;

import static lampwright.engine.project.ValueKind.NUMBER;
import static lampwright.engine.project.ValueKind.TEXT;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.engine.rig.Feel;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.LampFunction;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Place;

/** Reads lamps. */
final class LampReader {
  private static final ValueKind<LampFunction> FUNCTION =
      ValueKind.choice(LampFunction.values(), LampFunction::key);

  private final Names chains;
  private final Names outputs;
  private final Names lamps;

  LampReader(Names chains, Names outputs, Names lamps) {
    this.chains = chains;
    this.outputs = outputs;
    this.lamps = lamps;
  }

  Lamp read(Located at) {
    Fields f = at.fields().expect("id", "name", "function", "pixels", "output");
    String id = lamps.read(f);
    String name = f.optional("name", TEXT, "");
    LampFunction function = f.optional("function", FUNCTION, LampFunction.OTHER);
    Fitting fitting = fitting(f, at);
    Optional<Place> place = f.find("place").map(LampReader::place);
    Optional<Feel> feel = f.find("feel").map(LampReader::feel);
    Lamp lamp =
        f.build(
            () -> new Lamp(id, name, function, fitting, place, feel),
            () -> Lamp.ofOutput(lamps.ofStandIn(id, f), outputs.standIn(f.line(), f.column())));
    f.close();
    return lamp;
  }

  private Fitting fitting(Fields f, Located at) {
    Fitting none = new Fitting.Output(outputs.standIn(f.line(), f.column()));
    boolean pixels = f.has("pixels");
    if (f.has("output")) {
      String output = f.optional("output", TEXT, outputs.standIn(f.line(), f.column()));
      if (!pixels) {
        return new Fitting.Output(output);
      }
      f.list("pixels", Lamp.RUNS).forEach(this::run);
      f.breaks("pixels");
      at.error("pixels and output", "needs only one of pixels and output");
      return none;
    }
    if (!pixels) {
      f.missing("pixels", "needs pixels or output");
      return none;
    }
    List<PixelRun> runs = new ArrayList<>();
    f.list("pixels", Lamp.RUNS).forEach(item -> runs.add(run(item)));
    return new Fitting.Pixels(runs);
  }

  private PixelRun run(Located at) {
    Fields f = at.fields();
    PixelRun run =
        f.build(
            () ->
                new PixelRun(
                    f.required("chain", TEXT, ""),
                    f.whole("from", PixelRun.DEFAULT_FROM),
                    f.whole("count", PixelRun.DEFAULT_COUNT)),
            () -> new PixelRun(chains.standIn(f.line(), f.column()), 0, 1));
    f.close();
    return run;
  }

  private static Place place(Located at) {
    Fields f = at.fields();
    Place place =
        f.build(
            () ->
                new Place(
                    f.optional("view", PictureReader.VIEW, Place.DEFAULT_VIEW),
                    f.optional("x", NUMBER, Place.DEFAULT_X),
                    f.optional("y", NUMBER, Place.DEFAULT_Y),
                    f.optional("size", NUMBER, Place.DEFAULT_SIZE)),
            () ->
                new Place(
                    Place.DEFAULT_VIEW, Place.DEFAULT_X, Place.DEFAULT_Y, Place.DEFAULT_SIZE));
    f.close();
    return place;
  }

  private static Feel feel(Located at) {
    Fields f = at.fields();
    Feel feel =
        f.build(
            () ->
                new Feel(
                    f.optional("riseMs", NUMBER, Feel.DEFAULT_RISE_MS),
                    f.optional("fallMs", NUMBER, Feel.DEFAULT_FALL_MS)),
            () -> new Feel(0, 0));
    f.close();
    return feel;
  }
}
