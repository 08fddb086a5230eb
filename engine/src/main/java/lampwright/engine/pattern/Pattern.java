package lampwright.engine.pattern;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwright.engine.field.Shape;
import lampwright.engine.light.Colour;
import lampwright.engine.light.Mixer;
import lampwright.engine.time.Ratio;

/** A rule giving colour and level for each pixel at each instant. */
public sealed interface Pattern
    permits Steady,
        Flash,
        Indicator,
        RotatingBeacon,
        Chase,
        Fill,
        ColourCycle,
        Tint,
        Fade,
        Keyframes,
        Breathe,
        Flicker,
        TestWalk,
        LightCharacter {
  /** Its fields in project files. */
  Shape<? extends Pattern> shape();

  /** The word for this pattern in project files. */
  default String kind() {
    return shape().key();
  }

  /** The colour and level that every pattern takes. */
  Look look();

  /**
   * The time after which it begins again on a row of pixels, exact; none if it does not repeat.
   *
   * @param row what it sees
   */
  default Optional<Ratio> period(List<Mixer> row) {
    return period();
  }

  /** The same where it is the same on any row of pixels; none if it is not, or does not repeat. */
  default Optional<Ratio> period() {
    return Optional.empty();
  }

  /** The share of its period at which it starts; none if it can have none. */
  default Optional<BigDecimal> startPhase() {
    return Patterns.phase(this);
  }

  /** The same pattern at another phase; itself if it can have none. */
  default Pattern withPhase(BigDecimal phase) {
    return Patterns.with(this, Patterns.PHASE, phase);
  }

  /**
   * The colours that it is given and uses, by their fields, as in {@code frames[2].colour}; {@code
   * colour} is the one of its look.
   */
  default Map<String, Colour> colours() {
    return Map.of("colour", look().colour());
  }

  /** Makes this pattern ready to paint certain pixels. */
  Painter painter(PaintContext context);
}
