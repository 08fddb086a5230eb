package lampwright.engine.pattern;

import static lampwright.engine.check.Checks.canonical;

import java.math.BigDecimal;
import java.util.List;
import lampwright.engine.check.Checks;
import lampwright.engine.check.ListLimit;
import lampwright.engine.light.Mix;
import lampwright.engine.light.Mixer;

/**
 * A beam that turns past the pixels, each of which stands at an angle.
 *
 * @param look colour and level
 * @param phase the share of a turn at which it starts
 * @param perMinute turns a minute, above 0, to 60,000
 * @param beamDegrees full width of the beam, above 0, to 360
 * @param clockwise whether the angle of the beam grows with time
 * @param angles where each pixel stands, -360 to 360 degrees; empty for an even ring
 */
public record RotatingBeacon(
    Look look,
    BigDecimal phase,
    BigDecimal perMinute,
    double beamDegrees,
    boolean clockwise,
    List<Double> angles)
    implements Pattern {
  public static final String KIND = "rotating-beacon";

  /** As many as the pixels of the largest rig. */
  public static final ListLimit ANGLES = new ListLimit(0, 64 * 4096, "angles");

  public static final BigDecimal DEFAULT_PER_MINUTE = BigDecimal.valueOf(120);
  public static final double DEFAULT_BEAM_DEGREES = 120;
  public static final boolean DEFAULT_CLOCKWISE = true;

  public RotatingBeacon {
    phase = canonical(phase);
    perMinute = canonical(perMinute);
    angles = List.copyOf(angles);
    Checks checks =
        Period.check(Checks.of(KIND), phase)
            .above0("perMinute", perMinute, Times.MAX_PER_MINUTE)
            .range("beamDegrees", beamDegrees, 0.001, 360)
            .size("angles", angles, ANGLES);
    for (int k = 0; k < angles.size(); k++) {
      checks.range("angles[" + k + "]", angles.get(k), -360, 360);
    }
    checks.done();
  }

  @Override
  public String kind() {
    return KIND;
  }

  /** Angles are taken in turn again where there are more pixels than angles. */
  @Override
  public Painter painter(Stage stage) {
    Mix[] full = stage.mixes(look);
    double[] angle = new double[stage.count()];
    for (int k = 0; k < angle.length; k++) {
      angle[k] = angles.isEmpty() ? 360.0 * k / angle.length : angles.get(k % angles.size());
    }
    Period turn = new Period(Period.ofRate(perMinute), phase);
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
