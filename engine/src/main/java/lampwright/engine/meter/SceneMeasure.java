package lampwright.engine.meter;

import java.util.List;
import java.util.function.Consumer;
import lampwright.engine.render.FrameTable;

/**
 * What a scene asks of supply and eye, measured on its rendered bytes.
 *
 * @param supply what everything draws together
 * @param chains what each chain draws, its idle current included
 * @param outputs what each driver output draws
 * @param lamps what each lamp draws, the idle current of its pixels included
 * @param lights what the eye gets of each lamp
 * @param model the flash caution of all lamps together, each weighing the same
 */
public record SceneMeasure(
    Draw supply,
    List<Draw> chains,
    List<Draw> outputs,
    List<Draw> lamps,
    List<LightReport> lights,
    FlashCaution model) {
  public SceneMeasure {
    chains = List.copyOf(chains);
    outputs = List.copyOf(outputs);
    lamps = List.copyOf(lamps);
    lights = List.copyOf(lights);
  }

  /** Measures a scene; this renders it. */
  public static SceneMeasure of(FrameTable table) {
    return of(table, Frames.of(table), (frame, bytes) -> {});
  }

  /**
   * Measures a scene whose frames are at hand.
   *
   * @param frames shows every frame of the table in order to the gauge that it is given
   * @param also watches as well, so that the frames need not be shown once more for it
   */
  static SceneMeasure of(FrameTable table, Consumer<FrameGauge> frames, FrameGauge also) {
    CurrentGauge current = new CurrentGauge(table.layout());
    frames.accept(
        (frame, bytes) -> {
          current.frame(frame, bytes);
          also.frame(frame, bytes);
        });
    LightMeter.Found light = LightMeter.measure(table, frames);
    return new SceneMeasure(
        current.supply(),
        current.chains(),
        current.outputs(),
        current.lamps(),
        light.lamps(),
        light.model());
  }
}
