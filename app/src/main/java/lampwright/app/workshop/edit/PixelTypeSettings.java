package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;
import java.util.function.Function;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.light.Emitter;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.light.FittedEmitter;
import lampwright.engine.rig.LineTiming;
import lampwright.engine.rig.PixelType;

/** The values of a pixel type of one's own. The ranges are those of the records. */
public final class PixelTypeSettings {
  private static final double MOST_NS = 1_000_000;

  private PixelTypeSettings() {}

  /** All but its id and order. */
  public static List<Setting<PixelType, ?>> of(PixelType type) {
    List<Setting<PixelType, ?>> settings = new ArrayList<>();
    settings.add(
        Setting.ofDouble(
            "type.idleMilliamps",
            Kind.Amount.of("milliamps", 0, 1000, 0.1),
            PixelType::idleMilliamps,
            (t, v) ->
                new PixelType(t.id(), t.order(), v, t.volts(), t.emitters(), t.line(), t.needs())));
    for (EmitterKind kind : type.emitters().keySet()) {
      settings.addAll(emitter(kind));
    }
    settings.add(
        line(
            "t0hNs",
            LineTiming::t0hNs,
            (l, v) -> times(v, l.t0lNs(), l.t1hNs(), l.t1lNs(), l.toleranceNs(), l.resetUs()),
            1,
            "nanoseconds"));
    settings.add(
        line(
            "t0lNs",
            LineTiming::t0lNs,
            (l, v) -> times(l.t0hNs(), v, l.t1hNs(), l.t1lNs(), l.toleranceNs(), l.resetUs()),
            1,
            "nanoseconds"));
    settings.add(
        line(
            "t1hNs",
            LineTiming::t1hNs,
            (l, v) -> times(l.t0hNs(), l.t0lNs(), v, l.t1lNs(), l.toleranceNs(), l.resetUs()),
            1,
            "nanoseconds"));
    settings.add(
        line(
            "t1lNs",
            LineTiming::t1lNs,
            (l, v) -> times(l.t0hNs(), l.t0lNs(), l.t1hNs(), v, l.toleranceNs(), l.resetUs()),
            1,
            "nanoseconds"));
    settings.add(
        line(
            "toleranceNs",
            LineTiming::toleranceNs,
            (l, v) -> times(l.t0hNs(), l.t0lNs(), l.t1hNs(), l.t1lNs(), v, l.resetUs()),
            0,
            "nanoseconds"));
    settings.add(
        line(
            "resetUs",
            LineTiming::resetUs,
            (l, v) -> times(l.t0hNs(), l.t0lNs(), l.t1hNs(), l.t1lNs(), l.toleranceNs(), v),
            1,
            "microseconds"));
    return List.copyOf(settings);
  }

  /** The same type under another id. */
  public static PixelType withId(PixelType t, String id) {
    return new PixelType(
        id, t.order(), t.idleMilliamps(), t.volts(), t.emitters(), t.line(), t.needs());
  }

  private static List<Setting<PixelType, ?>> emitter(EmitterKind kind) {
    String key = "emitter." + kind.key();
    return List.of(
        part(
            key + ".mcd",
            kind,
            Kind.Amount.of("mcd", 0.000001, 1_000_000, 10),
            f -> f.light().millicandela(),
            (f, v) -> new FittedEmitter(new Emitter(f.light().chromaticity(), v), f.milliamps())),
        part(
            key + ".milliamps",
            kind,
            Kind.Amount.of("milliamps", 0, 10_000, 1),
            FittedEmitter::milliamps,
            (f, v) -> new FittedEmitter(f.light(), v)),
        part(
            key + ".x",
            kind,
            Kind.Amount.of("", 0, 1, 0.001),
            f -> f.light().chromaticity().x(),
            (f, v) ->
                new FittedEmitter(
                    new Emitter(
                        new Chromaticity(v, f.light().chromaticity().y()),
                        f.light().millicandela()),
                    f.milliamps())),
        part(
            key + ".y",
            kind,
            Kind.Amount.of("", 0.001, 1, 0.001),
            f -> f.light().chromaticity().y(),
            (f, v) ->
                new FittedEmitter(
                    new Emitter(
                        new Chromaticity(f.light().chromaticity().x(), v),
                        f.light().millicandela()),
                    f.milliamps())));
  }

  private static Setting<PixelType, BigDecimal> part(
      String key,
      EmitterKind kind,
      Kind.Amount amount,
      Function<FittedEmitter, Double> get,
      BiFunction<FittedEmitter, Double, FittedEmitter> set) {
    return Setting.ofDouble(
        key,
        amount,
        t -> get.apply(fitted(t, kind)),
        (t, v) -> {
          Map<EmitterKind, FittedEmitter> emitters = new EnumMap<>(t.emitters());
          emitters.put(kind, set.apply(fitted(t, kind), v));
          return new PixelType(
              t.id(), t.order(), t.idleMilliamps(), t.volts(), emitters, t.line(), t.needs());
        });
  }

  private static FittedEmitter fitted(PixelType type, EmitterKind kind) {
    return java.util.Objects.requireNonNull(type.emitters().get(kind), kind.key());
  }

  private static Setting<PixelType, BigDecimal> line(
      String key,
      Function<LineTiming, Double> get,
      BiFunction<LineTiming, Double, LineTiming> set,
      double least,
      String unit) {
    return Setting.ofDouble(
        "line." + key,
        Kind.Amount.of(unit, least, MOST_NS, 10),
        t -> get.apply(t.line()),
        (t, v) ->
            new PixelType(
                t.id(),
                t.order(),
                t.idleMilliamps(),
                t.volts(),
                t.emitters(),
                set.apply(t.line(), v),
                t.needs()));
  }

  private static LineTiming times(
      double t0h, double t0l, double t1h, double t1l, double tolerance, double reset) {
    return new LineTiming(t0h, t0l, t1h, t1l, tolerance, reset);
  }
}
