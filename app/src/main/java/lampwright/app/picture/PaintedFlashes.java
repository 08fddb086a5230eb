package lampwright.app.picture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import lampwright.engine.meter.FlashCaution;
import lampwright.engine.meter.FrameGauge;
import lampwright.engine.meter.ScreenFlashes;
import lampwright.exporters.picture.ScreenLight;
import lampwright.exporters.picture.Srgb8;

/**
 * Counts the flashes of a drawing from the colours that {@link Glow} paints: of the middle of every
 * dot, of the dots of each lamp together and of all dots together, each weighing by its area.
 * Judged as a loop, since the window plays a scene again and again.
 */
public final class PaintedFlashes implements FrameGauge {
  /** One dot: where it is, and which dots shine there. */
  private final class Spot {
    final Dots.Dot dot;
    final ScreenFlashes flashes;
    final float[] ground = new float[3];
    final int[] near;
    final float[] share;
    int painted = -1;

    Spot(Dots.Dot dot, Glow glow) {
      this.dot = dot;
      this.flashes = counter();
      int x = Math.max(0, Math.min(glow.width() - 1, (int) Math.round(dot.x())));
      int y = Math.max(0, Math.min(glow.height() - 1, (int) Math.round(dot.y())));
      glow.ground(x, y, ground);
      int[] found = new int[dots.size()];
      float[] shares = new float[dots.size()];
      int count = 0;
      for (int i = 0; i < dots.size(); i++) {
        float of = Glow.share(dots.get(i), x, y);
        if (of > 0) {
          found[count] = i;
          shares[count++] = of;
        }
      }
      near = Arrays.copyOf(found, count);
      share = Arrays.copyOf(shares, count);
    }

    int paint() {
      float r = 0;
      float g = 0;
      float b = 0;
      for (int i = 0; i < near.length; i++) {
        r += share[i] * rgb[3 * near[i]];
        g += share[i] * rgb[3 * near[i] + 1];
        b += share[i] * rgb[3 * near[i] + 2];
      }
      return Glow.over(ground, 0, r, g, b);
    }
  }

  /** Several dots, mixed by their areas. */
  private static final class Group {
    final ScreenFlashes flashes;
    final double[] sum = new double[3];
    double area;

    Group(ScreenFlashes flashes) {
      this.flashes = flashes;
    }

    void add(Dots.Dot dot, int argb) {
      double weight = dot.radius() * dot.radius();
      sum[0] += weight * Srgb8.linear(argb >> 16 & 0xFF);
      sum[1] += weight * Srgb8.linear(argb >> 8 & 0xFF);
      sum[2] += weight * Srgb8.linear(argb & 0xFF);
      area += weight;
    }

    void take(int frame) {
      if (area > 0) {
        flashes.frame(frame, sum[0] / area, sum[1] / area, sum[2] / area);
      }
      Arrays.fill(sum, 0);
      area = 0;
    }
  }

  private final ScreenLight screen;
  private final List<Dots.Dot> dots;
  private final float exposure;
  private final double framesPerSecond;
  private final int frames;
  private final float[] rgb;
  private final List<Spot> spots = new ArrayList<>();
  private final List<Group> lamps = new ArrayList<>();
  private final Group all;
  private byte[] before = {};

  /**
   * The flashes of a drawing, before its first frame.
   *
   * @param glow what the dots are painted on
   * @param exposure by which all light is multiplied
   * @param frames of the scene
   */
  public PaintedFlashes(
      ScreenLight screen,
      Glow glow,
      List<Dots.Dot> dots,
      float exposure,
      double framesPerSecond,
      int frames) {
    this.screen = screen;
    this.dots = dots;
    this.exposure = exposure;
    this.framesPerSecond = framesPerSecond;
    this.frames = frames;
    this.rgb = new float[3 * dots.size()];
    this.all = new Group(counter());
    dots.forEach(dot -> spots.add(new Spot(dot, glow)));
    screen.lamps().forEach(lamp -> lamps.add(new Group(counter())));
  }

  private ScreenFlashes counter() {
    return new ScreenFlashes(framesPerSecond, frames, true);
  }

  @Override
  public void frame(int frame, byte[] bytes) {
    if (Arrays.equals(bytes, before)) {
      return;
    }
    before = bytes.clone();
    Arrays.fill(rgb, 0);
    for (int i = 0; i < dots.size(); i++) {
      screen.addPixel(bytes, dots.get(i).lamp(), dots.get(i).pixel(), rgb, 3 * i);
      Glow.limit(rgb, 3 * i, exposure, Float.MAX_VALUE);
    }
    for (Spot spot : spots) {
      int argb = spot.paint();
      if (argb != spot.painted) {
        spot.painted = argb;
        spot.flashes.frame(
            frame,
            Srgb8.linear(argb >> 16 & 0xFF),
            Srgb8.linear(argb >> 8 & 0xFF),
            Srgb8.linear(argb & 0xFF));
      }
      lamps.get(spot.dot.lamp()).add(spot.dot, argb);
      all.add(spot.dot, argb);
    }
    lamps.forEach(lamp -> lamp.take(frame));
    all.take(frame);
  }

  /**
   * Judges a scene that is shown again and again; to be asked for once.
   *
   * @param frames gives all frames of the scene to what it is given, in order; called twice
   * @return what flashes most
   */
  public FlashCaution ofLoop(Consumer<FrameGauge> frames) {
    frames.accept(this);
    counters().forEach(ScreenFlashes::nextRound);
    frames.accept(this);
    return worst();
  }

  private FlashCaution worst() {
    FlashCaution worst = FlashCaution.NONE;
    for (ScreenFlashes counter : counters()) {
      worst = worst.orWorse(counter.found());
    }
    return worst;
  }

  private List<ScreenFlashes> counters() {
    List<ScreenFlashes> counters = new ArrayList<>();
    spots.forEach(spot -> counters.add(spot.flashes));
    lamps.forEach(lamp -> counters.add(lamp.flashes));
    counters.add(all.flashes);
    return counters;
  }
}
