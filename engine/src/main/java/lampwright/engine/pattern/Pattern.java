package lampwright.engine.pattern;

/** A rule giving colour and level for each pixel at each instant. */
public sealed interface Pattern
    permits Chase,
        ColourCycle,
        Fade,
        Fill,
        Flash,
        Flicker,
        Indicator,
        Keyframes,
        LightCharacter,
        RotatingBeacon,
        Steady,
        TestWalk,
        Tint {
  /** The word for this pattern in project files. */
  String kind();

  /** The colour and level that every pattern takes. */
  Look look();

  /** Makes this pattern ready to paint the pixels of a stage. */
  Painter painter(Stage stage);
}
