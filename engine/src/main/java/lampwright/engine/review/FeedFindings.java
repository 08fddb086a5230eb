package lampwright.engine.review;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import lampwright.engine.check.Checks;
import lampwright.engine.document.Project;
import lampwright.engine.meter.ChainFeed;
import lampwright.engine.meter.Fuses;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.meter.Wiring;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Conductor;
import lampwright.engine.rig.Ends;
import lampwright.engine.rig.Feed;
import lampwright.engine.rig.Rig;
import lampwright.engine.rig.SupplyNeeds;

/** Findings on the supply wires of chains: voltage that they lose, heat, and their fuses. */
final class FeedFindings implements Reviewer {
  private static final String WIRE_SOURCE = "5 A/mm2, common practice for enclosed wires";
  private static final String STRIP_SOURCE = "IPC-2221, 10 K above ambient";
  private static final String FUSE_SOURCE = "common practice: fuse for 1.25 of the peak";

  @Override
  public void project(Project project, Consumer<Finding> found) {
    Rig rig = project.rig();
    for (int i = 0; i < rig.chains().size(); i++) {
      Chain chain = rig.chains().get(i);
      String path = path(rig, i);
      rig.feedOf(chain).ifPresent(feed -> fuse(rig, chain, feed, path, found));
    }
  }

  @Override
  public void scene(Project project, SceneReport report, Consumer<Finding> found) {
    Rig rig = project.rig();
    for (int i = 0; i < rig.chains().size(); i++) {
      Chain chain = rig.chains().get(i);
      String path = path(rig, i);
      report
          .feedOf(chain.id())
          .ifPresent(
              feed -> {
                voltage(rig, chain, feed, path, report, found);
                heat(feed, path, report, found);
                fuseLoad(feed, path, report, found);
              });
    }
  }

  /** Where the feed of a chain is. */
  static String path(Rig rig, int chain) {
    return rig.chains().get(chain).feed().isPresent()
        ? "rig.chains[" + chain + "].feed"
        : "rig.feed";
  }

  // Pixels that the supply itself gives too little are a finding of the supply.
  private static void voltage(
      Rig rig,
      Chain chain,
      ChainFeed feed,
      String path,
      SceneReport report,
      Consumer<Finding> found) {
    SupplyNeeds needs = chain.type().needs();
    double supply = rig.supplyVolts();
    double lowest = feed.lowestVolts();
    boolean fails = lowest < needs.failVolts() && supply >= needs.failVolts();
    boolean dims = lowest < needs.minVolts() && supply >= needs.minVolts();
    if (!fails && !dims) {
      return;
    }
    double limit = fails ? needs.failVolts() : needs.minVolts();
    found.accept(
        Finding.of(
                fails ? Code.CHAIN_VOLTAGE_DROP : Code.CHAIN_DIM_VOLTAGE,
                new Subject.OneChain(chain.id()))
            .with("pixels", Figure.words(PixelRanges.below(feed.leastVolts(), limit)))
            .with("volts", Figure.volts(lowest))
            .with("pixel", Figure.count(feed.lowestPixel()))
            .with("limit", Figure.volts(limit))
            .with("remedy", Figure.words(remedy(feed)))
            .at(path)
            .in(report.table().scene(), feed.lowestFrame())
            .source(
                PartSource.of(chain.type(), fails ? "failVolts" : "minVolts", "minVolts")
                    + "; copper by IEC 60028")
            .make());
  }

  private static void heat(
      ChainFeed feed, String path, SceneReport report, Consumer<Finding> found) {
    if (feed.lead().isOver()) {
      found.accept(hot(Code.LEAD_HEAT, feed, feed.lead(), path, report).source(WIRE_SOURCE).make());
    }
    if (feed.strip().isOver()) {
      found.accept(
          hot(Code.STRIP_HEAT, feed, feed.strip(), path, report)
              .source(stripSource(feed.feed()))
              .make());
    }
  }

