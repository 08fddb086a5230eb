package lampwright.app.workshop.edit;

import java.util.List;
import lampwright.engine.pattern.Flash;
import lampwright.engine.pattern.Flicker;
import lampwright.engine.pattern.Indicator;
import lampwright.engine.pattern.LightCharacter;
import lampwright.engine.pattern.Pattern;

/** The values of patterns that go on and off in a rhythm, or flicker. */
final class RhythmSettings {
  private RhythmSettings() {}

  /** What a flash has. */
  static List<Setting<Pattern, ?>> flash() {
    SettingMaker<Flash> of = new SettingMaker<>(Flash.class);
    return List.of(
        of.whole(
            "flashes",
            1,
            1000,
            Flash::flashes,
            (p, v) -> new Flash(p.look(), p.phase(), p.onMs(), p.offMs(), v, p.gapMs())),
        of.decimal(
            "onMs",
            SettingMaker.MS,
            Flash::onMs,
            (p, v) -> new Flash(p.look(), p.phase(), v, p.offMs(), p.flashes(), p.gapMs())),
        of.decimal(
            "offMs",
            SettingMaker.MS,
            Flash::offMs,
            (p, v) -> new Flash(p.look(), p.phase(), p.onMs(), v, p.flashes(), p.gapMs())),
        of.decimal(
            "gapMs",
            SettingMaker.MS,
            Flash::gapMs,
            (p, v) -> new Flash(p.look(), p.phase(), p.onMs(), p.offMs(), p.flashes(), v)),
        of.phase(
            Flash::phase,
            (p, v) -> new Flash(p.look(), v, p.onMs(), p.offMs(), p.flashes(), p.gapMs())));
  }

  /** What an indicator has. */
  static List<Setting<Pattern, ?>> indicator() {
    SettingMaker<Indicator> of = new SettingMaker<>(Indicator.class);
    return List.of(
        of.decimal(
            "perMinute",
            SettingMaker.PER_MINUTE,
            Indicator::perMinute,
            (p, v) -> new Indicator(p.look(), p.phase(), v, p.onShare())),
        of.decimal(
            "onShare",
            SettingMaker.SHARE,
            Indicator::onShare,
            (p, v) -> new Indicator(p.look(), p.phase(), p.perMinute(), v)),
        of.phase(
            Indicator::phase, (p, v) -> new Indicator(p.look(), v, p.perMinute(), p.onShare())));
  }

  /** What a light character has. */
  static List<Setting<Pattern, ?>> lightCharacter() {
    SettingMaker<LightCharacter> of = new SettingMaker<>(LightCharacter.class);
    return List.of(
        of.typed(
            "character",
            new Kind.Text(60),
            LightCharacter::character,
            (p, v) -> new LightCharacter(p.look(), p.phase(), v, p.unitMs())),
        of.decimal(
            "unitMs",
            Kind.Amount.of("ms", 0.001, 10_000, 10),
            LightCharacter::unitMs,
            (p, v) -> new LightCharacter(p.look(), p.phase(), p.character(), v)),
        of.phase(
            LightCharacter::phase,
            (p, v) -> new LightCharacter(p.look(), v, p.character(), p.unitMs())));
  }

  /** What a flicker has. */
  static List<Setting<Pattern, ?>> flicker() {
    SettingMaker<Flicker> of = new SettingMaker<>(Flicker.class);
    return List.of(
        of.number(
            "depth",
            SettingMaker.SHARE,
            Flicker::depth,
            (p, v) -> new Flicker(p.look(), p.seed(), v, p.rateHz())),
        of.decimal(
            "rateHz",
            Kind.Amount.of("hertz", 0.001, 1000, 0.5),
            Flicker::rateHz,
            (p, v) -> new Flicker(p.look(), p.seed(), p.depth(), v)),
        of.typed(
            "seed",
            new Kind.Whole("", 0, Flicker.MAX_SEED),
            Flicker::seed,
            (p, v) -> new Flicker(p.look(), v, p.depth(), p.rateHz())));
  }
}
