package lampwright.engine.pattern;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;
import lampwright.engine.field.Field;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.Shape;
import lampwright.engine.light.Colour;
import lampwright.engine.light.Mixer;

/**
 * White of a colour temperature, which may move evenly in mired over the cue.
 *
 * @param look its level; the colour is the temperature's own
 * @param kelvin at the cue's start, 1,667 to 25,000 K
 * @param toKelvin at the cue's end, if another
 */
public record Tint(Look look, double kelvin, OptionalDouble toKelvin) implements Pattern {
  public static final double DEFAULT_KELVIN = 4000;

  private static final double MIRED = 1e6;

  public static final Shape<Tint> SHAPE =
      Shape.of(
          "tint",
          Tint.class,
          Look.group(Tint::look),
          Field.usual("kelvin", Colour.Kelvin.RANGE, Tint::kelvin, DEFAULT_KELVIN),
          Field.optional("toKelvin", OptionalType.ofNumber(Colour.Kelvin.RANGE), Tint::toKelvin));

  public Tint {
    SHAPE.check(look, kelvin, toKelvin).done();
  }

  @Override
  public Shape<Tint> shape() {
    return SHAPE;
  }

  @Override
  public Map<String, Colour> colours() {
    Map<String, Colour> colours = new LinkedHashMap<>();
    colours.put("kelvin", new Colour.Kelvin(kelvin));
    toKelvin.ifPresent(k -> colours.put("toKelvin", new Colour.Kelvin(k)));
    return colours;
  }

  @Override
  public Painter painter(PaintContext context) {
    double end = toKelvin.orElse(kelvin);
    if (end == kelvin) {
      return new Steady(new Look(new Colour.Kelvin(kelvin), look.level())).painter(context);
    }
    Mixer[] mixers = context.mixers().toArray(Mixer[]::new);
    // No brighter than at its dimmer end, so that a tint that warms does not also dim.
    double[] most = new double[mixers.length];
    for (int k = 0; k < mixers.length; k++) {
      boolean alike = k > 0 && mixers[k] == mixers[k - 1];
      most[k] =
          alike
              ? most[k - 1]
              : Math.min(mixers[k].kelvinLuminance(kelvin), mixers[k].kelvinLuminance(end));
    }
    double light = context.curve().light(look.level());
    double startMired = MIRED / kelvin;
    double endMired = MIRED / end;
    return (tMs, drives) -> {
      double u = tMs.over(context.lengthMs());
      double now = MIRED / (startMired + (endMired - startMired) * u);
      double within = Math.min(Colour.Kelvin.MAX, Math.max(Colour.Kelvin.MIN, now));
      for (int k = 0; k < mixers.length; k++) {
        int at = k * Mixer.SLOTS;
        if (k > 0 && mixers[k] == mixers[k - 1]) {
          System.arraycopy(drives, at - Mixer.SLOTS, drives, at, Mixer.SLOTS);
          continue;
        }
        mixers[k].mixKelvin(within, most[k], light, drives, at);
      }
    };
  }
}
