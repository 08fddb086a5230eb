package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
import java.util.function.Function;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.Chase;
import lampwright.engine.pattern.ColourCycle;
import lampwright.engine.pattern.Fade;
import lampwright.engine.pattern.Fill;
import lampwright.engine.pattern.Flash;
import lampwright.engine.pattern.Flicker;
import lampwright.engine.pattern.Indicator;
import lampwright.engine.pattern.Keyframes;
import lampwright.engine.pattern.LightCharacter;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.RotatingBeacon;
import lampwright.engine.pattern.Steady;
import lampwright.engine.pattern.TestWalk;
import lampwright.engine.pattern.Times;
import lampwright.engine.pattern.Tint;

/** The values of every kind of pattern. The ranges are those of the records. */
public final class PatternSettings {
  private static final Kind.Amount MS = Kind.Amount.of("ms", 0, Times.MAX_MS, 10);
  private static final Kind.Amount MS_ABOVE_0 = Kind.Amount.of("ms", 0.001, Times.MAX_MS, 10);
  private static final Kind.Amount PER_MINUTE = Kind.Amount.of("perMinute", 0.001, 60_000, 1);
  private static final Kind.Amount SHARE = Kind.Amount.of("", 0, 1, 0.05);
  private static final Kind.Amount PHASE = Kind.Amount.of("turns", -1_000_000, 1_000_000, 0.01);
  private static final Kind.Amount KELVIN =
      Kind.Amount.of("kelvin", Colour.Kelvin.MIN, Colour.Kelvin.MAX, 50);
  private static final Kind.Amount DEGREES = Kind.Amount.of("degrees", -360, 360, 5);

  private PatternSettings() {}

  /** Colour and level, which all kinds have. */
  public static List<Setting<Pattern, ?>> look() {
    return List.of(
        new Setting<>(
            "colour",
            new Kind.Colours(),
            pattern -> pattern.look().colour(),
            (pattern, colour) -> withLook(pattern, new Look(colour, pattern.look().level()))),
        Setting.ofDouble(
            "level",
            SHARE,
            pattern -> pattern.look().level(),
            (pattern, level) -> withLook(pattern, new Look(pattern.look().colour(), level))));
  }

