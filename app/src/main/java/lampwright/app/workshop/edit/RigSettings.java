package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lampwright.engine.light.Colour;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.light.Curve;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.rig.Battery;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.Controller;
import lampwright.engine.rig.CurrentCap;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.EmitterOrder;
import lampwright.engine.rig.Ends;
import lampwright.engine.rig.Feed;
import lampwright.engine.rig.Feel;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.LampFunction;
import lampwright.engine.rig.OutputSupply;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Place;
import lampwright.engine.rig.Rig;
import lampwright.engine.rig.View;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;

/** The values of a rig and its parts, and of scenes. The ranges are those of the records. */
public final class RigSettings {
  private static final Kind.Amount SHARE = Kind.Amount.of("", 0, 1, 0.05);
  private static final List<EmitterOrder> RGB_ORDERS = orders("RGB");
  private static final List<EmitterOrder> RGBW_ORDERS = orders("RGBW");

  private RigSettings() {}

  /** The supply. */
  public static List<Setting<Rig, ?>> supply() {
    return List.of(
        Setting.ofDouble(
            "supplyVolts",
            Kind.Amount.of("volts", 1, 60, 0.1),
            Rig::supplyVolts,
            (rig, v) -> RigDraft.changed(rig, d -> d.supplyVolts = v)),
        Setting.ofDouble(
            "supplyLimitMilliamps",
            Kind.Amount.of("milliamps", 1, 1_000_000, 50),
            Rig::supplyLimitMilliamps,
            (rig, v) -> RigDraft.changed(rig, d -> d.supplyLimitMilliamps = v)),
        Setting.ofDouble(
            "dataVolts",
            Kind.Amount.of("volts", 1, 12, 0.1),
            Rig::dataVolts,
            (rig, v) -> RigDraft.changed(rig, d -> d.dataVolts = v)),
        new Setting<>(
            "currentCap",
            new Kind.Choice<>("currentCap", List.of(CurrentCap.values()), CurrentCap::key),
            Rig::currentCap,
            (rig, v) -> RigDraft.changed(rig, d -> d.currentCap = v)),
        Setting.ofDouble(
            "brightnessCap",
            SHARE,
            Rig::brightnessCap,
            (rig, v) -> RigDraft.changed(rig, d -> d.brightnessCap = v)));
  }

  /** How colours and levels become light. */
  public static List<Setting<Rig, ?>> light() {
    return List.of(
        new Setting<>(
            "curve",
            new Kind.Choice<>("curve", List.of("power", "srgb", "cie-lightness", "linear"), k -> k),
            rig -> curve(rig.curve()),
            (rig, v) -> RigDraft.changed(rig, d -> d.curve = curve(v, rig.curve()))),
        new Setting<>(
            "gamma",
            new Kind.Maybe<>(Kind.Amount.of("", 1, 4, 0.05), new BigDecimal("2.2")),
            rig ->
                rig.curve() instanceof Curve.Power p
                    ? Optional.of(BigDecimal.valueOf(p.gamma()))
                    : Optional.empty(),
            (rig, v) ->
                v.isEmpty() && !(rig.curve() instanceof Curve.Power)
                    ? rig
                    : RigDraft.changed(
                        rig,
                        d ->
                            d.curve =
                                v.<Curve>map(g -> new Curve.Power(g.doubleValue()))
                                    .orElseGet(Curve.Linear::new))),
        new Setting<>(
            "colourMatching",
            new Kind.Choice<>(
                "colourMatching", List.of(ColourMatching.values()), ColourMatching::key),
            Rig::colourMatching,
            (rig, v) -> RigDraft.changed(rig, d -> d.colourMatching = v)),
        new Setting<>(
            "whiteFromRgb",
            new Kind.Flag(),
            Rig::whiteFromRgb,
            (rig, v) -> RigDraft.changed(rig, d -> d.whiteFromRgb = v)));
  }

  /** The supply wires. */
  public static List<Setting<Rig, ?>> feed() {
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
      java.util.function.BiFunction<Feed, Double, Feed> set) {
    return new Setting<>(
        key,
        kind,
        rig -> BigDecimal.valueOf(get.apply(feedOf(rig))),
        (rig, v) -> withFeed(rig, rig.feed().map(f -> set.apply(f, v.doubleValue()))));
  }

