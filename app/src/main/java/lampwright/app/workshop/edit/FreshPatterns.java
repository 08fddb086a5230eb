package lampwright.app.workshop.edit;

import com.google.common.collect.ImmutableMap;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import lampwright.engine.light.Colour;
import lampwright.engine.light.SignalColour;
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
import lampwright.engine.rig.LampFunction;

/** Patterns as they are before anything is set: the defaults of the project file. */
public final class FreshPatterns {
  private static final BigDecimal NONE = BigDecimal.ZERO;
  private static final long FRESH_KEYFRAME_MS = 1000;

  private static final Map<String, Function<Look, Pattern>> KINDS =
      ImmutableMap.<String, Function<Look, Pattern>>builder()
          .put(Steady.KIND, Steady::new)
          .put(
              Flash.KIND,
              look ->
                  new Flash(
                      look,
                      NONE,
                      Flash.DEFAULT_ON_MS,
                      Flash.DEFAULT_OFF_MS,
                      Flash.DEFAULT_FLASHES,
                      Flash.DEFAULT_GAP_MS))
          .put(
              Indicator.KIND,
              look ->
                  new Indicator(
                      look, NONE, Indicator.DEFAULT_PER_MINUTE, Indicator.DEFAULT_ON_SHARE))
          .put(
              RotatingBeacon.KIND,
              look ->
                  new RotatingBeacon(
                      look,
                      NONE,
                      RotatingBeacon.DEFAULT_PER_MINUTE,
                      RotatingBeacon.DEFAULT_BEAM_DEGREES,
                      RotatingBeacon.DEFAULT_CLOCKWISE,
                      List.of()))
          .put(
              Chase.KIND,
              look ->
                  new Chase(
                      look,
                      NONE,
                      Chase.DEFAULT_STEP_MS,
                      Chase.DEFAULT_WIDTH,
                      Chase.DEFAULT_TAIL,
                      Chase.DEFAULT_BOUNCE))
          .put(
              Fill.KIND,
              look ->
                  new Fill(
                      look, NONE, Fill.DEFAULT_OVER_MS, Fill.DEFAULT_HOLD_MS, Fill.DEFAULT_OFF_MS))
          .put(
              ColourCycle.KIND,
              look ->
                  new ColourCycle(
                      look,
                      NONE,
                      ColourCycle.DEFAULT_PERIOD_MS,
                      ColourCycle.DEFAULT_SPREAD,
                      ColourCycle.DEFAULT_SATURATION,
                      ColourCycle.DEFAULT_BACKWARDS))
          .put(Tint.KIND, look -> new Tint(look, Tint.DEFAULT_KELVIN, OptionalDouble.empty()))
          .put(
              Fade.KIND,
              look ->
                  new Fade(
                      look,
                      Optional.empty(),
                      Optional.empty(),
                      Fade.DEFAULT_FROM_LEVEL,
                      Fade.DEFAULT_TO_LEVEL,
                      Easing.LINEAR))
          .put(
              Keyframes.KIND,
              look ->
                  new Keyframes(look, NONE, List.of(key(0, 0), key(FRESH_KEYFRAME_MS, 1)), true))
          .put(
              Flicker.KIND,
              look ->
                  new Flicker(
                      look, Flicker.DEFAULT_SEED, Flicker.DEFAULT_DEPTH, Flicker.DEFAULT_RATE_HZ))
          .put(TestWalk.KIND, look -> new TestWalk(look, NONE, TestWalk.DEFAULT_STEP_MS))
          .put(
              LightCharacter.KIND,
              look ->
                  new LightCharacter(
                      look, NONE, LightCharacter.DEFAULT_CHARACTER, LightCharacter.DEFAULT_UNIT_MS))
          .buildOrThrow();

  private FreshPatterns() {}

  /** The kinds of pattern, in the order of the project file's description. */
  public static List<String> kinds() {
    return List.copyOf(KINDS.keySet());
  }

  /**
   * A pattern of a kind.
   *
   * @throws IllegalArgumentException if there is no such kind
   */
  public static Pattern of(String kind, Look look) {
    Function<Look, Pattern> make = KINDS.get(kind);
    if (make == null) {
      throw new IllegalArgumentException("kind: " + kind + ": needs one of " + kinds());
    }
    return make.apply(look);
  }

  /** The same kind of light by another pattern; phase is kept where both have one. */
  public static Pattern turned(Pattern from, String kind) {
    Pattern fresh = of(kind, from.look());
    return PatternPhase.phase(from)
        .filter(phase -> PatternPhase.phase(fresh).isPresent())
        .map(phase -> PatternPhase.withPhase(fresh, phase))
        .orElse(fresh);
  }

  /** The colour that lamps of a function usually have (UN Regulation 48); white for the others. */
  public static Colour usualColour(LampFunction function) {
    return switch (function) {
      case DIRECTION_INDICATOR, HAZARD, SPECIAL_WARNING, SIDE_MARKER ->
          new Colour.Signal(SignalColour.AMBER);
      case STOP, REAR_FOG -> new Colour.Signal(SignalColour.RED);
      default -> Colour.WHITE;
    };
  }

  private static Keyframe key(long atMs, double level) {
    return new Keyframe(
        BigDecimal.valueOf(atMs), Optional.empty(), OptionalDouble.of(level), Easing.LINEAR);
  }
}
