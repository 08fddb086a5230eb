package lampwright.engine.meter;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.Lamp;
import org.jspecify.annotations.Nullable;

/**
 * Measures what the eye gets of a scene, in a few passes over its frames: the greatest luminance of
 * every pixel, output and lamp, then flashes, then flash rates. What is kept does not grow with
 * pixels times frames.
 *
 * <p>Dithering makes light of few frames that is no light of the scene. Where a scene is dithered,
 * the light that is meant is measured, which is the scene without dithering, and what dithering
 * does is told apart.
 */
final class LightMeter {
  /**
   * What was found.
   *
   * @param lamps of each lamp, in rig order
   * @param model the flash caution of all lamps together. Each weighs the same: the light is the
   *     mean of theirs, each over its own greatest luminance
   */
  record Found(List<LightReport> lamps, FlashCaution model) {}

  /** How many bytes of signals are kept at a time, one per frame and lamp. */
  private static final long MAX_SIGNALS = 48_000_000;

  private final FrameTable table;
  private final List<LampGauge> gauges = new ArrayList<>();
  private final List<List<LampLight>> lights = new ArrayList<>();
  private byte @Nullable [] before;
  private boolean changed;

  private LightMeter(FrameTable table) {
    this.table = table;
    Map<String, List<LampLight>> found = LampLight.ofLamps(table.layout());
    int second = SecondWindow.frames(table.framesPerSecond());
    for (Lamp lamp : table.layout().rig().lamps()) {
      List<LampLight> pixels = found.getOrDefault(lamp.id(), List.of());
      lights.add(pixels);
      gauges.add(
          new LampGauge(pixels, () -> new FlashCounter(second, table.frameCount(), table.loops())));
    }
  }

  /**
   * Measures a scene.
   *
   * @param frames shows every frame of the table in order to the gauge that it is given
   */
  static Found measure(FrameTable table, Consumer<FrameGauge> frames) {
    if (!table.isDithered()) {
      LightMeter meter = new LightMeter(table);
      return meter.measure(frames, lamp -> Optional.empty());
    }
    FrameTable meant = table.withoutDither();
    LightMeter meter = new LightMeter(meant);
    DitherGauge dither = new DitherGauge(meant, meter.lights);
    frames.accept(dither);
    return meter.measure(Frames.of(meant), dither::worst);
  }

  private Found measure(
      Consumer<FrameGauge> frames, java.util.function.IntFunction<Optional<DitherFlicker>> dither) {
    frames.accept(
        (frame, bytes) -> {
          for (LampGauge lamp : look(bytes)) {
            lamp.learn(frame);
          }
        });
    before = null;
    double[] model = new double[3 * table.frameCount()];
    frames.accept(
        (frame, bytes) -> {
          judge(frame, bytes);
          if (changed) {
            gauges.forEach(lamp -> addTo(model, frame, lamp.whole()));
          } else {
            System.arraycopy(model, 3 * frame - 3, model, 3 * frame, 3);
          }
        });
    List<Optional<FlashTrain>> trains = trains(frames);
    List<LightReport> reports = new ArrayList<>();
    for (int i = 0; i < gauges.size(); i++) {
      String id = table.layout().rig().lamps().get(i).id();
      reports.add(
          gauges.get(i).report(id, table.framesPerSecond(), trains.get(i), dither.apply(i)));
    }
    return new Found(reports, FlashCaution.measure(model, table.framesPerSecond(), table.loops()));
  }

  // The lamps whose light is another than in the frame before.
  private List<LampGauge> look(byte[] bytes) {
    changed = before == null || !Arrays.equals(before, bytes);
    if (!changed) {
      return List.of();
    }
    List<LampGauge> others = new ArrayList<>();
    for (LampGauge lamp : gauges) {
      if (lamp.look(before, bytes)) {
        others.add(lamp);
      }
    }
    before = bytes.clone();
    return others;
  }

  private void judge(int frame, byte[] bytes) {
    for (LampGauge lamp : look(bytes)) {
      lamp.judge(frame);
    }
  }

  private static void addTo(double[] model, int frame, LightGauge lamp) {
    if (lamp.peakY() > 0) {
      lamp.add(1 / lamp.peakY(), model, 3 * frame);
    }
  }

  // Of a loop this is the second round, which the flash caution counts.
  private List<Optional<FlashTrain>> trains(Consumer<FrameGauge> frames) {
    int atOnce = (int) Math.max(1, MAX_SIGNALS / table.frameCount());
    List<LampLight> busiest = gauges.stream().map(gauge -> gauge.light(gauge.busiest())).toList();
    boolean again = table.loops();
    if (again) {
      gauges.forEach(LampGauge::nextRound);
    }
    List<Optional<FlashTrain>> trains = new ArrayList<>();
    for (int first = 0; first < gauges.size() || again; first += atOnce) {
      List<LampLight> some =
          busiest.subList(first, (int) Math.min(gauges.size(), (long) first + atOnce));
      byte[][] signal = new byte[some.size()][table.frameCount()];
      boolean judging = again;
      frames.accept(
          (frame, bytes) -> {
            if (judging) {
              judge(frame, bytes);
            }
            for (int i = 0; i < signal.length; i++) {
              signal[i][frame] = (byte) some.get(i).mostDuty(bytes);
            }
          });
      again = false;
      for (byte[] of : signal) {
        trains.add(train(of));
      }
    }
    return trains;
  }

  private Optional<FlashTrain> train(byte[] signal) {
    double[] light = new double[signal.length];
    for (int i = 0; i < light.length; i++) {
      light[i] = signal[i] & 0xFF;
    }
    return FlashTrain.measure(light, table.framesPerSecond(), table.loops());
  }
}
