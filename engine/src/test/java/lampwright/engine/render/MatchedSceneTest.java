package lampwright.engine.render;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.light.Colour;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.light.Curve;
import lampwright.engine.light.Emitter;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.light.FittedEmitter;
import lampwright.engine.light.Mixer;
import lampwright.engine.light.Mixers;
import lampwright.engine.light.SignalColour;
import lampwright.engine.pattern.Chase;
import lampwright.engine.pattern.ColourCycle;
import lampwright.engine.pattern.Easing;
import lampwright.engine.pattern.Fade;
import lampwright.engine.pattern.Fill;
import lampwright.engine.pattern.Flash;
import lampwright.engine.pattern.Flicker;
import lampwright.engine.pattern.Keyframe;
import lampwright.engine.pattern.Keyframes;
import lampwright.engine.pattern.Look;
import lampwright.engine.pattern.PaintContext;
import lampwright.engine.pattern.Pattern;
import lampwright.engine.pattern.RotatingBeacon;
import lampwright.engine.pattern.Steady;
import lampwright.engine.pattern.Tint;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.CurrentCap;
import lampwright.engine.rig.EmitterOrder;
import lampwright.engine.rig.LineTiming;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Blend;
import lampwright.engine.scene.Cue;
import lampwright.engine.scene.Dither;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;
import lampwright.engine.time.Ratio;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Scenes at random in matched colours, byte by byte against a second reading of the rules: {@link
 * SlowMatching} for drives, the formulas of docs/formats.md for fades, tints and blends. What share
 * of its light a pattern gives a pixel is read off a driver output, which has no colour to match.
 */
class MatchedSceneTest {
  private static final int PIXELS = 3;
  private static final int LENGTH_MS = 2000;
  private static final int FRAMES = 25;
  private static final double FRAME_MS = (double) LENGTH_MS / FRAMES;

  /** What one pixel of a row should do at an instant. */
  @FunctionalInterface
  private interface Rule {
    double[] drives(SlowMatching pixel, double tMs, int k);
  }

  private record Made(Pattern pattern, Rule rule) {}

  @FunctionalInterface
  private interface InColour {
    Pattern of(Colour colour);
  }

  private Random random = new Random(0);
  private Curve curve = new Curve.Linear();

  @ParameterizedTest
  @ValueSource(ints = {3, 4})
  void bytesAreThoseOfASecondReading(int emitters) {
    for (int seed = 0; seed < 120; seed++) {
      random = new Random(1000L * emitters + seed);
      curve = random.nextBoolean() ? new Curve.Power(2.2) : new Curve.CieLightness();
      scene(emitters, "seed " + seed);
    }
  }

  private void scene(int emitters, String name) {
    PixelType type = type(emitters);
    Rig rig =
        new Rig(
            5,
            2000,
            5,
            curve,
            ColourMatching.EMITTERS,
            false,
            1,
            CurrentCap.OFF,
            List.of(new Chain("c", type, PIXELS)),
            List.of(),
            List.of(Rendering.lamp("l", "c", 0, PIXELS)));
    List<Made> made = new ArrayList<>();
    List<Cue> cues = new ArrayList<>();
    List<Track> tracks = new ArrayList<>();
    for (int t = 0; t < 2; t++) {
      Made one = made();
      Blend blend = t == 0 ? Blend.COVER : any(Blend.values());
      Cue cue =
          new Cue(
              BigDecimal.ZERO,
              BigDecimal.valueOf(LENGTH_MS),
              BigDecimal.valueOf(100L * random.nextInt(6)),
              BigDecimal.valueOf(100L * random.nextInt(6)),
              blend,
              one.pattern());
      made.add(one);
      cues.add(cue);
      tracks.add(Track.of(List.of("l"), cue));
    }
    Scene scene =
        new Scene(
            "s", BigDecimal.valueOf(LENGTH_MS), new BigDecimal("12.5"), true, Dither.OFF, tracks);
    compare(FrameTable.of(rig, scene), type, made, cues, name);
  }

