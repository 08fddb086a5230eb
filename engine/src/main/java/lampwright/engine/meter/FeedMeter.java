package lampwright.engine.meter;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import lampwright.engine.render.FrameCurrent;
import lampwright.engine.render.FrameLayout;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Conductor;
import lampwright.engine.rig.Ends;
import lampwright.engine.rig.Feed;
import lampwright.engine.rig.Rig;
import lampwright.engine.rig.SupplyNeeds;

/**
 * Measures voltage and heat along the supply wires of every chain that states them, over every
 * frame: each chain has wires of its own, so that each has its own worst frame.
 */
final class FeedMeter implements FrameGauge {
  private static final double MILLI = 1e-3;

  private final FrameLayout layout;
  private final FrameCurrent current;
  private final List<ChainWatch> watches = new ArrayList<>();

  FeedMeter(FrameLayout layout) {
    this.layout = layout;
    this.current = new FrameCurrent(layout);
    List<Chain> chains = layout.rig().chains();
    for (int c = 0; c < chains.size(); c++) {
      int at = layout.chainOffset(c);
      Chain chain = chains.get(c);
      layout
          .rig()
          .feedOf(chain)
          .ifPresent(feed -> watches.add(new ChainWatch(chain, at, List.of(gauge(chain, feed)))));
    }
  }

  @Override
  public void frame(int frame, byte[] bytes) {
    watches.forEach(watch -> watch.frame(frame, bytes));
  }

  /**
   * What was measured, chain by chain, with remedies where limits are passed. Other wirings are
   * tried on every frame too, for which the frames are shown once more.
   *
   * @param frames shows every frame of the scene in order to the gauge that it is given
   */
  List<ChainFeed> feeds(Consumer<FrameGauge> frames) {
    List<ChainWatch> trials = new ArrayList<>();
    List<ChainFeed> feeds = new ArrayList<>();
    for (ChainWatch watch : watches) {
      ChainFeed feed = watch.gauges.get(0).result();
      feeds.add(feed);
      if (feed.needsRemedy()) {
        trials.add(new ChainWatch(watch.chain, watch.offset, others(watch.chain, feed.feed())));
      }
    }
    if (trials.isEmpty()) {
      return feeds;
    }
    frames.accept((frame, bytes) -> trials.forEach(trial -> trial.frame(frame, bytes)));
    return feeds.stream()
        .map(
            feed ->
                trials.stream()
                    .filter(trial -> trial.chain.id().equals(feed.chain()))
                    .findFirst()
                    .map(trial -> feed.withRemedies(remedies(trial)))
                    .orElse(feed))
        .toList();
  }

  // The same lead or a thicker one, fed as it is or at both ends; the thinnest of each first.
  private List<WiringGauge> others(Chain chain, Feed feed) {
    List<WiringGauge> others = new ArrayList<>();
    for (Ends ends : feed.ends() == Ends.BOTH ? List.of(Ends.BOTH) : List.of(Ends.values())) {
      for (int awg : Wire.gaugesFrom(Wire.of(feed.lead()).squareMillimetres())) {
        Feed other =
            Feed.SHAPE
                .draft(feed)
                .set(Feed.ENDS, ends)
                .set(Feed.LEAD, new Conductor.Gauge(awg))
                .make();
        others.add(gauge(chain, other));
      }
    }
    return others;
  }

  private static List<ChainFeed.Remedy> remedies(ChainWatch trial) {
    List<ChainFeed.Remedy> remedies = new ArrayList<>();
    for (Ends ends : Ends.values()) {
      trial.gauges.stream()
          .filter(gauge -> gauge.ends() == ends && gauge.keepsLimits())
          .findFirst()
          .map(WiringGauge::remedy)
          .ifPresent(remedies::add);
    }
    return remedies;
  }

  private WiringGauge gauge(Chain chain, Feed feed) {
    Rig rig = layout.rig();
    return new WiringGauge(
        chain,
        new Wiring(feed, chain.pixels()),
        rig.supplyVolts(),
        neededVolts(chain.type().needs(), rig.supplyVolts()));
  }

  // What a supply lacks is no fault of the wires: pixels that it lets dim need only work.
  private static double neededVolts(SupplyNeeds needs, double supplyVolts) {
    return supplyVolts > needs.minVolts() ? needs.minVolts() : needs.failVolts();
  }

  /** One chain, and the wirings that are tried on it. */
  private final class ChainWatch {
    private final Chain chain;
    private final int offset;
    private final List<WiringGauge> gauges;
    private final byte[] before;
    private final double[] amps;
    private boolean begun;

    ChainWatch(Chain chain, int offset, List<WiringGauge> gauges) {
      this.chain = chain;
      this.offset = offset;
      this.gauges = gauges;
      before = new byte[chain.bytes()];
      amps = new double[chain.pixels()];
    }

    void frame(int frame, byte[] bytes) {
      int end = offset + before.length;
      // Most lamps are still most of the time; the same bytes are no news.
      if (begun && Arrays.equals(bytes, offset, end, before, 0, before.length)) {
        return;
      }
      begun = true;
      System.arraycopy(bytes, offset, before, 0, before.length);
      int size = chain.order().size();
      double idle = chain.type().idleMilliamps();
      for (int pixel = 0; pixel < amps.length; pixel++) {
        int at = offset + pixel * size;
        amps[pixel] = MILLI * (idle + current.milliamps(bytes, at, at + size));
      }
      gauges.forEach(gauge -> gauge.frame(frame, amps));
    }
  }
}