  /** The battery. */
  public static List<Setting<Rig, ?>> battery() {
    return List.of(
        new Setting<>(
            "battery.milliampHours",
            new Kind.Maybe<>(
                Kind.Amount.of("milliampHours", 1, 1_000_000, 100), BigDecimal.valueOf(2000)),
            rig -> rig.battery().map(b -> BigDecimal.valueOf(b.milliampHours())),
            (rig, v) ->
                RigDraft.changed(
                    rig,
                    d ->
                        d.battery =
                            v.map(
                                mah ->
                                    new Battery(
                                        mah.doubleValue(),
                                        rig.battery()
                                            .map(Battery::usableShare)
                                            .orElse(Battery.DEFAULT_USABLE_SHARE))))),
        new Setting<>(
            "battery.usableShare",
            Kind.Amount.of("", 0.01, 1, 0.05),
            rig ->
                BigDecimal.valueOf(
                    rig.battery().map(Battery::usableShare).orElse(Battery.DEFAULT_USABLE_SHARE)),
            (rig, v) ->
                RigDraft.changed(
                    rig,
                    d ->
                        d.battery =
                            rig.battery()
                                .map(b -> new Battery(b.milliampHours(), v.doubleValue())))));
  }

  /** The controller. */
  public static List<Setting<Rig, ?>> controller() {
    return List.of(
        new Setting<>(
            "controller",
            new Kind.Maybe<>(
                new Kind.Choice<>("controller", Controller.all(), Controller::id),
                Controller.all().get(0)),
            Rig::controller,
            (rig, v) -> RigDraft.changed(rig, d -> d.controller = v)));
  }

  /** A chain, but for its id. */
  public static List<Setting<Chain, ?>> chain(List<PixelType> own, PixelType now) {
    List<PixelType> types = Stream.concat(BuiltInPixelTypes.all().stream(), own.stream()).toList();
    return List.of(
        new Setting<>(
            "pixelType",
            new Kind.Choice<>("pixelType", types, PixelType::id),
            Chain::type,
            RigSettings::withType),
        Setting.ofInt(
            "pixels",
            new Kind.Whole("", 1, Chain.MAX_PIXELS),
            Chain::pixels,
            (c, v) -> new Chain(c.id(), c.type(), v, c.order(), c.whiteKelvin(), c.pin())),
        new Setting<>(
            "order",
            new Kind.Choice<>(
                "order", now.order().size() == 4 ? RGBW_ORDERS : RGB_ORDERS, EmitterOrder::letters),
            Chain::order,
            (c, v) -> new Chain(c.id(), c.type(), c.pixels(), v, c.whiteKelvin(), c.pin())),
        new Setting<>(
            "whiteKelvin",
            new Kind.Maybe<>(
                Kind.Amount.of("kelvin", Colour.Kelvin.MIN, Colour.Kelvin.MAX, 100),
                BigDecimal.valueOf(4500)),
            c ->
                c.whiteKelvin().isPresent()
                    ? Optional.of(BigDecimal.valueOf(c.whiteKelvin().getAsDouble()))
                    : Optional.empty(),
            (c, v) ->
                new Chain(c.id(), c.type(), c.pixels(), c.order(), optionalDouble(v), c.pin())),
        pin(
            Chain::pin,
            (c, v) -> new Chain(c.id(), c.type(), c.pixels(), c.order(), c.whiteKelvin(), v)));
  }

