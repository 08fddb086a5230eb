package lampwright.app.workshop.edit;

import java.util.List;
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
import lampwright.engine.pattern.Tint;

/** The values of every kind of pattern. The ranges are those of the records. */
public final class PatternSettings {
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
            SettingMaker.SHARE,
            pattern -> pattern.look().level(),
            (pattern, level) -> withLook(pattern, new Look(pattern.look().colour(), level))));
  }

  /** What a pattern has besides. */
  public static List<Setting<Pattern, ?>> of(Pattern pattern) {
    if (pattern instanceof Flash) {
      return RhythmSettings.flash();
    } else if (pattern instanceof Indicator) {
      return RhythmSettings.indicator();
    } else if (pattern instanceof RotatingBeacon) {
      return MotionSettings.beacon();
    } else if (pattern instanceof Chase) {
      return MotionSettings.chase();
    } else if (pattern instanceof Fill) {
      return MotionSettings.fill();
    } else if (pattern instanceof ColourCycle) {
      return MotionSettings.colourCycle();
    } else if (pattern instanceof Tint) {
      return ChangeSettings.tint();
    } else if (pattern instanceof Fade) {
      return ChangeSettings.fade();
    } else if (pattern instanceof Keyframes) {
      return ChangeSettings.keyframes();
    } else if (pattern instanceof Flicker) {
      return RhythmSettings.flicker();
    } else if (pattern instanceof TestWalk) {
      return MotionSettings.testWalk();
    } else if (pattern instanceof LightCharacter) {
      return RhythmSettings.lightCharacter();
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
}