  /** What a pattern has besides. */
  public static List<Setting<Pattern, ?>> of(Pattern pattern) {
    if (pattern instanceof Flash) {
      return List.of(
          whole(
              "flashes",
              1,
              1000,
              Flash.class,
              Flash::flashes,
              (p, v) -> new Flash(p.look(), p.phase(), p.onMs(), p.offMs(), v, p.gapMs())),
          decimal(
              "onMs",
              MS,
              Flash.class,
              Flash::onMs,
              (p, v) -> new Flash(p.look(), p.phase(), v, p.offMs(), p.flashes(), p.gapMs())),
          decimal(
              "offMs",
              MS,
              Flash.class,
              Flash::offMs,
              (p, v) -> new Flash(p.look(), p.phase(), p.onMs(), v, p.flashes(), p.gapMs())),
          decimal(
              "gapMs",
              MS,
              Flash.class,
              Flash::gapMs,
              (p, v) -> new Flash(p.look(), p.phase(), p.onMs(), p.offMs(), p.flashes(), v)),
          decimal(
              "phase",
              PHASE,
              Flash.class,
              Flash::phase,
              (p, v) -> new Flash(p.look(), v, p.onMs(), p.offMs(), p.flashes(), p.gapMs())));
    }
    if (pattern instanceof Indicator) {
      return List.of(
          decimal(
              "perMinute",
              PER_MINUTE,
              Indicator.class,
              Indicator::perMinute,
              (p, v) -> new Indicator(p.look(), p.phase(), v, p.onShare())),
          decimal(
              "onShare",
              SHARE,
              Indicator.class,
              Indicator::onShare,
              (p, v) -> new Indicator(p.look(), p.phase(), p.perMinute(), v)),
          decimal(
              "phase",
              PHASE,
              Indicator.class,
              Indicator::phase,
              (p, v) -> new Indicator(p.look(), v, p.perMinute(), p.onShare())));
    }
    if (pattern instanceof RotatingBeacon) {
      return beacon();
    }
    if (pattern instanceof Chase) {
      return List.of(
          decimal(
              "stepMs",
              MS_ABOVE_0,
              Chase.class,
              Chase::stepMs,
              (p, v) -> new Chase(p.look(), p.phase(), v, p.width(), p.tail(), p.bounce())),
          whole(
              "width",
              1,
              4096,
              Chase.class,
              Chase::width,
              (p, v) -> new Chase(p.look(), p.phase(), p.stepMs(), v, p.tail(), p.bounce())),
          whole(
              "tail",
              0,
              4096,
              Chase.class,
              Chase::tail,
              (p, v) -> new Chase(p.look(), p.phase(), p.stepMs(), p.width(), v, p.bounce())),
          flag(
              "bounce",
              Chase.class,
              Chase::bounce,
              (p, v) -> new Chase(p.look(), p.phase(), p.stepMs(), p.width(), p.tail(), v)),
          decimal(
              "phase",
              PHASE,
              Chase.class,
              Chase::phase,
              (p, v) -> new Chase(p.look(), v, p.stepMs(), p.width(), p.tail(), p.bounce())));
    }
    if (pattern instanceof Fill) {
      return List.of(
          decimal(
              "overMs",
              MS,
              Fill.class,
              Fill::overMs,
              (p, v) -> new Fill(p.look(), p.phase(), v, p.holdMs(), p.offMs())),
          decimal(
              "holdMs",
              MS,
              Fill.class,
              Fill::holdMs,
              (p, v) -> new Fill(p.look(), p.phase(), p.overMs(), v, p.offMs())),
          decimal(
              "offMs",
              MS,
              Fill.class,
              Fill::offMs,
              (p, v) -> new Fill(p.look(), p.phase(), p.overMs(), p.holdMs(), v)),
          decimal(
              "phase",
              PHASE,
              Fill.class,
              Fill::phase,
              (p, v) -> new Fill(p.look(), v, p.overMs(), p.holdMs(), p.offMs())));
    }
    if (pattern instanceof ColourCycle) {
      return List.of(
          decimal(
              "periodMs",
              MS_ABOVE_0,
              ColourCycle.class,
              ColourCycle::periodMs,
              (p, v) ->
                  new ColourCycle(
                      p.look(), p.phase(), v, p.spread(), p.saturation(), p.backwards())),
          number(
              "spread",
              Kind.Amount.of("turns", -1000, 1000, 0.1),
              ColourCycle.class,
              ColourCycle::spread,
              (p, v) ->
                  new ColourCycle(
                      p.look(), p.phase(), p.periodMs(), v, p.saturation(), p.backwards())),
          number(
              "saturation",
              SHARE,
              ColourCycle.class,
              ColourCycle::saturation,
              (p, v) ->
                  new ColourCycle(p.look(), p.phase(), p.periodMs(), p.spread(), v, p.backwards())),
          flag(
              "backwards",
              ColourCycle.class,
              ColourCycle::backwards,
              (p, v) ->
                  new ColourCycle(
                      p.look(), p.phase(), p.periodMs(), p.spread(), p.saturation(), v)),
          decimal(
              "phase",
              PHASE,
              ColourCycle.class,
              ColourCycle::phase,
              (p, v) ->
                  new ColourCycle(
                      p.look(), v, p.periodMs(), p.spread(), p.saturation(), p.backwards())));
    }
    if (pattern instanceof Tint) {
      return List.of(
          number(
              "kelvin",
              KELVIN,
              Tint.class,
              Tint::kelvin,
              (p, v) -> new Tint(p.look(), v, p.toKelvin())),
          typed(
              "toKelvin",
              new Kind.Maybe<>(KELVIN, BigDecimal.valueOf(6500)),
              Tint.class,
              p ->
                  p.toKelvin().isPresent()
                      ? Optional.of(BigDecimal.valueOf(p.toKelvin().getAsDouble()))
                      : Optional.empty(),
              (p, v) ->
                  new Tint(
                      p.look(),
                      p.kelvin(),
                      v.map(k -> OptionalDouble.of(k.doubleValue()))
                          .orElse(OptionalDouble.empty()))));
    }
    if (pattern instanceof Fade) {
      return List.of(
          typed(
              "from",
              new Kind.Maybe<>(new Kind.Colours(), Colour.WHITE),
              Fade.class,
              Fade::from,
              (p, v) -> new Fade(p.look(), v, p.to(), p.fromLevel(), p.toLevel(), p.easing())),
          number(
              "fromLevel",
              SHARE,
              Fade.class,
              Fade::fromLevel,
              (p, v) -> new Fade(p.look(), p.from(), p.to(), v, p.toLevel(), p.easing())),
          typed(
              "to",
              new Kind.Maybe<>(new Kind.Colours(), Colour.WHITE),
              Fade.class,
              Fade::to,
              (p, v) -> new Fade(p.look(), p.from(), v, p.fromLevel(), p.toLevel(), p.easing())),
          number(
              "toLevel",
              SHARE,
              Fade.class,
              Fade::toLevel,
              (p, v) -> new Fade(p.look(), p.from(), p.to(), p.fromLevel(), v, p.easing())),
          typed(
              "easing",
              new Kind.Easings(),
              Fade.class,
              Fade::easing,
              (p, v) -> new Fade(p.look(), p.from(), p.to(), p.fromLevel(), p.toLevel(), v)));
    }
    if (pattern instanceof Keyframes) {
      return List.of(
          typed(
              "frames",
              new Kind.KeyframeRows(),
              Keyframes.class,
              Keyframes::frames,
              (p, v) -> new Keyframes(p.look(), p.phase(), v, p.repeat())),
          flag(
              "repeat",
              Keyframes.class,
              Keyframes::repeat,
              (p, v) -> new Keyframes(p.look(), p.phase(), p.frames(), v)),
          decimal(
              "phase",
              PHASE,
              Keyframes.class,
              Keyframes::phase,
              (p, v) -> new Keyframes(p.look(), v, p.frames(), p.repeat())));
    }
    if (pattern instanceof Flicker) {
      return List.of(
          number(
              "depth",
              SHARE,
              Flicker.class,
              Flicker::depth,
              (p, v) -> new Flicker(p.look(), p.seed(), v, p.rateHz())),
          decimal(
              "rateHz",
              Kind.Amount.of("hertz", 0.001, 1000, 0.5),
              Flicker.class,
              Flicker::rateHz,
              (p, v) -> new Flicker(p.look(), p.seed(), p.depth(), v)),
          typed(
              "seed",
              new Kind.Whole("", 0, Flicker.MAX_SEED),
              Flicker.class,
              Flicker::seed,
              (p, v) -> new Flicker(p.look(), v, p.depth(), p.rateHz())));
    }
    if (pattern instanceof TestWalk) {
      return List.of(
          decimal(
              "stepMs",
              MS_ABOVE_0,
              TestWalk.class,
              TestWalk::stepMs,
              (p, v) -> new TestWalk(p.look(), p.phase(), v)),
          decimal(
              "phase",
              PHASE,
              TestWalk.class,
              TestWalk::phase,
              (p, v) -> new TestWalk(p.look(), v, p.stepMs())));
    }
    if (pattern instanceof LightCharacter) {
      return List.of(
          typed(
              "character",
              new Kind.Text(60),
              LightCharacter.class,
              LightCharacter::character,
              (p, v) -> new LightCharacter(p.look(), p.phase(), v, p.unitMs())),
          decimal(
              "unitMs",
              Kind.Amount.of("ms", 0.001, 10_000, 10),
              LightCharacter.class,
              LightCharacter::unitMs,
              (p, v) -> new LightCharacter(p.look(), p.phase(), p.character(), v)),
          decimal(
              "phase",
              PHASE,
              LightCharacter.class,
              LightCharacter::phase,
              (p, v) -> new LightCharacter(p.look(), v, p.character(), p.unitMs())));
    }
    return List.of();
  }

