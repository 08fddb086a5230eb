package lampwright.engine.json;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
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

/** Random valid patterns, of every kind. */
final class PatternChance {
  private static final String[] CHARACTERS = {
    "F",
    "Oc 6s",
    "Iso 4s",
    "Fl 5s",
    "Fl(2) 10s",
    "Fl(2+1) 15s",
    "LFl 10s",
    "Q",
    "Q(3) 10s",
    "VQ",
    "VQ(6)+LFl 10s",
    "UQ",
    "IQ 12s",
    "Mo(A)"
  };

  private final Chance chance;
  private final boolean matched;

  /**
   * @param matched whether colours that are mixed by chromaticity (kelvin, signal) may come
   */
  PatternChance(Chance chance, boolean matched) {
    this.chance = chance;
    this.matched = matched;
  }

  Pattern pattern() {
    Look look = new Look(chance.flag() ? Colour.WHITE : colour(), level());
    return switch (chance.whole(0, matched ? 12 : 11)) {
      case 0 -> new Steady(look);
      case 1 ->
          new Flash(
              look, phase(), ms("0.1"), ms("0"), chance.whole(1, 5), chance.decimal("0", "500"));
      case 2 ->
          new Indicator(look, phase(), chance.decimal("0.1", "600"), chance.decimal("0", "1"));
      case 3 ->
          new RotatingBeacon(
              look,
              phase(),
              chance.decimal("0.1", "600"),
              chance.number(0.001, 360),
              chance.flag(),
              chance.list(0, 4, () -> chance.number(0, 360)));
      case 4 ->
          new Chase(
              look, phase(), ms("0.1"), chance.whole(1, 5), chance.whole(0, 5), chance.flag());
      case 5 -> new Fill(look, phase(), ms("0"), ms("0"), ms("0.1"));
      case 6 ->
          new ColourCycle(
              look, phase(), ms("0.1"), chance.number(-3, 3), chance.number(0, 1), chance.flag());
      case 7 ->
          new Fade(
              look,
              chance.maybe(this::colour),
              chance.maybe(this::colour),
              level(),
              level(),
              easing());
      case 8 -> new Keyframes(look, phase(), frames(), chance.flag());
      case 9 ->
          new Flicker(
              look,
              chance.positive(Flicker.MAX_SEED),
              chance.number(0, 1),
              chance.decimal("0.01", "50"));
      case 10 -> new TestWalk(look, phase(), ms("0.1"));
      case 11 ->
          new LightCharacter(look, phase(), chance.of(CHARACTERS), chance.decimal("1", "500"));
      default -> new Tint(look, chance.number(1667, 25000), chance.maybeNumber(1667, 25000));
    };
  }

  Colour colour() {
    return switch (chance.whole(0, matched ? 4 : 2)) {
      case 0 -> srgb();
      case 1 -> new Colour.Hue(chance.number(0, 360), level());
      case 2 -> new Colour.Drive(level(), level(), level(), level());
      case 3 -> new Colour.Kelvin(chance.number(1667, 25000));
      default -> new Colour.Signal(chance.of(SignalColour.values()));
    };
  }

  Colour.Srgb srgb() {
    return new Colour.Srgb(chance.whole(0, 255), chance.whole(0, 255), chance.whole(0, 255));
  }

  private double level() {
    return chance.number(0, 1);
  }

  private BigDecimal ms(String min) {
    return chance.decimal(min, "500");
  }

  private BigDecimal phase() {
    return chance.flag() ? BigDecimal.ZERO : chance.decimal("0", "3");
  }

  private Easing easing() {
    return chance.flag()
        ? chance.of(Easing.LINEAR, new Easing.Hold(), new Easing.Smooth())
        : new Easing.CubicBezier(level(), chance.number(-10, 10), level(), chance.number(-10, 10));
  }

  private List<Keyframe> frames() {
    return chance
        .list(
            1,
            4,
            () ->
                new Keyframe(
                    chance.decimal("0", "2000"),
                    chance.maybe(this::colour),
                    chance.maybeNumber(0, 1),
                    easing()))
        .stream()
        .sorted(Comparator.comparing(Keyframe::atMs))
        .toList();
  }
}
