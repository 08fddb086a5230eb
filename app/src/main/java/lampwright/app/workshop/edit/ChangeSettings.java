package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwright.engine.light.Colour;
import lampwright.engine.pattern.Fade;
import lampwright.engine.pattern.Keyframes;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.Tint;

/** The values of patterns that go from one light to another. */
final class ChangeSettings {
  private static final Kind.Amount KELVIN =
      Kind.Amount.of("kelvin", Colour.Kelvin.MIN, Colour.Kelvin.MAX, 50);

  private ChangeSettings() {}

  /** What a tint has. */
  static List<Setting<Pattern, ?>> tint() {
    SettingMaker<Tint> of = new SettingMaker<>(Tint.class);
    return List.of(
        of.number("kelvin", KELVIN, Tint::kelvin, (p, v) -> new Tint(p.look(), v, p.toKelvin())),
        of.typed(
            "toKelvin",
            new Kind.Maybe<>(KELVIN, BigDecimal.valueOf(6500)),
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

  /** What a fade has. */
  static List<Setting<Pattern, ?>> fade() {
    SettingMaker<Fade> of = new SettingMaker<>(Fade.class);
    return List.of(
        of.typed(
            "from",
            new Kind.Maybe<>(new Kind.Colours(), Colour.WHITE),
            Fade::from,
            (p, v) -> new Fade(p.look(), v, p.to(), p.fromLevel(), p.toLevel(), p.easing())),
        of.number(
            "fromLevel",
            SettingMaker.SHARE,
            Fade::fromLevel,
            (p, v) -> new Fade(p.look(), p.from(), p.to(), v, p.toLevel(), p.easing())),
        of.typed(
            "to",
            new Kind.Maybe<>(new Kind.Colours(), Colour.WHITE),
            Fade::to,
            (p, v) -> new Fade(p.look(), p.from(), v, p.fromLevel(), p.toLevel(), p.easing())),
        of.number(
            "toLevel",
            SettingMaker.SHARE,
            Fade::toLevel,
            (p, v) -> new Fade(p.look(), p.from(), p.to(), p.fromLevel(), v, p.easing())),
        of.typed(
            "easing",
            new Kind.Easings(),
            Fade::easing,
            (p, v) -> new Fade(p.look(), p.from(), p.to(), p.fromLevel(), p.toLevel(), v)));
  }

  /** What keyframes have. */
  static List<Setting<Pattern, ?>> keyframes() {
    SettingMaker<Keyframes> of = new SettingMaker<>(Keyframes.class);
    return List.of(
        of.typed(
            "frames",
            new Kind.KeyframeRows(),
            Keyframes::frames,
            (p, v) -> new Keyframes(p.look(), p.phase(), v, p.repeat())),
        of.flag(
            "repeat",
            Keyframes::repeat,
            (p, v) -> new Keyframes(p.look(), p.phase(), p.frames(), v)),
        of.phase(Keyframes::phase, (p, v) -> new Keyframes(p.look(), v, p.frames(), p.repeat())));
  }
}
