package lampwright.engine.meter;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import lampwright.engine.render.FrameTable;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.OutputSupply;
import lampwright.engine.rig.Rig;

/**
 * Everything that is measured of a scene.
 *
 * @param table the scene
 * @param measure what its bytes ask of supply and eye
 * @param volts the voltage along every chain; none where the rig states no feed
 * @param resistors of the outputs that give a voltage
 * @param runHours how long the rig's battery lasts; none where it states none
 */
public record SceneReport(
    FrameTable table,
    SceneMeasure measure,
    List<Volts> volts,
    List<OutputResistor> resistors,
    OptionalDouble runHours) {
  /**
   * The resistor of an output that gives a voltage.
   *
   * @param resistor none if the string can't light
   */
  public record OutputResistor(String output, Optional<SeriesResistor> resistor) {}

  public SceneReport {
    volts = List.copyOf(volts);
    resistors = List.copyOf(resistors);
  }

  /** Measures a scene; this renders it. */
  public static SceneReport of(FrameTable table) {
    return of(table, SceneMeasure.of(table));
  }

  /**
   * Measures a scene whose frames are at hand.
   *
   * @param frames shows every frame of the table in order to the gauge that it is given, as often
   *     as it is called
   */
  public static SceneReport of(FrameTable table, Consumer<FrameGauge> frames) {
    return of(table, SceneMeasure.of(table, frames));
  }

  private static SceneReport of(FrameTable table, SceneMeasure measure) {
    Rig rig = table.layout().rig();
    List<Volts> volts =
        rig.feed()
            .map(feed -> FeedMeter.measure(table.layout(), feed, measure.worstFrame()))
            .orElse(List.of());
    List<OutputResistor> resistors =
        rig.outputs().stream()
            .filter(o -> o.supply() == OutputSupply.VOLTAGE && o.milliamps() > 0)
            .map(o -> new OutputResistor(o.id(), resistor(o, rig.supplyVolts())))
            .toList();
    double mean = measure.supply().meanMilliamps();
    OptionalDouble hours = rig.battery().map(b -> b.hours(mean)).orElse(OptionalDouble.empty());
    return new SceneReport(table, measure, volts, resistors, hours);
  }

  /** Energy of one run of the scene at the rig's supply voltage, J. */
  public double joules() {
    double seconds = table.frameCount() / table.framesPerSecond();
    return table.layout().rig().supplyVolts() * measure.supply().meanMilliamps() * 1e-3 * seconds;
  }

  private static Optional<SeriesResistor> resistor(DriverOutput output, double supplyVolts) {
    return SeriesResistor.of(
        supplyVolts, output.ledsInSeries(), output.forwardVolts(), output.milliamps());
  }
}