  private void compare(
      FrameTable table, PixelType type, List<Made> made, List<Cue> cues, String name) {
    SlowMatching pixel = new SlowMatching(type.emitters());
    byte[] frame = new byte[table.layout().bytes()];
    FrameCursor cursor = table.cursor();
    for (int f = 0; f < FRAMES; f++) {
      cursor.next(frame);
      double tMs = f * FRAME_MS;
      for (int k = 0; k < PIXELS; k++) {
        double[] light = new double[type.order().size()];
        for (int t = 0; t < made.size(); t++) {
          double a = fade(cues.get(t), tMs);
          double[] over = made.get(t).rule().drives(pixel, tMs, k);
          for (int i = 0; i < light.length; i++) {
            light[i] = blend(cues.get(t).blend(), light[i], over[i], a);
          }
        }
        for (int i = 0; i < light.length; i++) {
          String what = name + ", frame " + f + ", pixel " + k + ", emitter " + i + ": " + made;
          assertByte(frame[k * light.length + i] & 0xFF, 255 * light[i] + 0.5, what);
        }
      }
    }
    assertThat(cursor.hasNext()).isFalse();
  }

  // Where a byte turns within rounding of this very number, either is right.
  private static void assertByte(int is, double due, String what) {
    assertThat(is).as(what).isBetween((int) Math.floor(due - 1e-6), (int) Math.floor(due + 1e-6));
  }

  private double fade(Cue cue, double tMs) {
    double v = 1;
    double in = cue.fadeInMs().doubleValue();
    double out = cue.fadeOutMs().doubleValue();
    if (in > 0) {
      v = Math.min(v, tMs / in);
    }
    if (out > 0) {
      v = Math.min(v, (LENGTH_MS - tMs) / out);
    }
    return curve.light(v);
  }

  private static double blend(Blend blend, double under, double over, double a) {
    return switch (blend) {
      case COVER -> under * (1 - a) + over * a;
      case ADD -> Math.min(1, under + over * a);
      case BRIGHTER -> Math.max(under, over * a);
      case SCALE -> under * (1 - a + a * over);
    };
  }

  private Made made() {
    BigDecimal none = BigDecimal.ZERO;
    double level = random.nextInt(4) == 0 ? 1 : random.nextDouble();
    long seed = random.nextInt(1000);
    return switch (random.nextInt(10)) {
      case 0 -> inColour(c -> new Steady(new Look(c, level)));
      case 1 ->
          inColour(c -> new RotatingBeacon(look(c, level), none, ms(97), 130, true, List.of()));
      case 2 -> inColour(c -> new Chase(look(c, level), none, ms(170), 1, 2, seed % 2 == 0));
      case 3 -> inColour(c -> new Flicker(look(c, level), seed, 0.8, ms(7)));
      case 4 -> inColour(c -> new Fill(look(c, level), none, ms(300), ms(200), ms(400)));
      case 5 -> inColour(c -> new Flash(look(c, level), none, ms(100), ms(150), 2, ms(90)));
      case 6 -> fade();
      case 7 -> keyframes();
      case 8 -> tint(level);
      default -> cycle(level);
    };
  }

  private <T> T any(T[] values) {
    return values[random.nextInt(values.length)];
  }

  private static Look look(Colour colour, double level) {
    return new Look(colour, level);
  }

  private static BigDecimal ms(long ms) {
    return BigDecimal.valueOf(ms);
  }

  private Made inColour(InColour pattern) {
    Colour colour = colour();
    List<Mixer> outputs = Collections.nCopies(PIXELS, Mixers.forOutput(curve));
    // A signal colour is full on at an output, so that its drive is the share of the light.
    var shares =
        pattern
            .of(new Colour.Signal(SignalColour.WHITE))
            .painter(new PaintContext(outputs, curve, Ratio.of(LENGTH_MS)));
    double[] share = new double[PIXELS * Mixer.SLOTS];
    return new Made(
        pattern.of(colour),
        (pixel, tMs, k) -> {
          shares.paint(Ratio.of(BigDecimal.valueOf(tMs)), share);
          return pixel.drives(colour, share[k * Mixer.SLOTS]);
        });
  }

  private Made fade() {
    Colour from = colour();
    Colour to = colour();
    double fromLevel = random.nextDouble();
    double toLevel = random.nextDouble();
    Easing easing = easing();
    return new Made(
        new Fade(Look.DEFAULT, Optional.of(from), Optional.of(to), fromLevel, toLevel, easing),
        (pixel, tMs, k) ->
            between(pixel, from, to, fromLevel, toLevel, easing.ease(tMs / LENGTH_MS)));
  }