  /** A driver output, but for its id. */
  public static List<Setting<DriverOutput, ?>> output() {
    return List.of(
        new Setting<>(
            "output.colour",
            new Kind.Colours(),
            DriverOutput::colour,
            (o, v) ->
                v instanceof Colour.Srgb srgb
                    ? new DriverOutput(
                        o.id(),
                        srgb,
                        o.milliamps(),
                        o.ledsInSeries(),
                        o.forwardVolts(),
                        o.supply(),
                        o.pin())
                    : o),
        Setting.ofDouble(
            "milliamps",
            Kind.Amount.of("milliamps", 0, 10_000, 1),
            DriverOutput::milliamps,
            (o, v) ->
                new DriverOutput(
                    o.id(),
                    o.colour(),
                    v,
                    o.ledsInSeries(),
                    o.forwardVolts(),
                    o.supply(),
                    o.pin())),
        Setting.ofInt(
            "ledsInSeries",
            new Kind.Whole("", 1, 100),
            DriverOutput::ledsInSeries,
            (o, v) ->
                new DriverOutput(
                    o.id(), o.colour(), o.milliamps(), v, o.forwardVolts(), o.supply(), o.pin())),
        Setting.ofDouble(
            "forwardVolts",
            Kind.Amount.of("volts", 0.5, 10, 0.1),
            DriverOutput::forwardVolts,
            (o, v) ->
                new DriverOutput(
                    o.id(), o.colour(), o.milliamps(), o.ledsInSeries(), v, o.supply(), o.pin())),
        new Setting<>(
            "output.supply",
            new Kind.Choice<>("outputSupply", List.of(OutputSupply.values()), OutputSupply::key),
            DriverOutput::supply,
            (o, v) ->
                new DriverOutput(
                    o.id(),
                    o.colour(),
                    o.milliamps(),
                    o.ledsInSeries(),
                    o.forwardVolts(),
                    v,
                    o.pin())),
        pin(
            DriverOutput::pin,
            (o, v) ->
                new DriverOutput(
                    o.id(),
                    o.colour(),
                    o.milliamps(),
                    o.ledsInSeries(),
                    o.forwardVolts(),
                    o.supply(),
                    v)));
  }

  /** A lamp, but for its id. */
  public static List<Setting<Lamp, ?>> lamp(Lamp lamp) {
    List<Setting<Lamp, ?>> settings =
        new java.util.ArrayList<>(
            List.of(
                new Setting<>("name", new Kind.Text(200), Lamp::name, Lamp::withName),
                new Setting<>(
                    "function",
                    new Kind.Choice<>(
                        "function", List.of(LampFunction.values()), LampFunction::key),
                    Lamp::function,
                    Lamp::withFunction)));
    if (lamp.fitting() instanceof Fitting.Pixels) {
      settings.add(
          new Setting<>(
              "runs",
              new Kind.Runs(),
              l -> l.fitting() instanceof Fitting.Pixels p ? p.runs() : List.<PixelRun>of(),
              (l, v) -> l.withFitting(new Fitting.Pixels(v))));
    }
    settings.add(feel("riseMs", Feel::riseMs, (f, v) -> new Feel(v, f.fallMs())));
    settings.add(feel("fallMs", Feel::fallMs, (f, v) -> new Feel(f.riseMs(), v)));
    return List.copyOf(settings);
  }

  /** Where a lamp stands on the drawing. */
  public static List<Setting<Lamp, ?>> place() {
    Place first =
        new Place(Place.DEFAULT_VIEW, Place.DEFAULT_X, Place.DEFAULT_Y, Place.DEFAULT_SIZE);
    return List.of(
        new Setting<>(
            "place.view",
            new Kind.Maybe<>(
                new Kind.Choice<>("view", List.of(View.values()), View::key), View.SIDE),
            l -> l.place().map(Place::view),
            (l, v) ->
                l.withPlace(
                    v.map(
                        view -> {
                          Place p = l.place().orElse(first);
                          return new Place(view, p.x(), p.y(), p.size());
                        }))),
        placed("place.x", SHARE, Place::x, (p, v) -> new Place(p.view(), v, p.y(), p.size())),
        placed("place.y", SHARE, Place::y, (p, v) -> new Place(p.view(), p.x(), v, p.size())),
        placed(
            "place.size",
            Kind.Amount.of("", 0.001, 1, 0.01),
            Place::size,
            (p, v) -> new Place(p.view(), p.x(), p.y(), v)));
  }

  /** A scene, but for its id. */
  public static List<Setting<Scene, ?>> scene() {
    return List.of(
        new Setting<>(
            "scene.lengthMs",
            Kind.Amount.of("ms", 1, 86_400_000, 100),
            Scene::lengthMs,
            Scene::withLengthMs),
        new Setting<>(
            "framesPerSecond",
            Kind.Amount.of("perSecond", 1, 1000, 1),
            Scene::framesPerSecond,
            Scene::withFramesPerSecond),
        new Setting<>("scene.loop", new Kind.Flag(), Scene::loop, Scene::withLoop),
        new Setting<>(
            "dither",
            new Kind.Choice<>("dither", List.of(Dither.values()), Dither::key),
            Scene::dither,
            Scene::withDither));
  }

