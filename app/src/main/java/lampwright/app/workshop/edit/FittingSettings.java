package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import lampwright.engine.light.Colour;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.EmitterOrder;
import lampwright.engine.rig.Feel;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.LampFunction;
import lampwright.engine.rig.OutputSupply;
import lampwright.engine.rig.Pin;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Place;
import lampwright.engine.rig.View;

/**
 * The values of what is fitted: chains, driver outputs, lamps and their places. The ranges are
 * those of the records.
 */
public final class FittingSettings {
  private static final Kind.Amount SHARE = Kind.Amount.of("", 0, 1, 0.05);
  private static final List<EmitterOrder> RGB_ORDERS = orders("RGB");
  private static final List<EmitterOrder> RGBW_ORDERS = orders("RGBW");

  private FittingSettings() {}

  /** A chain, but for its id. */
  public static List<Setting<Chain, ?>> chain(List<PixelType> own, PixelType now) {
    List<PixelType> types = Stream.concat(BuiltInPixelTypes.all().stream(), own.stream()).toList();
    return List.of(
        new Setting<>(
            "pixelType",
            new Kind.Choice<>("pixelType", types, PixelType::id),
            Chain::type,
            FittingSettings::withType),
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
        new ArrayList<>(
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
      Function<R, Optional<Pin>> get, BiFunction<R, Optional<Pin>, R> set) {
    return new Setting<>(
        "pin",
        new Kind.Maybe<>(new Kind.Text(4), "PB0"),
        r -> get.apply(r).map(Pin::name),
        (r, v) -> set.apply(r, v.map(Pin::new)));
  }

  private static Setting<Lamp, BigDecimal> feel(
      String key, Function<Feel, Double> get, BiFunction<Feel, Double, Feel> set) {
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
      BiFunction<Place, Double, Place> set) {
    Place first =
        new Place(Place.DEFAULT_VIEW, Place.DEFAULT_X, Place.DEFAULT_Y, Place.DEFAULT_SIZE);
    return new Setting<>(
        key,
        kind,
        l -> BigDecimal.valueOf(get.apply(l.place().orElse(first))),
        (l, v) -> l.withPlace(l.place().map(p -> set.apply(p, v.doubleValue()))));
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