  private Made keyframes() {
    Colour[] colours = {colour(), colour(), colour()};
    double[] levels = {random.nextDouble(), random.nextDouble(), random.nextDouble()};
    Easing[] easings = {easing(), easing(), easing()};
    long[] times = {0, 300 + random.nextInt(300), 900 + random.nextInt(300)};
    List<Keyframe> frames = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      frames.add(
          new Keyframe(
              ms(times[i]), Optional.of(colours[i]), OptionalDouble.of(levels[i]), easings[i]));
    }
    return new Made(
        new Keyframes(Look.DEFAULT, BigDecimal.ZERO, frames, true),
        (pixel, tMs, k) -> {
          double place = tMs % times[2];
          int i = place < times[1] ? 0 : 1;
          double u = easings[i].ease((place - times[i]) / (times[i + 1] - times[i]));
          return between(pixel, colours[i], colours[i + 1], levels[i], levels[i + 1], u);
        });
  }

  private double[] between(
      SlowMatching pixel, Colour from, Colour to, double fromLevel, double toLevel, double u) {
    double light = curve.light((1 - u) * fromLevel + u * toLevel);
    double[] start = pixel.drives(from, light);
    double[] end = pixel.drives(to, light);
    double[] drives = new double[start.length];
    for (int i = 0; i < drives.length; i++) {
      drives[i] = (1 - u) * start[i] + u * end[i];
    }
    return drives;
  }

  private Made tint(double level) {
    double from = 1700 + 10_000 * random.nextDouble();
    double to = 1700 + 10_000 * random.nextDouble();
    double light = curve.light(level);
    return new Made(
        new Tint(new Look(Colour.WHITE, level), from, OptionalDouble.of(to)),
        (pixel, tMs, k) -> {
          double mired = 1e6 / from + (1e6 / to - 1e6 / from) * tMs / LENGTH_MS;
          return pixel.tint(from, to, 1e6 / mired, light);
        });
  }

  private Made cycle(double level) {
    double saturation = random.nextDouble();
    double spread = random.nextInt(2);
    double light = curve.light(level);
    return new Made(
        new ColourCycle(
            new Look(Colour.WHITE, level), BigDecimal.ZERO, ms(1300), spread, saturation, false),
        (pixel, tMs, k) -> {
          double turns = (tMs / 1300 + spread * k / PIXELS) % 1;
          return pixel.drives(new Colour.Hue(360 * turns, saturation), light);
        });
  }

  private Easing easing() {
    return switch (random.nextInt(3)) {
      case 0 -> Easing.LINEAR;
      case 1 -> new Easing.Hold();
      default -> new Easing.Smooth();
    };
  }

  private Colour colour() {
    return switch (random.nextInt(6)) {
      case 0 -> new Colour.Srgb(random.nextInt(256), random.nextInt(256), random.nextInt(256));
      case 1 -> new Colour.Hue(random.nextInt(361), random.nextDouble());
      case 2 -> new Colour.Signal(any(SignalColour.values()));
      case 3 ->
          new Colour.Drive(
              random.nextDouble(), random.nextDouble(), random.nextDouble(), random.nextDouble());
      default -> new Colour.Kelvin(1700 + 10_000 * random.nextDouble());
    };
  }

  // About a usual part, its currents any, its white now and then dearer than what it stands for.
  private PixelType type(int count) {
    double[][] usual = {
      {0.700, 0.299, 405}, {0.170, 0.700, 690}, {0.136, 0.050, 190}, {0.3451, 0.3516, 2000}
    };
    Map<EmitterKind, FittedEmitter> emitters = new EnumMap<>(EmitterKind.class);
    for (EmitterKind kind : EmitterKind.values()) {
      if (kind.slot() < count) {
        double[] at = usual[kind.slot()];
        double y = Math.max(0.02, at[1] + 0.08 * (random.nextDouble() - 0.5));
        double x = Math.min(0.99 - y, at[0] + 0.1 * (random.nextDouble() - 0.5));
        boolean dear = kind == EmitterKind.WHITE && random.nextInt(3) == 0;
        emitters.put(
            kind,
            new FittedEmitter(
                new Emitter(new Chromaticity(x, y), at[2] * (0.3 + 2 * random.nextDouble())),
                dear ? 200 : 5 + 25 * random.nextDouble()));
      }
    }
    return new PixelType(
        "any",
        EmitterOrder.parse(count == 3 ? "RGB" : "RGBW").orElseThrow(),
        1,
        5,
        emitters,
        LineTiming.DEFAULT);
  }
}
