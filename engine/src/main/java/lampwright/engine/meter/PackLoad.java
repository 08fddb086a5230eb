package lampwright.engine.meter;

import java.util.OptionalDouble;
import lampwright.engine.rig.Battery;
import lampwright.engine.rig.Rig;

/**
 * What a scene asks of the battery pack.
 *
 * @param hours how long the pack lasts; none if no current flows
 * @param meanMilliamps out of the pack
 * @param peakMilliamps out of the pack
 * @param fuseAmps the fuse at the pack that carries the peak and protects every supply wire without
 *     a fuse of its own; none if there is no usual one
 */
public record PackLoad(
    OptionalDouble hours, double meanMilliamps, double peakMilliamps, OptionalDouble fuseAmps) {
  private static final double MILLI = 1e-3;

  static PackLoad of(Battery battery, Rig rig, CurrentDraw supply) {
    double volts = rig.supplyVolts();
    double peak = battery.packCurrent(supply.peakMilliamps(), volts);
    return new PackLoad(
        battery.hours(supply.meanMilliamps(), volts),
        battery.packCurrent(supply.meanMilliamps(), volts),
        peak,
        Fuses.fitting(peak * MILLI, battery.packCurrent(wireLimitAmps(rig), volts)));
  }

  /**
   * What the weakest supply wire without a fuse of its own carries, A; boundless if there is none.
   */
  public static double wireLimitAmps(Rig rig) {
    return rig.chains().stream()
        .flatMap(chain -> rig.feedOf(chain).stream())
        .filter(feed -> feed.fuseAmps().isEmpty())
        .mapToDouble(feed -> Wiring.limitAmps(feed))
        .min()
        .orElse(Double.MAX_VALUE);
  }
}
