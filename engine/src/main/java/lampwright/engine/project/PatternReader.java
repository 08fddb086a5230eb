package lampwright.engine.project;

import static lampwright.engine.project.ValueKind.DECIMAL;
import static lampwright.engine.project.ValueKind.FLAG;
import static lampwright.engine.project.ValueKind.NUMBER;
import static lampwright.engine.project.ValueKind.TEXT;
import static lampwright.engine.project.ValueKind.WHOLE;

import com.google.common.collect.ImmutableMap;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
import lampwright.engine.light.Colour;
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
import lampwright.engine.pattern.Steady;
import lampwright.engine.pattern.TestWalk;
import lampwright.engine.pattern.Tint;

/** Reads patterns. */
final class PatternReader {
  private static final Pattern STAND_IN = new Steady(Look.DEFAULT);
  private static final ValueKind<Easing> EASING =
      ValueKind.text(Easing.ALLOWED, Easing::parse).knowing(List.of("linear", "hold", "smooth"));

  private static final Map<String, BiFunction<Fields, Look, Pattern>> KINDS =
      ImmutableMap.<String, BiFunction<Fields, Look, Pattern>>builder()
          .put(Steady.KIND, (f, look) -> new Steady(look))
          .put(Flash.KIND, PatternReader::flash)
          .put(Indicator.KIND, PatternReader::indicator)
          .put(RotatingBeacon.KIND, PatternReader::rotatingBeacon)
          .put(Chase.KIND, PatternReader::chase)
          .put(Fill.KIND, PatternReader::fill)
          .put(ColourCycle.KIND, PatternReader::colourCycle)
          .put(Tint.KIND, PatternReader::tint)
          .put(Fade.KIND, PatternReader::fade)
          .put(Keyframes.KIND, PatternReader::keyframes)
          .put(Flicker.KIND, PatternReader::flicker)
          .put(TestWalk.KIND, PatternReader::testWalk)
          .put(LightCharacter.KIND, PatternReader::lightCharacter)
          .buildOrThrow();

  private static final ValueKind<String> KIND =
      ValueKind.choice(KINDS.keySet().toArray(String[]::new), kind -> kind);

  private PatternReader() {}

  /** The kinds of pattern, in the order in which messages list them. */
  static List<String> kinds() {
    return List.copyOf(KINDS.keySet());
  }

  static Pattern read(Located at) {
    Fields fields = at.fields();
    String kind = fields.required("kind", KIND, "");
    BiFunction<Fields, Look, Pattern> reader = KINDS.get(kind);
    if (reader == null) {
      // Which fields it should have is not known then.
      look(fields);
      return STAND_IN;
    }
    Look look = look(fields);
    Pattern pattern = fields.build(() -> reader.apply(fields, look), () -> STAND_IN);
    fields.close();
    return pattern;
  }

  private static Look look(Fields f) {
    Colour colour = ColourReader.given(f, "colour").orElse(Look.DEFAULT.colour());
    double level = f.optional("level", NUMBER, Look.DEFAULT.level());
    return f.build(() -> new Look(colour, level), () -> Look.DEFAULT);
  }

  private static BigDecimal phase(Fields f) {
    return f.optional("phase", DECIMAL, BigDecimal.ZERO);
  }

  private static Pattern flash(Fields f, Look look) {
    return new Flash(
        look,
        phase(f),
        f.optional("onMs", DECIMAL, Flash.DEFAULT_ON_MS),
        f.optional("offMs", DECIMAL, Flash.DEFAULT_OFF_MS),
        f.whole("flashes", Flash.DEFAULT_FLASHES),
        f.optional("gapMs", DECIMAL, Flash.DEFAULT_GAP_MS));
  }

  private static Pattern indicator(Fields f, Look look) {
    return new Indicator(
        look,
        phase(f),
        f.optional("perMinute", DECIMAL, Indicator.DEFAULT_PER_MINUTE),
        f.optional("onShare", DECIMAL, Indicator.DEFAULT_ON_SHARE));
  }

  private static Pattern rotatingBeacon(Fields f, Look look) {
    BigDecimal phase = phase(f);
    BigDecimal perMinute = f.optional("perMinute", DECIMAL, RotatingBeacon.DEFAULT_PER_MINUTE);
    double beam = f.optional("beamDegrees", NUMBER, RotatingBeacon.DEFAULT_BEAM_DEGREES);
    boolean clockwise = f.optional("clockwise", FLAG, RotatingBeacon.DEFAULT_CLOCKWISE);
    List<Double> angles = new ArrayList<>();
    for (Located item : f.list("angles", RotatingBeacon.ANGLES)) {
      Optional<Double> angle = item.as(NUMBER);
      if (angle.isEmpty()) {
        f.breaks("angles");
      }
      angles.add(angle.orElse(0.0));
    }
    return new RotatingBeacon(look, phase, perMinute, beam, clockwise, angles);
  }

