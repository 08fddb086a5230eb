package lampwright.engine.meter;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Watches the light of a lamp: of each of its pixels, and of all of them together. */
final class LampGauge {
  /**
   * Pixels that never reach this share of the brightest do not represent the lamp. Ours: the share
   * above which a special warning lamp counts as on (UN Regulation 65); with 0, a pixel that glows
   * faintly all the time would decide how the lamp flashes.
   */
  private static final double LIT = 0.1;

  private final List<LampLight> lights;
  private final List<LightGauge> pixels = new ArrayList<>();
  private final LightGauge whole;
  private final double[] xyz = new double[3];
  private final int[] changed;
  private int changedCount;

  LampGauge(List<LampLight> lights, Supplier<FlashCounter> counters) {
    this.lights = lights;
    this.changed = new int[lights.size()];
    lights.forEach(light -> pixels.add(new LightGauge(counters.get())));
    // A single pixel is the whole lamp.
    whole = lights.size() == 1 ? pixels.get(0) : new LightGauge(counters.get());
  }

  /**
   * Looks at a frame.
   *
   * @param before the frame seen before; none if this is the first
   * @return whether any of its light is another
   */
  boolean look(byte @Nullable [] before, byte[] now) {
    changedCount = 0;
    for (int k = 0; k < changed.length; k++) {
      if (before == null || lights.get(k).differs(before, now)) {
        changed[changedCount++] = k;
        clear();
        lights.get(k).add(now, xyz, 0);
        pixels.get(k).shine(xyz);
      }
    }
    if (changedCount == 0) {
      return false;
    }
    if (changed.length > 1) {
      clear();
      for (LightGauge pixel : pixels) {
        pixel.add(1, xyz, 0);
      }
      whole.shine(xyz);
    }
    return true;
  }

  /** Learns from the frame looked at last. */
  void learn(int frame) {
    for (int i = 0; i < changedCount; i++) {
      pixels.get(changed[i]).learn(frame);
    }
    if (changed.length > 1) {
      whole.learn(frame);
    }
  }

  /** Judges the frame looked at last. */
  void judge(int frame) {
    for (int i = 0; i < changedCount; i++) {
      pixels.get(changed[i]).judge(frame);
    }
    if (changed.length > 1) {
      whole.judge(frame);
    }
  }

  void nextRound() {
    pixels.forEach(LightGauge::nextRound);
    if (changed.length > 1) {
      whole.nextRound();
    }
  }

  /** The sum of its pixels. */
  LightGauge whole() {
    return whole;
  }

  /** The pixel that shines brightest; of several the first. */
  LightGauge brightest() {
    LightGauge brightest = pixels.get(0);
    for (LightGauge pixel : pixels) {
      if (pixel.peakY() > brightest.peakY()) {
        brightest = pixel;
      }
    }
    return brightest;
  }

  /**
   * The pixel that represents the lamp's flash rate: the one whose light changes most often, as one
   * sees who looks at the lamp; of several the first. The sum of the pixels would not do: a ring of
   * pixels that represents a turning beam never goes dark as a whole.
   */
  int busiest() {
    double least = LIT * brightest().peakY();
    int busiest = -1;
    for (int k = 0; k < pixels.size(); k++) {
      LightGauge pixel = pixels.get(k);
      if (pixel.peakY() >= least
          && (busiest < 0 || pixel.changes() > pixels.get(busiest).changes())) {
        busiest = k;
      }
    }
    return busiest;
  }

  /** The light of one pixel. */
  LampLight light(int pixel) {
    return lights.get(pixel);
  }

  LightReport report(
      String id,
      double framesPerSecond,
      Optional<FlashTrain> train,
      Optional<DitherFlicker> dither) {
    LampCaution.OfPixel general = null;
    LampCaution.OfPixel red = null;
    FlashCaution wholeCaution = FlashCaution.NONE;
    for (int k = 0; k < pixels.size(); k++) {
      FlashCaution caution = pixels.get(k).found(framesPerSecond);
      general = worse(general, new LampCaution.OfPixel(k, caution.general()));
      red = worse(red, new LampCaution.OfPixel(k, caution.red()));
      wholeCaution = caution;
    }
    if (changed.length > 1) {
      wholeCaution = whole.found(framesPerSecond);
    }
    return new LightReport(
        id,
        train,
        new LampCaution(wholeCaution, general, red),
        brightest().peakColour(),
        brightest().peakFrame(),
        dither);
  }

  private static LampCaution.OfPixel worse(
      LampCaution.@Nullable OfPixel one, LampCaution.OfPixel other) {
    return one == null || other.worst().flashes() > one.worst().flashes() ? other : one;
  }

  private void clear() {
    java.util.Arrays.fill(xyz, 0);
  }
}
