package lampwright.engine.light;

import java.util.List;
import java.util.Optional;
import lampwright.engine.field.Field;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.UnionType;
import lampwright.engine.field.Unit;

/** The ways in which a project file writes curves. */
public final class Curves {
  private static final Shape<Curve.Power> POWER =
      Shape.of(
          "power",
          Curve.Power.class,
          Field.usual("gamma", new NumberType(Unit.NONE, 1, 4), Curve.Power::gamma, 2.2)
              .alwaysWritten());

  /** Any curve. */
  public static final UnionType<Curve> ANY =
      new UnionType<>(
          "curve",
          "needs an object",
          "kind",
          List.of(
              POWER,
              Shape.of("srgb", Curve.Srgb.class),
              Shape.of("cie-lightness", Curve.CieLightness.class),
              Shape.of("linear", Curve.Linear.class)),
          Optional.empty(),
          Optional.empty());

  private Curves() {}
}
