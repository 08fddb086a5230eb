package lampwright.engine.meter;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.Rig;

/**
 * Everything that is measured of a scene.
 *
 * @param table the scene
 * @param measure what its bytes ask of supply and eye
 * @param feeds voltage and heat of every chain whose supply wires are stated
 * @param circuits the strings of the outputs
 * @param pack what the scene asks of the rig's battery, if it states one
 * @param figures what single meters found, each printed as it is
 */
public record SceneReport(
    FrameTable table,
    SceneMeasure measure,
    List<ChainFeed> feeds,
    List<OutputCircuit> circuits,
    Optional<PackLoad> pack,
    List<SceneFigure> figures) {
  public SceneReport {
    feeds = List.copyOf(feeds);
    circuits = List.copyOf(circuits);
    figures = List.copyOf(figures);
  }

  /** Measures a scene; this renders it. */
  public static SceneReport of(FrameTable table) {
    return of(table, Frames.of(table));
  }

  /**
   * Measures a scene whose frames are at hand.
   *
   * @param frames shows every frame of the table in order to the gauge that it is given, as often
   *     as it is called
   */
  public static SceneReport of(FrameTable table, Consumer<FrameGauge> frames) {
    Rig rig = table.layout().rig();
    FeedMeter wires = new FeedMeter(table.layout());
    List<SceneMeter> meters = SceneMeter.of(table);
    SceneMeasure measure =
        SceneMeasure.of(
            table,
            frames,
            (frame, bytes) -> {
              wires.frame(frame, bytes);
              meters.forEach(meter -> meter.frame(frame, bytes));
            });
    return new SceneReport(
        table,
        measure,
        wires.feeds(frames),
        rig.outputs().stream().map(output -> OutputCircuit.of(rig, output)).toList(),
        rig.battery().map(battery -> PackLoad.of(battery, rig, measure.supply())),
        meters.stream().map(SceneMeter::figure).toList());
  }

  /** What the supply wires of a chain do, if they are stated. */
  public Optional<ChainFeed> feedOf(String chain) {
    return feeds.stream().filter(feed -> feed.chain().equals(chain)).findFirst();
  }

  /** Energy of one run of the scene at the rig's supply voltage, J. */
  public double joules() {
    double seconds = table.frameCount() / table.framesPerSecond();
    return table.layout().rig().supplyVolts() * measure.supply().meanMilliamps() * 1e-3 * seconds;
  }
}
