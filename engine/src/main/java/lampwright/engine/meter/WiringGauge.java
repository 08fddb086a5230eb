package lampwright.engine.meter;

import com.google.common.primitives.ImmutableDoubleArray;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Ends;

/** What one wiring of a chain does over the frames shown so far. */
final class WiringGauge {
  private final Chain chain;
  private final Wiring wiring;
  private final Ladder ladder;
  private final double neededVolts;
  private final double[] volts;
  private final double[] leastVolts;
  private double lowest = Double.POSITIVE_INFINITY;
  private int lowestPixel;
  private int lowestFrame;
  private double leadAmps = -1;
  private int leadFrame;
  private double stripAmps = -1;
  private int stripFrame;

  WiringGauge(Chain chain, Wiring wiring, double supplyVolts, double neededVolts) {
    this.chain = chain;
    this.wiring = wiring;
    this.ladder = wiring.ladder(supplyVolts);
    this.neededVolts = neededVolts;
    volts = new double[chain.pixels()];
    leastVolts = new double[chain.pixels()];
    Arrays.fill(leastVolts, Double.POSITIVE_INFINITY);
  }

  /**
   * Takes a frame.
   *
   * @param amps what each pixel of the chain draws in it
   */
  void frame(int frame, double[] amps) {
    double near = ladder.solve(amps, volts);
    double passing = near;
    double strip = 0;
    for (int i = 0; i < volts.length; i++) {
      double here = volts[i];
      if (here < leastVolts[i]) {
        leastVolts[i] = here;
        if (here < lowest) {
          lowest = here;
          lowestPixel = i;
          lowestFrame = frame;
        }
      }
      passing -= amps[i];
      if (i + 1 < volts.length) {
        strip = Math.max(strip, Math.abs(passing));
      }
    }
    // Behind the last pixel what passes is what comes from the far end.
    double lead = Math.max(near, -passing);
    if (lead > leadAmps) {
      leadAmps = lead;
      leadFrame = frame;
    }
    if (strip > stripAmps) {
      stripAmps = strip;
      stripFrame = frame;
    }
  }

  ChainFeed result() {
    return new ChainFeed(
        chain.id(),
        wiring.feed(),
        ImmutableDoubleArray.copyOf(leastVolts),
        lowestPixel,
        lowestFrame,
        new ChainFeed.Carried(leadAmps, leadFrame, Wiring.leadLimitAmps(wiring.feed())),
        new ChainFeed.Carried(stripAmps, stripFrame, Wiring.stripLimitAmps(wiring.feed())),
        neededVolts,
        List.of());
  }

  /** Whether every pixel has its volts, no conductor heats, and the lead can be fused. */
  boolean keepsLimits() {
    OptionalDouble fuse = Fuses.atLeast(leadAmps);
    return lowest >= neededVolts
        && leadAmps <= Wiring.leadLimitAmps(wiring.feed())
        && stripAmps <= Wiring.stripLimitAmps(wiring.feed())
        && fuse.isPresent()
        && Fuses.protects(fuse.getAsDouble(), Wiring.leadLimitAmps(wiring.feed()));
  }

  Ends ends() {
    return wiring.feed().ends();
  }

  /** This wiring as a remedy; its lead is stated by gauge. */
  ChainFeed.Remedy remedy() {
    Wire lead = Wire.of(wiring.feed().lead());
    return new ChainFeed.Remedy(
        ends(),
        wiring.feed().lead().gauge().orElseThrow(),
        lead.squareMillimetres(),
        lowest,
        leadAmps,
        Fuses.fitting(leadAmps, Wiring.limitAmps(wiring.feed())));
  }
}
