package lampwright.engine.pattern;

import static lampwright.engine.check.Checks.canonical;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import lampwright.engine.check.ListLimit;
import lampwright.engine.field.Field;
import lampwright.engine.field.FlagType;
import lampwright.engine.field.ListType;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;
import lampwright.engine.light.Mix;
import lampwright.engine.light.Mixer;
import lampwright.engine.time.Ratio;

/**
 * A beam that turns past the pixels, each of which is at an angle.
 *
 * @param look colour and level
 * @param phase the share of a turn at which it starts
 * @param perMinute turns per minute, above 0, to 60,000
 * @param beamDegrees full width of the beam, 0.001 to 360
 * @param clockwise whether the angle of the beam grows with time
 * @param angles where each pixel is, -360 to 360 degrees; empty for an even ring
 */
public record RotatingBeacon(
    Look look,
    BigDecimal phase,
    BigDecimal perMinute,
    double beamDegrees,
    boolean clockwise,
    List<Double> angles)
    implements Pattern {

  /** As many as the pixels of the largest rig. */
  public static final ListLimit ANGLES = new ListLimit(0, 64 * 4096, "angles");

  public static final BigDecimal DEFAULT_PER_MINUTE = BigDecimal.valueOf(120);
  public static final double DEFAULT_BEAM_DEGREES = 120;
  public static final boolean DEFAULT_CLOCKWISE = true;

  public static final Shape<RotatingBeacon> SHAPE =
      Shape.of(
          "rotating-beacon",
          RotatingBeacon.class,
          Look.group(RotatingBeacon::look),
          Period.phase(RotatingBeacon::phase),
          Field.usual("perMinute", Times.PER_MINUTE, RotatingBeacon::perMinute, DEFAULT_PER_MINUTE),
          Field.usual(
              "beamDegrees",
              new NumberType(Unit.DEGREES, 0.001, 360),
              RotatingBeacon::beamDegrees,
              DEFAULT_BEAM_DEGREES),
          Field.usual("clockwise", new FlagType(), RotatingBeacon::clockwise, DEFAULT_CLOCKWISE),
          Field.list(
              "angles",
              new ListType<>(new NumberType(Unit.DEGREES, -360, 360), ANGLES),
              RotatingBeacon::angles));

  public RotatingBeacon {
    phase = canonical(phase);
    perMinute = canonical(perMinute);
    angles = List.copyOf(angles);
    SHAPE.check(look, phase, perMinute, beamDegrees, clockwise, angles).done();
  }

  @Override
  public Shape<RotatingBeacon> shape() {
    return SHAPE;
  }

  @Override
  public Optional<Ratio> period() {
    return Optional.of(Period.ofRate(perMinute));
  }

  /** Angles are taken in turn again where there are more pixels than angles. */
  @Override
  public Painter painter(PaintContext context) {
    Mix[] full = context.mixes(look);
    double[] angle = new double[context.count()];
    for (int k = 0; k < angle.length; k++) {
      angle[k] = angles.isEmpty() ? 360.0 * k / angle.length : angles.get(k % angles.size());
    }
    Period turn = Period.of(this, context);
    double half = beamDegrees / 2;
    return (tMs, drives) -> {
      double share = turn.share(tMs);
      double beam = 360 * (clockwise ? share : -share);
      for (int k = 0; k < angle.length; k++) {
        full[k].write(lobe(Degrees.apart(angle[k], beam), half), drives, k * Mixer.SLOTS);
      }
    };
  }

  private static double lobe(double apart, double half) {
    return apart < half ? (1 + Degrees.cos(180 * apart / half)) / 2 : 0;
  }
}
