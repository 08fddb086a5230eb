package lampwright.engine.meter;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import lampwright.engine.render.FrameCursor;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.Lamp;

/**
 * What a scene asks of supply and eye, measured on its rendered bytes.
 *
 * @param supply what everything draws together
 * @param chains what each chain draws, its idle current included
 * @param outputs what each driver output draws
 * @param lamps what each lamp draws, the idle current of its pixels included
 * @param worstFrame the bytes of the frame that draws most
 * @param lights what the eye gets of the brightest pixel of each lamp. One who stands before a lamp
 *     whose pixels shine in turn, such as a ring that stands for a turning beam, sees each pixel by
 *     itself, and not their sum
 * @param model what the eye gets of all lamps together, each by its brightest pixel
 */
public record SceneMeasure(
    Draw supply,
    List<Draw> chains,
    List<Draw> outputs,
    List<Draw> lamps,
    List<Integer> worstFrame,
    List<LightReport> lights,
    LightReport model) {
  /** How much light is kept at a time: three numbers a frame and lamp, 8 bytes each. */
  private static final long MAX_KEPT = 12_000_000;

  public SceneMeasure {
    chains = List.copyOf(chains);
    outputs = List.copyOf(outputs);
    lamps = List.copyOf(lamps);
    worstFrame = List.copyOf(worstFrame);
    lights = List.copyOf(lights);
  }

  /**
   * Measures a scene. It is rendered once, or more often where there are so many lamps and frames
   * that their light cannot be kept at once.
   */
  public static SceneMeasure of(FrameTable table) {
    return of(table, gauge -> watch(table, gauge));
  }

  /**
   * Measures a scene whose frames are at hand.
   *
   * @param frames shows every frame of the table in order to the gauge that it is given
   */
  static SceneMeasure of(FrameTable table, Consumer<FrameGauge> frames) {
    CurrentGauge current = new CurrentGauge(table.layout());
    Map<String, List<LampLight>> light = LampLight.ofLamps(table.layout());
    List<LampGauge> gauges =
        table.layout().rig().lamps().stream().map(l -> new LampGauge(light.get(l.id()))).toList();
    frames.accept(
        (frame, bytes) -> {
          current.frame(frame, bytes);
          gauges.forEach(gauge -> gauge.frame(frame, bytes));
        });
    byte[] worst = current.worstFrame();
    List<Integer> worstFrame = new ArrayList<>();
    for (byte b : worst) {
      worstFrame.add(b & 0xFF);
    }
    double[] model = new double[3 * table.frameCount()];
    List<LightReport> lights =
        lightOfLamps(table, frames, gauges.stream().map(LampGauge::brightest).toList(), model);
    return new SceneMeasure(
        current.supply(),
        current.chains(),
        current.outputs(),
        current.lamps(),
        worstFrame,
        lights,
        LightReport.of("", model, table.framesPerSecond(), table.loops()));
  }

  // Adds the light of all of them to that of the model.
  private static List<LightReport> lightOfLamps(
      FrameTable table, Consumer<FrameGauge> frames, List<LampLight> lights, double[] model) {
    List<Lamp> lamps = table.layout().rig().lamps();
    int size = 3 * table.frameCount();
    int atOnce = (int) Math.max(1, MAX_KEPT / size);
    List<LightReport> reports = new ArrayList<>();
    for (int first = 0; first < lamps.size(); first += atOnce) {
      List<LampLight> some = lights.subList(first, Math.min(lamps.size(), first + atOnce));
      double[][] xyz = new double[some.size()][size];
      frames.accept(
          (frame, bytes) -> {
            for (int i = 0; i < xyz.length; i++) {
              some.get(i).add(bytes, xyz[i], 3 * frame);
            }
          });
      for (int i = 0; i < xyz.length; i++) {
        for (int j = 0; j < size; j++) {
          model[j] += xyz[i][j];
        }
        String id = lamps.get(first + i).id();
        reports.add(LightReport.of(id, xyz[i], table.framesPerSecond(), table.loops()));
      }
    }
    return reports;
  }

  private static void watch(FrameTable table, FrameGauge gauge) {
    FrameCursor cursor = table.cursor();
    byte[] frame = new byte[table.layout().bytes()];
    while (cursor.hasNext()) {
      int number = cursor.position();
      cursor.next(frame);
      gauge.frame(number, frame);
    }
  }
}
