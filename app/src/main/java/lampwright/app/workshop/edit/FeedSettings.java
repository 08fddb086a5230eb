package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.BiFunction;
import java.util.function.Function;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Conductor;
import lampwright.engine.rig.Ends;
import lampwright.engine.rig.Feed;
import lampwright.engine.rig.Rig;

/**
 * The values of supply wires, of the whole rig or of one chain. The ranges are those of the record.
 *
 * @param <R> what has them
 */
public final class FeedSettings<R> {
  private static final Feed FIRST = Feed.of(new Conductor.Gauge(24));
  private static final Kind.Amount AREA =
      Kind.Amount.of("mm2", Conductor.Area.LEAST, Conductor.Area.GREATEST, 0.05);
  private static final Kind.Whole GAUGE =
      new Kind.Whole("gauge", Conductor.Gauge.THICKEST, Conductor.Gauge.THINNEST);

  private final Function<R, Optional<Feed>> get;
  private final BiFunction<R, Optional<Feed>, R> set;

  private FeedSettings(Function<R, Optional<Feed>> get, BiFunction<R, Optional<Feed>, R> set) {
    this.get = get;
    this.set = set;
  }

  /** Those of all chains that have none of their own. */
  public static List<Setting<Rig, ?>> ofRig() {
    return new FeedSettings<Rig>(
            Rig::feed, (rig, feed) -> RigDraft.changed(rig, d -> d.feed = feed))
        .all();
  }

  /** Those of one chain. */
  public static List<Setting<Chain, ?>> ofChain() {
    return new FeedSettings<>(Chain::feed, Chain::withFeed).all();
  }

  private List<Setting<R, ?>> all() {
    return List.of(
        new Setting<>(
            "feed.awg",
            new Kind.Maybe<>(GAUGE, 24L),
            r -> get.apply(r).flatMap(f -> gauge(f.lead())),
            (r, v) -> withLead(r, v.map(FeedSettings::gauge), Conductor.Gauge.class)),
        new Setting<>(
            "feed.mm2",
            new Kind.Maybe<>(AREA, new BigDecimal("0.2")),
            r -> get.apply(r).flatMap(f -> area(f.lead())),
            (r, v) -> withLead(r, v.map(FeedSettings::area), Conductor.Area.class)),
        Setting.ofDouble(
            "feed.supplyMm",
            Kind.Amount.of("mm", 0, Feed.MAX_SUPPLY_MM, 10),
            r -> feed(r).supplyMm(),
            (r, v) -> change(r, f -> f.withSupplyMm(v))),
        new Setting<>(
            "feed.ends",
            new Kind.Choice<>("ends", List.of(Ends.values()), Ends::key),
            r -> feed(r).ends(),
            (r, v) -> change(r, f -> f.withEnds(v))),
        Setting.ofMaybeDouble(
            "feed.farSupplyMm",
            Kind.Amount.of("mm", 0, Feed.MAX_SUPPLY_MM, 10),
            1000,
            r -> feed(r).farSupplyMm(),
            (r, v) -> change(r, f -> f.withFarSupplyMm(v))),
        new Setting<>(
            "feed.stripMm2",
            new Kind.Maybe<>(AREA, new BigDecimal("0.1")),
            r -> get.apply(r).flatMap(f -> area(f.strip())),
            (r, v) -> withStrip(r, v.map(FeedSettings::area), Conductor.Area.class)),
        new Setting<>(
            "feed.stripAwg",
            new Kind.Maybe<>(GAUGE, 26L),
            r -> get.apply(r).flatMap(f -> gauge(f.strip())),
            (r, v) -> withStrip(r, v.map(FeedSettings::gauge), Conductor.Gauge.class)),
        Setting.ofDouble(
            "feed.pitchMm",
            Kind.Amount.of("mm", 0, 10_000, 1),
            r -> feed(r).pitchMm(),
            (r, v) -> change(r, f -> f.withPitchMm(v))),
        Setting.ofMaybeDouble(
            "feed.fuseAmps",
            Kind.Amount.of("amps", 0.01, 100, 0.5),
            1,
            r -> feed(r).fuseAmps(),
            (r, v) -> change(r, f -> f.withFuseAmps(v))));
  }

  private Feed feed(R record) {
    return get.apply(record).orElse(FIRST);
  }

  // Of wires that are not stated there is nothing to change.
  private R change(R record, Function<Feed, Feed> change) {
    return get.apply(record).isEmpty() ? record : set.apply(record, get.apply(record).map(change));
  }

  // The lead states the wires: without it there are none. It has one of gauge and area, so that
  // leaving out the other one changes nothing.
  private R withLead(R record, Optional<Conductor> lead, Class<? extends Conductor> left) {
    boolean other =
        lead.isEmpty() && get.apply(record).filter(f -> left.isInstance(f.lead())).isEmpty();
    return other ? record : set.apply(record, lead.map(feed(record)::withLead));
  }

  private R withStrip(R record, Optional<Conductor> strip, Class<? extends Conductor> left) {
    return change(
        record,
        f ->
            strip.isEmpty() && !left.isInstance(f.strip())
                ? f
                : f.withStrip(strip.orElse(Feed.DEFAULT_STRIP)));
  }

  private static Conductor gauge(long awg) {
    return new Conductor.Gauge((int) awg);
  }

  private static Conductor area(BigDecimal mm2) {
    return new Conductor.Area(mm2.doubleValue());
  }

  private static Optional<Long> gauge(Conductor conductor) {
    OptionalInt awg = conductor.gauge();
    return awg.isPresent() ? Optional.of((long) awg.getAsInt()) : Optional.empty();
  }

  private static Optional<BigDecimal> area(Conductor conductor) {
    return conductor.area().isPresent()
        ? Optional.of(BigDecimal.valueOf(conductor.area().getAsDouble()))
        : Optional.empty();
  }
}