  private static Pattern chase(Fields f, Look look) {
    return new Chase(
        look,
        phase(f),
        f.optional("stepMs", DECIMAL, Chase.DEFAULT_STEP_MS),
        f.whole("width", Chase.DEFAULT_WIDTH),
        f.whole("tail", Chase.DEFAULT_TAIL),
        f.optional("bounce", FLAG, Chase.DEFAULT_BOUNCE));
  }

  private static Pattern fill(Fields f, Look look) {
    return new Fill(
        look,
        phase(f),
        f.optional("overMs", DECIMAL, Fill.DEFAULT_OVER_MS),
        f.optional("holdMs", DECIMAL, Fill.DEFAULT_HOLD_MS),
        f.optional("offMs", DECIMAL, Fill.DEFAULT_OFF_MS));
  }

  private static Pattern colourCycle(Fields f, Look look) {
    return new ColourCycle(
        look,
        phase(f),
        f.optional("periodMs", DECIMAL, ColourCycle.DEFAULT_PERIOD_MS),
        f.optional("spread", NUMBER, ColourCycle.DEFAULT_SPREAD),
        f.optional("saturation", NUMBER, ColourCycle.DEFAULT_SATURATION),
        f.optional("backwards", FLAG, ColourCycle.DEFAULT_BACKWARDS));
  }

  private static Pattern tint(Fields f, Look look) {
    return new Tint(
        look, f.optional("kelvin", NUMBER, Tint.DEFAULT_KELVIN), optionalNumber(f, "toKelvin"));
  }

  private static Pattern fade(Fields f, Look look) {
    return new Fade(
        look,
        ColourReader.given(f, "from"),
        ColourReader.given(f, "to"),
        f.optional("fromLevel", NUMBER, Fade.DEFAULT_FROM_LEVEL),
        f.optional("toLevel", NUMBER, Fade.DEFAULT_TO_LEVEL),
        f.optional("easing", EASING, Easing.LINEAR));
  }

  private static Pattern keyframes(Fields f, Look look) {
    BigDecimal phase = phase(f);
    boolean repeat = f.optional("repeat", FLAG, Keyframes.DEFAULT_REPEAT);
    List<Keyframe> frames = new ArrayList<>();
    BigDecimal before = BigDecimal.ZERO;
    for (Located item : f.requiredList("frames", Keyframes.FRAMES)) {
      Keyframe frame = keyframe(item.fields(), before);
      before = frame.atMs();
      frames.add(frame);
    }
    return new Keyframes(look, phase, frames, repeat);
  }

  // The stand-in of a broken keyframe comes at the time before it: so the order is not at fault.
  private static Keyframe keyframe(Fields f, BigDecimal before) {
    Keyframe frame =
        f.build(
            () ->
                new Keyframe(
                    f.required("atMs", DECIMAL, before),
                    ColourReader.given(f, "colour"),
                    optionalNumber(f, "level"),
                    f.optional("easing", EASING, Easing.LINEAR)),
            () -> new Keyframe(before, Optional.empty(), OptionalDouble.empty(), Easing.LINEAR));
    f.close();
    return frame;
  }

  private static Pattern flicker(Fields f, Look look) {
    return new Flicker(
        look,
        f.optional("seed", WHOLE, Flicker.DEFAULT_SEED),
        f.optional("depth", NUMBER, Flicker.DEFAULT_DEPTH),
        f.optional("rateHz", DECIMAL, Flicker.DEFAULT_RATE_HZ));
  }

  private static Pattern testWalk(Fields f, Look look) {
    return new TestWalk(look, phase(f), f.optional("stepMs", DECIMAL, TestWalk.DEFAULT_STEP_MS));
  }

  private static Pattern lightCharacter(Fields f, Look look) {
    return new LightCharacter(
        look,
        phase(f),
        f.optional("character", TEXT, LightCharacter.DEFAULT_CHARACTER),
        f.optional("unitMs", DECIMAL, LightCharacter.DEFAULT_UNIT_MS));
  }

  private static OptionalDouble optionalNumber(Fields f, String name) {
    return f.given(name, NUMBER).map(OptionalDouble::of).orElse(OptionalDouble.empty());
  }
}
