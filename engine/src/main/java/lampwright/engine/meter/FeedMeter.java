package lampwright.engine.meter;

import java.util.ArrayList;
import java.util.List;
import lampwright.engine.render.FrameCurrent;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Ends;
import lampwright.engine.rig.Feed;
import lampwright.engine.rig.Rig;

/** The voltage at each pixel of every chain, through the rig's feed. */
public final class FeedMeter {
  private static final double MILLI = 1e-3;

  private FeedMeter() {}

  /** The wire of a feed. */
  public static Wire wire(Feed feed) {
    return feed.awg().isPresent()
        ? Wire.ofGauge(feed.awg().getAsInt())
        : new Wire(feed.mm2().orElseThrow());
  }

  /**
   * The voltage along every chain.
   *
   * @param frame the bytes of a frame, 0 to 255
   */
  static List<Volts> measure(FrameLayout layout, Feed feed, List<Integer> frame) {
    Rig rig = layout.rig();
    FrameCurrent current = new FrameCurrent(layout);
    WireRun run =
        new WireRun(
            wire(feed), feed.supplyMm() * MILLI, feed.pitchMm() * MILLI, feed.ends() == Ends.BOTH);
    byte[] bytes = new byte[frame.size()];
    for (int i = 0; i < bytes.length; i++) {
      bytes[i] = frame.get(i).byteValue();
    }
    List<Volts> found = new ArrayList<>();
    for (int c = 0; c < rig.chains().size(); c++) {
      Chain chain = rig.chains().get(c);
      int size = chain.order().size();
      double[] amps = new double[chain.pixels()];
      for (int pixel = 0; pixel < amps.length; pixel++) {
        int at = layout.chainOffset(c) + pixel * size;
        double milliamps = chain.type().idleMilliamps() + current.milliamps(bytes, at, at + size);
        amps[pixel] = milliamps * MILLI;
      }
      found.add(volts(chain, run, rig.supplyVolts(), amps));
    }
    return found;
  }

  private static Volts volts(Chain chain, WireRun run, double supplyVolts, double[] amps) {
    LadderVolts volts = run.ladder(supplyVolts).solve(amps);
    double needed = chain.type().needs().minVolts();
    int weakest = volts.weakest();
    return new Volts(
        chain.id(),
        volts.at(0),
        volts.at(weakest),
        weakest,
        volts.firstBelow(needed),
        needed,
        run.neededSquareMillimetres(supplyVolts, amps, needed),
        Math.max(volts.nearAmps(), volts.farAmps()));
  }
}
