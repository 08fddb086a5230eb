package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Predicate;
import lampwright.engine.rig.Ends;
import lampwright.engine.rig.Feed;
import lampwright.engine.rig.Rig;

/** The values of the supply wires. The ranges are those of the record. */
public final class FeedSettings {
  private FeedSettings() {}

  /** All of them. */
  public static List<Setting<Rig, ?>> all() {
    return List.of(
        new Setting<>(
            "feed.awg",
            new Kind.Maybe<>(new Kind.Whole("gauge", 0, 40), 24L),
            rig ->
                rig.feed()
                    .map(Feed::awg)
                    .filter(OptionalInt::isPresent)
                    .map(a -> (long) a.getAsInt()),
            (rig, v) ->
                wire(rig, v.map(a -> gauge(feedOf(rig), a.intValue())), f -> f.awg().isPresent())),
        new Setting<>(
            "feed.mm2",
            new Kind.Maybe<>(Kind.Amount.of("mm2", 0.001, 120, 0.05), new BigDecimal("0.2")),
            rig ->
                rig.feed()
                    .map(Feed::mm2)
                    .filter(OptionalDouble::isPresent)
                    .map(a -> BigDecimal.valueOf(a.getAsDouble())),
            (rig, v) ->
                wire(
                    rig, v.map(a -> area(feedOf(rig), a.doubleValue())), f -> f.mm2().isPresent())),
        length(
            "feed.supplyMm",
            Kind.Amount.of("mm", 0, 100_000, 10),
            Feed::supplyMm,
            (f, v) -> new Feed(f.awg(), f.mm2(), v, f.pitchMm(), f.ends())),
        length(
            "feed.pitchMm",
            Kind.Amount.of("mm", 0, 10_000, 1),
            Feed::pitchMm,
            (f, v) -> new Feed(f.awg(), f.mm2(), f.supplyMm(), v, f.ends())),
        new Setting<>(
            "feed.ends",
            new Kind.Choice<>("ends", List.of(Ends.values()), Ends::key),
            rig -> feedOf(rig).ends(),
            (rig, v) ->
                withFeed(
                    rig,
                    rig.feed()
                        .map(f -> new Feed(f.awg(), f.mm2(), f.supplyMm(), f.pitchMm(), v)))));
  }

  // Of wires that are not stated there is nothing to change.
  private static Setting<Rig, BigDecimal> length(
      String key,
      Kind.Amount kind,
      Function<Feed, Double> get,
      BiFunction<Feed, Double, Feed> set) {
    return new Setting<>(
        key,
        kind,
        rig -> BigDecimal.valueOf(get.apply(feedOf(rig))),
        (rig, v) -> withFeed(rig, rig.feed().map(f -> set.apply(f, v.doubleValue()))));
  }

  private static Feed feedOf(Rig rig) {
    return rig.feed()
        .orElseGet(
            () ->
                new Feed(
                    OptionalInt.of(24),
                    OptionalDouble.empty(),
                    Feed.DEFAULT_SUPPLY_MM,
                    Feed.DEFAULT_PITCH_MM,
                    Feed.DEFAULT_ENDS));
  }

  private static Feed gauge(Feed feed, int awg) {
    return new Feed(
        OptionalInt.of(awg), OptionalDouble.empty(), feed.supplyMm(), feed.pitchMm(), feed.ends());
  }

  private static Feed area(Feed feed, double mm2) {
    return new Feed(
        OptionalInt.empty(), OptionalDouble.of(mm2), feed.supplyMm(), feed.pitchMm(), feed.ends());
  }

  // A wire is stated by gauge or by area; leaving out the one that isn't stated changes nothing.
  private static Rig wire(Rig rig, Optional<Feed> feed, Predicate<Feed> statedSo) {
    return feed.isEmpty() && rig.feed().filter(statedSo).isEmpty() ? rig : withFeed(rig, feed);
  }

  private static Rig withFeed(Rig rig, Optional<Feed> feed) {
    return RigDraft.changed(rig, d -> d.feed = feed);
  }
}
