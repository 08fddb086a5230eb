package lampwright.engine.meter;

import com.google.common.collect.Lists;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
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
    CurrentDraw supply,
    List<CurrentDraw> chains,
    List<CurrentDraw> outputs,
    List<CurrentDraw> lamps,
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

  /** Where most general flashes are; of equals the first lamp. */
  public FlashSpot worstGeneral() {
    FlashSpot worst = new FlashSpot(Optional.empty(), OptionalInt.empty(), model.general());
    for (LightReport light : Lists.reverse(lights)) {
      worst = light.worstGeneral().orWorse(worst);
    }
    return worst;
  }

  /** Where most flashes to or from saturated red are; of equals the first lamp. */
  public FlashSpot worstRed() {
    FlashSpot worst = new FlashSpot(Optional.empty(), OptionalInt.empty(), model.red());
    for (LightReport light : Lists.reverse(lights)) {
      worst = light.worstRed().orWorse(worst);
    }
    return worst;
  }

  /** Whether all lamps, their pixels and the whole model pass the flash caution. */
  public boolean passesFlashCaution() {
    return model.passes() && lights.stream().allMatch(light -> light.caution().passes());
  }
}