  /**
   * A chain of another type: order and white go back to the type's own where they no longer fit.
   */
  static Chain withType(Chain chain, PixelType type) {
    boolean white = type.order().emitters().contains(EmitterKind.WHITE);
    boolean sameOrder = chain.order().size() == type.order().size();
    boolean usual = chain.order().equals(chain.type().order());
    return new Chain(
        chain.id(),
        type,
        chain.pixels(),
        sameOrder && !usual ? chain.order() : type.order(),
        white ? chain.whiteKelvin() : OptionalDouble.empty(),
        chain.pin());
  }

  private static <R> Setting<R, Optional<String>> pin(
      Function<R, Optional<Pin>> get, java.util.function.BiFunction<R, Optional<Pin>, R> set) {
    return new Setting<>(
        "pin",
        new Kind.Maybe<>(new Kind.Text(4), "PB0"),
        r -> get.apply(r).map(Pin::name),
        (r, v) -> set.apply(r, v.map(Pin::new)));
  }

  private static Setting<Lamp, BigDecimal> feel(
      String key,
      Function<Feel, Double> get,
      java.util.function.BiFunction<Feel, Double, Feel> set) {
    Feel none = new Feel(Feel.DEFAULT_RISE_MS, Feel.DEFAULT_FALL_MS);
    return new Setting<>(
        "feel." + key,
        Kind.Amount.of("ms", 0, 60_000, 10),
        l -> BigDecimal.valueOf(l.feel().map(get).orElse(0.0)),
        (l, v) -> {
          Feel feel = set.apply(l.feel().orElse(none), v.doubleValue());
          return l.withFeel(feel.equals(none) ? Optional.empty() : Optional.of(feel));
        });
  }

  private static Setting<Lamp, BigDecimal> placed(
      String key,
      Kind.Amount kind,
      Function<Place, Double> get,
      java.util.function.BiFunction<Place, Double, Place> set) {
    Place first =
        new Place(Place.DEFAULT_VIEW, Place.DEFAULT_X, Place.DEFAULT_Y, Place.DEFAULT_SIZE);
    return new Setting<>(
        key,
        kind,
        l -> BigDecimal.valueOf(get.apply(l.place().orElse(first))),
        (l, v) -> l.withPlace(l.place().map(p -> set.apply(p, v.doubleValue()))));
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
  private static Rig wire(
      Rig rig, Optional<Feed> feed, java.util.function.Predicate<Feed> statedSo) {
    return feed.isEmpty() && rig.feed().filter(statedSo).isEmpty() ? rig : withFeed(rig, feed);
  }

  private static Rig withFeed(Rig rig, Optional<Feed> feed) {
    return RigDraft.changed(rig, d -> d.feed = feed);
  }

  private static String curve(Curve curve) {
    if (curve instanceof Curve.Power) {
      return "power";
    } else if (curve instanceof Curve.Srgb) {
      return "srgb";
    }
    return curve instanceof Curve.CieLightness ? "cie-lightness" : "linear";
  }

  private static Curve curve(String kind, Curve before) {
    return switch (kind) {
      case "srgb" -> new Curve.Srgb();
      case "cie-lightness" -> new Curve.CieLightness();
      case "linear" -> new Curve.Linear();
      default -> before instanceof Curve.Power ? before : Curve.DEFAULT;
    };
  }

  private static OptionalDouble optionalDouble(Optional<BigDecimal> value) {
    return value.map(v -> OptionalDouble.of(v.doubleValue())).orElseGet(OptionalDouble::empty);
  }

  private static List<EmitterOrder> orders(String letters) {
    return permutations(letters)
        .flatMap(text -> EmitterOrder.parse(text).stream())
        .collect(Collectors.toList());
  }

  private static Stream<String> permutations(String letters) {
    return letters.isEmpty()
        ? Stream.of("")
        : letters
            .chars()
            .mapToObj(Character::toString)
            .flatMap(first -> permutations(letters.replace(first, "")).map(rest -> first + rest));
  }
}
