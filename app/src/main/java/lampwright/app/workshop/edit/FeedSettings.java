package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import lampwright.engine.field.Field;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Conductor;
import lampwright.engine.rig.Feed;
import lampwright.engine.rig.Rig;

/**
 * The values of supply wires, of the whole rig or of one chain.
 *
 * @param <R> what has them
 */
public final class FeedSettings<R> {
  private static final Feed FIRST = Feed.of(new Conductor.Gauge(24));
  private static final Kind.Amount AREA = FormOfType.amount(Conductor.Area.RANGE);
  private static final Kind.Whole GAUGE = FormOfType.count(Conductor.Gauge.RANGE);

  private final Field<R, Optional<Feed>> part;

  private FeedSettings(Field<R, Optional<Feed>> part) {
    this.part = part;
  }

  /** Those of all chains that have none of their own. */
  public static List<Setting<Rig, ?>> ofRig() {
    return new FeedSettings<>(Rig.FEED).all();
  }

  /** Those of one chain. */
  public static List<Setting<Chain, ?>> ofChain() {
    return new FeedSettings<>(Chain.FEED).all();
  }

  private List<Setting<R, ?>> all() {
    return List.of(
        new Setting<>(
            "feed.awg",
            new Kind.Maybe<>(GAUGE, 24L),
            r -> part.get(r).flatMap(f -> gauge(f.lead())),
            (r, v) -> withLead(r, v.map(FeedSettings::gauge), Conductor.Gauge.class)),
        new Setting<>(
            "feed.mm2",
            new Kind.Maybe<>(AREA, new BigDecimal("0.2")),
            r -> part.get(r).flatMap(f -> area(f.lead())),
            (r, v) -> withLead(r, v.map(FeedSettings::area), Conductor.Area.class)),
        of(Feed.SUPPLY_MM),
        of(Feed.ENDS),
        of(Feed.FAR_SUPPLY_MM),
        new Setting<>(
            "feed.stripMm2",
            new Kind.Maybe<>(AREA, new BigDecimal("0.1")),
            r -> part.get(r).flatMap(f -> area(f.strip())),
            (r, v) -> withStrip(r, v.map(FeedSettings::area), Conductor.Area.class)),
        new Setting<>(
            "feed.stripAwg",
            new Kind.Maybe<>(GAUGE, 26L),
            r -> part.get(r).flatMap(f -> gauge(f.strip())),
            (r, v) -> withStrip(r, v.map(FeedSettings::gauge), Conductor.Gauge.class)),
        of(Feed.PITCH_MM),
        of(Feed.FUSE_AMPS));
  }

  private <V> Setting<R, ?> of(Field<Feed, V> field) {
    return FieldSettings.within(part, FIRST, field, "feed." + field.name());
  }

  // The lead states the wires: without it there are none. It has one of gauge and area, so that
  // leaving out the other one changes nothing.
  private R withLead(R record, Optional<Conductor> lead, Class<? extends Conductor> left) {
    boolean other =
        lead.isEmpty() && part.get(record).filter(f -> left.isInstance(f.lead())).isEmpty();
    Feed feed = part.get(record).orElse(FIRST);
    return other ? record : part.with(record, lead.map(wire -> Feed.LEAD.with(feed, wire)));
  }

  private R withStrip(R record, Optional<Conductor> strip, Class<? extends Conductor> left) {
    Optional<Feed> feed = part.get(record);
    boolean other = strip.isEmpty() && feed.filter(f -> left.isInstance(f.strip())).isEmpty();
    return feed.isEmpty() || other
        ? record
        : part.with(record, feed.map(f -> Feed.STRIP.with(f, strip.orElse(Feed.DEFAULT_STRIP))));
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
