package lampwright.engine.project;

import java.math.BigDecimal;
import lampwright.engine.pattern.Chase;
import lampwright.engine.pattern.ColourCycle;
import lampwright.engine.pattern.Easing;
import lampwright.engine.pattern.Fade;
import lampwright.engine.pattern.Fill;
import lampwright.engine.pattern.Flash;
import lampwright.engine.pattern.Flicker;
import lampwright.engine.pattern.Indicator;
import lampwright.engine.pattern.Keyframe;
import lampwright.engine.pattern.Keyframes;
import lampwright.engine.pattern.LightCharacter;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.RotatingBeacon;
import lampwright.engine.pattern.TestWalk;
import lampwright.engine.pattern.Tint;

/** Writes patterns: kind, colour and level first, then the parameters that are not as usual. */
final class PatternWriter {
  private final FieldWriter f = new FieldWriter();

  private PatternWriter() {}

  static Out write(Pattern pattern) {
    PatternWriter writer = new PatternWriter();
    writer
        .f
        .text("kind", pattern.kind())
        .colourUnless(Look.DEFAULT.colour(), "colour", pattern.look().colour())
        .numberUnless(Look.DEFAULT.level(), "level", pattern.look().level());
    writer.parameters(pattern);
    return writer.f.done();
  }

  private void parameters(Pattern pattern) {
    if (pattern instanceof Flash p) {
      flash(p);
    } else if (pattern instanceof Indicator p) {
      indicator(p);
    } else if (pattern instanceof RotatingBeacon p) {
      rotatingBeacon(p);
    } else if (pattern instanceof Chase p) {
      chase(p);
    } else if (pattern instanceof Fill p) {
      fill(p);
    } else if (pattern instanceof ColourCycle p) {
      colourCycle(p);
    } else if (pattern instanceof Tint p) {
      tint(p);
    } else if (pattern instanceof Fade p) {
      fade(p);
    } else if (pattern instanceof Keyframes p) {
      keyframes(p);
    } else if (pattern instanceof Flicker p) {
      flicker(p);
    } else if (pattern instanceof TestWalk p) {
      phase(p.phase()).decimalUnless(TestWalk.DEFAULT_STEP_MS, "stepMs", p.stepMs());
    } else if (pattern instanceof LightCharacter p) {
      // Written even where it is the usual one: it says what the light is.
      phase(p.phase())
          .text("character", p.character())
          .decimalUnless(LightCharacter.DEFAULT_UNIT_MS, "unitMs", p.unitMs());
    }
  }

  private FieldWriter phase(BigDecimal phase) {
    return f.decimalUnless(BigDecimal.ZERO, "phase", phase);
  }

  private void flash(Flash p) {
    phase(p.phase())
        .decimalUnless(Flash.DEFAULT_ON_MS, "onMs", p.onMs())
        .decimalUnless(Flash.DEFAULT_OFF_MS, "offMs", p.offMs())
        .numberUnless(Flash.DEFAULT_FLASHES, "flashes", p.flashes())
        .decimalUnless(Flash.DEFAULT_GAP_MS, "gapMs", p.gapMs());
  }

  private void indicator(Indicator p) {
    phase(p.phase())
        .decimalUnless(Indicator.DEFAULT_PER_MINUTE, "perMinute", p.perMinute())
        .decimalUnless(Indicator.DEFAULT_ON_SHARE, "onShare", p.onShare());
  }

  private void rotatingBeacon(RotatingBeacon p) {
    phase(p.phase())
        .decimalUnless(RotatingBeacon.DEFAULT_PER_MINUTE, "perMinute", p.perMinute())
        .numberUnless(RotatingBeacon.DEFAULT_BEAM_DEGREES, "beamDegrees", p.beamDegrees())
        .flagUnless(RotatingBeacon.DEFAULT_CLOCKWISE, "clockwise", p.clockwise())
        .list("angles", p.angles(), FieldWriter::number);
  }

  private void chase(Chase p) {
    phase(p.phase())
        .decimalUnless(Chase.DEFAULT_STEP_MS, "stepMs", p.stepMs())
        .numberUnless(Chase.DEFAULT_WIDTH, "width", p.width())
        .numberUnless(Chase.DEFAULT_TAIL, "tail", p.tail())
        .flagUnless(Chase.DEFAULT_BOUNCE, "bounce", p.bounce());
  }

  private void fill(Fill p) {
    phase(p.phase())
        .decimalUnless(Fill.DEFAULT_OVER_MS, "overMs", p.overMs())
        .decimalUnless(Fill.DEFAULT_HOLD_MS, "holdMs", p.holdMs())
        .decimalUnless(Fill.DEFAULT_OFF_MS, "offMs", p.offMs());
  }

  private void colourCycle(ColourCycle p) {
    phase(p.phase())
        .decimalUnless(ColourCycle.DEFAULT_PERIOD_MS, "periodMs", p.periodMs())
        .numberUnless(ColourCycle.DEFAULT_SPREAD, "spread", p.spread())
        .numberUnless(ColourCycle.DEFAULT_SATURATION, "saturation", p.saturation())
        .flagUnless(ColourCycle.DEFAULT_BACKWARDS, "backwards", p.backwards());
  }

  private void tint(Tint p) {
    f.numberUnless(Tint.DEFAULT_KELVIN, "kelvin", p.kelvin());
    p.toKelvin().ifPresent(to -> f.number("toKelvin", to));
  }

  private void fade(Fade p) {
    p.from().ifPresent(from -> f.colour("from", from));
    p.to().ifPresent(to -> f.colour("to", to));
    f.numberUnless(Fade.DEFAULT_FROM_LEVEL, "fromLevel", p.fromLevel())
        .numberUnless(Fade.DEFAULT_TO_LEVEL, "toLevel", p.toLevel())
        .textUnless(Easing.LINEAR.text(), "easing", p.easing().text());
  }

  private void keyframes(Keyframes p) {
    phase(p.phase())
        .value("frames", FieldWriter.list(p.frames(), PatternWriter::keyframe))
        .flagUnless(Keyframes.DEFAULT_REPEAT, "repeat", p.repeat());
  }

  private static Out keyframe(Keyframe frame) {
    FieldWriter f = new FieldWriter().decimal("atMs", frame.atMs());
    frame.colour().ifPresent(colour -> f.colour("colour", colour));
    frame.level().ifPresent(level -> f.number("level", level));
    return f.textUnless(Easing.LINEAR.text(), "easing", frame.easing().text()).done();
  }

  private void flicker(Flicker p) {
    f.decimalUnless(BigDecimal.valueOf(Flicker.DEFAULT_SEED), "seed", BigDecimal.valueOf(p.seed()))
        .numberUnless(Flicker.DEFAULT_DEPTH, "depth", p.depth())
        .decimalUnless(Flicker.DEFAULT_RATE_HZ, "rateHz", p.rateHz());
  }
}
