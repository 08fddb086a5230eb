package lampwright.engine.meter;

import java.util.ArrayList;
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
 * @param worstFrame the bytes of the frame that draws most
 * @param lights what the eye gets of each lamp
 * @param model the flash caution of all lamps together, each weighing the same
 */
public record SceneMeasure(
    Draw supply,
    List<Draw> chains,
    List<Draw> outputs,
    List<Draw> lamps,
    List<Integer> worstFrame,
    List<LightReport> lights,
    FlashCaution model) {
  public SceneMeasure {
    chains = List.copyOf(chains);
    outputs = List.copyOf(outputs);
    lamps = List.copyOf(lamps);
    worstFrame = List.copyOf(worstFrame);
    lights = List.copyOf(lights);
  }

  /** Measures a scene; this renders it. */
  public static SceneMeasure of(FrameTable table) {
    return of(table, Frames.of(table));
  }

  /**
   * Measures a scene whose frames are at hand.
   *
   * @param frames shows every frame of the table in order to the gauge that it is given
   */
  static SceneMeasure of(FrameTable table, Consumer<FrameGauge> frames) {
    CurrentGauge current = new CurrentGauge(table.layout());
    frames.accept(current);
    byte[] worst = current.worstFrame();
    List<Integer> worstFrame = new ArrayList<>();
    for (byte b : worst) {
      worstFrame.add(b & 0xFF);
    }
    LightMeter.Found light = LightMeter.measure(table, frames);
    return new SceneMeasure(
        current.supply(),
        current.chains(),
        current.outputs(),
        current.lamps(),
        worstFrame,
        light.lamps(),
        light.model());
  }
}