  /** The same pattern in another colour and level. */
  public static Pattern withLook(Pattern pattern, Look look) {
    if (pattern instanceof Steady) {
      return new Steady(look);
    } else if (pattern instanceof Flash p) {
      return new Flash(look, p.phase(), p.onMs(), p.offMs(), p.flashes(), p.gapMs());
    } else if (pattern instanceof Indicator p) {
      return new Indicator(look, p.phase(), p.perMinute(), p.onShare());
    } else if (pattern instanceof RotatingBeacon p) {
      return new RotatingBeacon(
          look, p.phase(), p.perMinute(), p.beamDegrees(), p.clockwise(), p.angles());
    } else if (pattern instanceof Chase p) {
      return new Chase(look, p.phase(), p.stepMs(), p.width(), p.tail(), p.bounce());
    } else if (pattern instanceof Fill p) {
      return new Fill(look, p.phase(), p.overMs(), p.holdMs(), p.offMs());
    } else if (pattern instanceof ColourCycle p) {
      return new ColourCycle(
          look, p.phase(), p.periodMs(), p.spread(), p.saturation(), p.backwards());
    } else if (pattern instanceof Tint p) {
      return new Tint(look, p.kelvin(), p.toKelvin());
    } else if (pattern instanceof Fade p) {
      return new Fade(look, p.from(), p.to(), p.fromLevel(), p.toLevel(), p.easing());
    } else if (pattern instanceof Keyframes p) {
      return new Keyframes(look, p.phase(), p.frames(), p.repeat());
    } else if (pattern instanceof Flicker p) {
      return new Flicker(look, p.seed(), p.depth(), p.rateHz());
    } else if (pattern instanceof TestWalk p) {
      return new TestWalk(look, p.phase(), p.stepMs());
    } else if (pattern instanceof LightCharacter p) {
      return new LightCharacter(look, p.phase(), p.character(), p.unitMs());
    }
    throw new IllegalArgumentException("pattern: " + pattern + ": needs a known kind");
  }