  private static Finding.Draft hot(
      Code code, ChainFeed feed, ChainFeed.Carried carried, String path, SceneReport report) {
    return Finding.of(code, new Subject.OneChain(feed.chain()))
        .with("current", Figure.amps(carried.amps()))
        .with("limit", Figure.amps(carried.limitAmps()))
        .with("remedy", Figure.words(remedy(feed)))
        .at(path)
        .in(report.table().scene(), carried.frame());
  }

  // What was worked out to keep every limit: voltage, heat of lead and strip, and a fuse.
  private static String remedy(ChainFeed feed) {
    List<String> ways = new ArrayList<>();
    for (ChainFeed.Remedy remedy : feed.remedies()) {
      boolean second = remedy.ends() == Ends.BOTH && feed.feed().ends() == Ends.ONE;
      ways.add(
          (second ? "feed it at both ends through AWG " : "use a lead of AWG ")
              + remedy.awg()
              + " ("
              + Figure.of(remedy.mm2(), 2, Unit.SQUARE_MILLIMETRES).text()
              + "), "
              + fuse(remedy.fuseAmps(), remedy.ends() == Ends.BOTH)
              + "; minimum then "
              + Figure.volts(remedy.lowestVolts()).text());
    }
    return ways.isEmpty()
        ? "no lead alone is enough: feed it at more points, use thicker wire from pixel to pixel, or"
            + " draw less"
        : String.join("; or ", ways);
  }

  private static String fuse(OptionalDouble amps, boolean each) {
    return amps.isPresent()
        ? "fused at " + rating(amps.getAsDouble()) + (each ? " each" : "")
        : "which no standard fuse protects";
  }

  static String rating(double amps) {
    return Checks.plain(amps) + " " + Unit.AMPS.symbol();
  }

  private static void fuse(Rig rig, Chain chain, Feed feed, String path, Consumer<Finding> found) {
    double limit = Wiring.limitAmps(feed);
    Subject subject = new Subject.OneChain(chain.id());
    if (feed.fuseAmps().isPresent()) {
      double fuse = feed.fuseAmps().getAsDouble();
      if (!Fuses.protects(fuse, limit)) {
        found.accept(
            Finding.of(Code.LEAD_FUSE_LARGE, subject)
                .with("fuse", Figure.words(rating(fuse)))
                .with("limit", Figure.amps(limit))
                .at(path + ".fuseAmps")
                .source(limitSource(feed))
                .make());
      }
    } else if (rig.battery().isEmpty() && rig.supplyLimitMilliamps() * 1e-3 > limit) {
      found.accept(
          Finding.of(Code.LEAD_UNFUSED, subject)
              .with("supply", Figure.amps(rig.supplyLimitMilliamps() * 1e-3))
              .with("limit", Figure.amps(limit))
              .at(path)
              .source(limitSource(feed))
              .make());
    }
  }

  /** Where the limit of the weaker of lead and strip comes from. */
  static String limitSource(Feed feed) {
    boolean lead = Wiring.leadLimitAmps(feed) <= Wiring.stripLimitAmps(feed);
    return lead ? WIRE_SOURCE : stripSource(feed);
  }

  private static String stripSource(Feed feed) {
    return feed.strip() instanceof Conductor.Gauge ? WIRE_SOURCE : STRIP_SOURCE;
  }

  private static void fuseLoad(
      ChainFeed feed, String path, SceneReport report, Consumer<Finding> found) {
    OptionalDouble fuse = feed.feed().fuseAmps();
    if (fuse.isPresent() && !Fuses.carries(fuse.getAsDouble(), feed.lead().amps())) {
      found.accept(
          Finding.of(Code.LEAD_FUSE_SMALL, new Subject.OneChain(feed.chain()))
              .with("fuse", Figure.words(rating(fuse.getAsDouble())))
              .with("current", Figure.amps(feed.lead().amps()))
              .with("limit", Figure.amps(Fuses.MARGIN * feed.lead().amps()))
              .at(path + ".fuseAmps")
              .in(report.table().scene(), feed.lead().frame())
              .source(FUSE_SOURCE)
              .make());
    }
  }
}
