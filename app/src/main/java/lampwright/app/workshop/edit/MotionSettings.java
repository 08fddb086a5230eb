package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.List;
import lampwright.engine.pattern.Chase;
import lampwright.engine.pattern.ColourCycle;
import lampwright.engine.pattern.Fill;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.RotatingBeacon;
import lampwright.engine.pattern.TestWalk;

/** The values of patterns that move along or round the pixels of a lamp. */
final class MotionSettings {
  private static final Kind.Amount DEGREES = Kind.Amount.of("degrees", -360, 360, 5);

  private MotionSettings() {}

  /** What a rotating beacon has. */
  static List<Setting<Pattern, ?>> beacon() {
    SettingMaker<RotatingBeacon> of = new SettingMaker<>(RotatingBeacon.class);
    return List.of(
        of.decimal(
            "perMinute",
            SettingMaker.PER_MINUTE,
            RotatingBeacon::perMinute,
            (p, v) ->
                new RotatingBeacon(
                    p.look(), p.phase(), v, p.beamDegrees(), p.clockwise(), p.angles())),
        of.number(
            "beamDegrees",
            Kind.Amount.of("degrees", 0.001, 360, 5),
            RotatingBeacon::beamDegrees,
            (p, v) ->
                new RotatingBeacon(
                    p.look(), p.phase(), p.perMinute(), v, p.clockwise(), p.angles())),
        of.flag(
            "clockwise",
            RotatingBeacon::clockwise,
            (p, v) ->
                new RotatingBeacon(
                    p.look(), p.phase(), p.perMinute(), p.beamDegrees(), v, p.angles())),
        of.phase(
            RotatingBeacon::phase,
            (p, v) ->
                new RotatingBeacon(
                    p.look(), v, p.perMinute(), p.beamDegrees(), p.clockwise(), p.angles())),
        of.typed(
            "angles",
            new Kind.Numbers(DEGREES, 4096),
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

  /** What a chase has. */
  static List<Setting<Pattern, ?>> chase() {
    SettingMaker<Chase> of = new SettingMaker<>(Chase.class);
    return List.of(
        of.decimal(
            "stepMs",
            SettingMaker.MS_ABOVE_0,
            Chase::stepMs,
            (p, v) -> new Chase(p.look(), p.phase(), v, p.width(), p.tail(), p.bounce())),
        of.whole(
            "width",
            1,
            4096,
            Chase::width,
            (p, v) -> new Chase(p.look(), p.phase(), p.stepMs(), v, p.tail(), p.bounce())),
        of.whole(
            "tail",
            0,
            4096,
            Chase::tail,
            (p, v) -> new Chase(p.look(), p.phase(), p.stepMs(), p.width(), v, p.bounce())),
        of.flag(
            "bounce",
            Chase::bounce,
            (p, v) -> new Chase(p.look(), p.phase(), p.stepMs(), p.width(), p.tail(), v)),
        of.phase(
            Chase::phase,
            (p, v) -> new Chase(p.look(), v, p.stepMs(), p.width(), p.tail(), p.bounce())));
  }

  /** What a fill has. */
  static List<Setting<Pattern, ?>> fill() {
    SettingMaker<Fill> of = new SettingMaker<>(Fill.class);
    return List.of(
        of.decimal(
            "overMs",
            SettingMaker.MS,
            Fill::overMs,
            (p, v) -> new Fill(p.look(), p.phase(), v, p.holdMs(), p.offMs())),
        of.decimal(
            "holdMs",
            SettingMaker.MS,
            Fill::holdMs,
            (p, v) -> new Fill(p.look(), p.phase(), p.overMs(), v, p.offMs())),
        of.decimal(
            "offMs",
            SettingMaker.MS,
            Fill::offMs,
            (p, v) -> new Fill(p.look(), p.phase(), p.overMs(), p.holdMs(), v)),
        of.phase(Fill::phase, (p, v) -> new Fill(p.look(), v, p.overMs(), p.holdMs(), p.offMs())));
  }

  /** What a colour cycle has. */
  static List<Setting<Pattern, ?>> colourCycle() {
    SettingMaker<ColourCycle> of = new SettingMaker<>(ColourCycle.class);
    return List.of(
        of.decimal(
            "periodMs",
            SettingMaker.MS_ABOVE_0,
            ColourCycle::periodMs,
            (p, v) ->
                new ColourCycle(p.look(), p.phase(), v, p.spread(), p.saturation(), p.backwards())),
        of.number(
            "spread",
            Kind.Amount.of("turns", -1000, 1000, 0.1),
            ColourCycle::spread,
            (p, v) ->
                new ColourCycle(
                    p.look(), p.phase(), p.periodMs(), v, p.saturation(), p.backwards())),
        of.number(
            "saturation",
            SettingMaker.SHARE,
            ColourCycle::saturation,
            (p, v) ->
                new ColourCycle(p.look(), p.phase(), p.periodMs(), p.spread(), v, p.backwards())),
        of.flag(
            "backwards",
            ColourCycle::backwards,
            (p, v) ->
                new ColourCycle(p.look(), p.phase(), p.periodMs(), p.spread(), p.saturation(), v)),
        of.phase(
            ColourCycle::phase,
            (p, v) ->
                new ColourCycle(
                    p.look(), v, p.periodMs(), p.spread(), p.saturation(), p.backwards())));
  }

  /** What a test walk has. */
  static List<Setting<Pattern, ?>> testWalk() {
    SettingMaker<TestWalk> of = new SettingMaker<>(TestWalk.class);
    return List.of(
        of.decimal(
            "stepMs",
            SettingMaker.MS_ABOVE_0,
            TestWalk::stepMs,
            (p, v) -> new TestWalk(p.look(), p.phase(), v)),
        of.phase(TestWalk::phase, (p, v) -> new TestWalk(p.look(), v, p.stepMs())));
  }
}