  private static List<Setting<Pattern, ?>> beacon() {
    return List.of(
        decimal(
            "perMinute",
            PER_MINUTE,
            RotatingBeacon.class,
            RotatingBeacon::perMinute,
            (p, v) ->
                new RotatingBeacon(
                    p.look(), p.phase(), v, p.beamDegrees(), p.clockwise(), p.angles())),
        number(
            "beamDegrees",
            Kind.Amount.of("degrees", 0.001, 360, 5),
            RotatingBeacon.class,
            RotatingBeacon::beamDegrees,
            (p, v) ->
                new RotatingBeacon(
                    p.look(), p.phase(), p.perMinute(), v, p.clockwise(), p.angles())),
        flag(
            "clockwise",
            RotatingBeacon.class,
            RotatingBeacon::clockwise,
            (p, v) ->
                new RotatingBeacon(
                    p.look(), p.phase(), p.perMinute(), p.beamDegrees(), v, p.angles())),
        decimal(
            "phase",
            PHASE,
            RotatingBeacon.class,
            RotatingBeacon::phase,
            (p, v) ->
                new RotatingBeacon(
                    p.look(), v, p.perMinute(), p.beamDegrees(), p.clockwise(), p.angles())),
        typed(
            "angles",
            new Kind.Numbers(DEGREES, 4096),
            RotatingBeacon.class,
            p -> p.angles().stream().map(BigDecimal::valueOf).toList(),
            (p, v) ->
                new RotatingBeacon(
                    p.look(),
                    p.phase(),
                    p.perMinute(),
                    p.beamDegrees(),
                    p.clockwise(),
                    v.stream().map(BigDecimal::doubleValue).toList())));
  }

  private static <P extends Pattern, V> Setting<Pattern, V> typed(
      String key, Kind<V> kind, Class<P> type, Function<P, V> get, BiFunction<P, V, P> set) {
    return new Setting<>(
        key,
        kind,
        pattern -> get.apply(type.cast(pattern)),
        // Of several cues those of another kind are left as they are.
        (pattern, value) ->
            type.isInstance(pattern) ? set.apply(type.cast(pattern), value) : pattern);
  }

  private static <P extends Pattern> Setting<Pattern, BigDecimal> decimal(
      String key,
      Kind.Amount kind,
      Class<P> type,
      Function<P, BigDecimal> get,
      BiFunction<P, BigDecimal, P> set) {
    return typed(key, kind, type, get, set);
  }

  private static <P extends Pattern> Setting<Pattern, BigDecimal> number(
      String key,
      Kind.Amount kind,
      Class<P> type,
      Function<P, Double> get,
      BiFunction<P, Double, P> set) {
    return typed(
        key,
        kind,
        type,
        p -> BigDecimal.valueOf(get.apply(p)),
        (p, v) -> set.apply(p, v.doubleValue()));
  }

  private static <P extends Pattern> Setting<Pattern, Long> whole(
      String key,
      long min,
      long max,
      Class<P> type,
      Function<P, Integer> get,
      BiFunction<P, Integer, P> set) {
    return typed(
        key,
        new Kind.Whole("", min, max),
        type,
        p -> get.apply(p).longValue(),
        (p, v) -> set.apply(p, Math.toIntExact(v)));
  }

  private static <P extends Pattern> Setting<Pattern, Boolean> flag(
      String key, Class<P> type, Function<P, Boolean> get, BiFunction<P, Boolean, P> set) {
    return typed(key, new Kind.Flag(), type, get, set);
  }
}
