package lampwright.engine.light;

import java.util.List;
import java.util.Optional;
import lampwright.engine.field.Shape;
import lampwright.engine.field.UnionType;

/** The ways in which a project file writes curves. */
public final class Curves {
  /** Any curve. */
  public static final UnionType<Curve> ANY =
      new UnionType<>(
          "curve",
          "must be an object",
          "kind",
          List.of(
              Curve.Power.SHAPE,
              Shape.of("srgb", Curve.Srgb.class),
              Shape.of("cie-lightness", Curve.CieLightness.class),
              Shape.of("linear", Curve.Linear.class)),
          Optional.empty(),
          Optional.empty());

  private Curves() {}
}
