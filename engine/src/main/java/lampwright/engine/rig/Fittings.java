package lampwright.engine.rig;

import java.util.List;
import java.util.Optional;
import lampwright.engine.check.Checks;
import lampwright.engine.check.ListLimit;
import lampwright.engine.field.Draft;
import lampwright.engine.field.Field;
import lampwright.engine.field.ListType;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.RecordType;
import lampwright.engine.field.ReferenceType;
import lampwright.engine.field.Shape;

/** How project files write what a lamp is made of: as one of two fields. */
public final class Fittings {
  public static final Field<Fitting, Optional<List<PixelRun>>> PIXELS =
      Field.optional(
          "pixels",
          OptionalType.of(
              new ListType<>(
                  RecordType.of(PixelRun.SHAPE), new ListLimit(1, 4096, "runs of pixels"))),
          Fittings::runs);

  public static final Field<Fitting, Optional<String>> OUTPUT =
      Field.optional("output", OptionalType.of(ReferenceType.to("rig.outputs")), Fittings::output);

  static final Shape<Fitting> SHAPE =
      Shape.custom("fitting", Fitting.class, Fittings::make, PIXELS, OUTPUT);

  private Fittings() {}

  private static Fitting make(Draft<Fitting> draft) {
    Optional<List<PixelRun>> runs = draft.get(PIXELS);
    Optional<String> output = draft.get(OUTPUT);
    Checks.of("lamp")
        .that(
            runs.isPresent() != output.isPresent(),
            "pixels",
            runs.isPresent() ? "pixels and output" : "missing",
            runs.isPresent()
                ? "must be either pixels or output, not both"
                : "must have pixels or output")
        .done();
    return output.<Fitting>map(Fitting.Output::new).orElseGet(() -> pixels(runs));
  }

  private static Fitting pixels(Optional<List<PixelRun>> runs) {
    return new Fitting.Pixels(runs.orElseThrow());
  }

  private static Optional<List<PixelRun>> runs(Fitting fitting) {
    return fitting instanceof Fitting.Pixels pixels ? Optional.of(pixels.runs()) : Optional.empty();
  }

  private static Optional<String> output(Fitting fitting) {
    return fitting instanceof Fitting.Output output
        ? Optional.of(output.output())
        : Optional.empty();
  }
}
