package lampwright.engine.render;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import lampwright.engine.light.Colour;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.light.Curve;
import lampwright.engine.light.SignalColour;
import lampwright.engine.pattern.Breathe;
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
import lampwright.engine.rig.CurrentCap;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Feel;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Blend;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Span;
import lampwright.engine.scene.Track;

/**
 * Random scenes with all that decides a byte: curves, matching, caps, feels, dither, blends, fades
 * and every pattern, with times that meet the frames and times that do not. The same seed gives the
 * same scene for ever: digests of their bytes are kept.
 */
final class RandomScenes {
  private static final String[] TYPES = {"ws2812b", "sk6812-rgbw", "sk6812-rgb"};
  private static final String[] RATES = {"20", "25", "29.97", "50", "60", "12.5", "23.976", "100"};
  private static final String[] CHARACTERS = {"Fl(2) 7s", "Oc 3.1s", "VQ", "Mo(A) 4.9s", "Q"};

  private final Random random;

  private RandomScenes(long seed) {
    this.random = new Random(seed);
  }

  /** The frames of the scene of a seed. */
  static FrameTable table(long seed) {
    return new RandomScenes(seed).table();
  }

  private FrameTable table() {
    Rig rig =
        new Rig(
            5,
            once(2) ? 5000 : 20 + random.nextInt(400),
            5,
            curve(),
            once(2) ? ColourMatching.DIRECT : ColourMatching.EMITTERS,
            once(3),
            once(2) ? 1 : random.nextInt(101) / 100.0,
            once(3) ? CurrentCap.SCENE : once(2) ? CurrentCap.FRAME : CurrentCap.OFF,
            List.of(
                Rendering.chain("a", TYPES[random.nextInt(3)], 9),
                Rendering.chain("b", TYPES[random.nextInt(3)], 5)),
            List.of(DriverOutput.of("x"), DriverOutput.of("y")),
            lamps());
    Scene scene =
        new Scene(
            "random",
            BigDecimal.valueOf(100 + random.nextInt(3000)),
            new BigDecimal(RATES[random.nextInt(RATES.length)]),
            once(2),
            once(5) ? Dither.TEMPORAL : Dither.OFF,
            some(1 + random.nextInt(5), this::track));
    return FrameTable.of(rig, scene);
  }

  private List<Lamp> lamps() {
    List<Lamp> lamps = new ArrayList<>();
    lamps.add(Lamp.ofPixels("one", new PixelRun("a", 1, 4)));
    lamps.add(Lamp.ofPixels("two", new PixelRun("a", 6, 3), new PixelRun("b", 0, 2)));
    lamps.add(Lamp.ofPixels("three", new PixelRun("b", 2, 1)));
    lamps.add(Lamp.ofOutput("four", "x"));
    lamps.add(Lamp.ofOutput("five", "y"));
    if (once(3)) {
      Feel feel = new Feel(random.nextInt(300), random.nextInt(300));
      lamps.replaceAll(lamp -> once(2) ? Lamp.FEEL.with(lamp, Optional.of(feel)) : lamp);
    }
    return lamps;
  }

  private Curve curve() {
    return switch (random.nextInt(6)) {
      case 0 -> new Curve.Srgb();
      case 1 -> new Curve.CieLightness();
      case 2 -> new Curve.Linear();
      case 3 -> new Curve.Power(1 + random.nextInt(301) / 100.0);
      default -> Curve.DEFAULT;
    };
  }

  private Track track() {
    List<String> lamps = new ArrayList<>(List.of("one", "two", "three", "four", "five"));
    java.util.Collections.shuffle(lamps, random);
    List<String> some = lamps.subList(0, 1 + random.nextInt(5));
    return new Track(some, once(2) ? Span.EACH : Span.JOINED, some(random.nextInt(4), this::cue));
  }

  private Cue cue() {
    Blend[] blends = Blend.values();
    BigDecimal start = once(2) ? BigDecimal.ZERO : ms(1500);
    BigDecimal length = once(3) ? BigDecimal.valueOf(4000) : ms(2500);
    return new Cue(
        start,
        length,
        once(2) ? BigDecimal.ZERO : ms(900),
        once(2) ? BigDecimal.ZERO : ms(900),
        blends[random.nextInt(blends.length)],
        pattern());
  }

  private Pattern pattern() {
    Look look = new Look(colour(), level());
    BigDecimal phase = once(2) ? BigDecimal.ZERO : BigDecimal.valueOf(random.nextInt(4001), 3);
    return switch (random.nextInt(14)) {
      case 0 -> new Steady(look);
      case 1 -> new Flash(look, phase, ms(200), ms(200), 1 + random.nextInt(3), ms(500));
      case 2 -> new Indicator(look, phase, rate(), BigDecimal.valueOf(random.nextInt(101), 2));
      case 3 ->
          new RotatingBeacon(
              look,
              phase,
              rate(),
              1 + random.nextInt(360),
              once(2),
              once(2) ? List.of() : List.of(0.0, 45.0, 120.5));
      case 4 -> new Chase(look, phase, ms(150), 1 + random.nextInt(3), random.nextInt(4), once(2));
      case 5 -> new Fill(look, phase, ms(300), ms(300), ms(300));
      case 6 ->
          new ColourCycle(
              look,
              phase,
              ms(2500),
              once(2) ? 0 : random.nextInt(401) / 100.0,
              once(2) ? 1 : level(),
              once(2));
      case 7 ->
          new Tint(
              look,
              1667 + random.nextInt(8000),
              once(2) ? OptionalDouble.empty() : OptionalDouble.of(1667 + random.nextInt(8000)));
      case 8 -> new Fade(look, Optional.of(colour()), Optional.empty(), level(), level(), easing());
      case 9 -> new Keyframes(look, phase, keyframes(), once(2));
      case 10 -> new Breathe(look, phase, ms(1900), level());
      case 11 -> new Flicker(look, random.nextInt(1000), level(), ms(30));
      case 12 -> new TestWalk(look, phase, ms(200));
      default ->
          new LightCharacter(
              look,
              phase,
              CHARACTERS[random.nextInt(CHARACTERS.length)],
              BigDecimal.valueOf(1 + random.nextInt(300)));
    };
  }

  private List<Keyframe> keyframes() {
    List<Keyframe> frames = new ArrayList<>();
    BigDecimal at = once(2) ? BigDecimal.ZERO : ms(100);
    for (int i = 0; i < 1 + random.nextInt(4); i++) {
      frames.add(
          new Keyframe(
              at,
              once(2) ? Optional.empty() : Optional.of(colour()),
              once(2) ? OptionalDouble.empty() : OptionalDouble.of(level()),
              easing()));
      at = at.add(once(4) ? BigDecimal.ZERO : ms(700));
    }
    return frames;
  }

  private Easing easing() {
    return switch (random.nextInt(4)) {
      case 0 -> new Easing.Hold();
      case 1 -> new Easing.Smooth();
      case 2 -> new Easing.CubicBezier(0.4, -1, 0.2, 2);
      default -> new Easing.Linear();
    };
  }

  private Colour colour() {
    return switch (random.nextInt(6)) {
      case 0 -> new Colour.Kelvin(1667 + random.nextInt(8000));
      case 1 -> new Colour.Hue(random.nextInt(361), level());
      case 2 -> new Colour.Signal(List.of(SignalColour.values()).get(random.nextInt(6)));
      case 3 -> new Colour.Drive(level(), level(), level(), level());
      default -> new Colour.Srgb(code(), code(), code());
    };
  }

  private int code() {
    return once(3) ? 0 : once(3) ? 255 : random.nextInt(256);
  }

  private double level() {
    return once(3) ? 1 : random.nextInt(101) / 100.0;
  }

  private BigDecimal rate() {
    return once(2)
        ? BigDecimal.valueOf(30 + random.nextInt(200))
        : BigDecimal.valueOf(30_000 + random.nextInt(200_000), 3);
  }

  private BigDecimal ms(int most) {
    int whole = 1 + random.nextInt(most);
    return once(2)
        ? BigDecimal.valueOf(whole)
        : BigDecimal.valueOf(whole * 1000L + random.nextInt(1000), 3);
  }

  private boolean once(int in) {
    return random.nextInt(in) == 0;
  }

  private static <T> List<T> some(int count, java.util.function.Supplier<T> each) {
    List<T> list = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      list.add(each.get());
    }
    return list;
  }
}
