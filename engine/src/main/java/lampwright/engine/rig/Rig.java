package lampwright.engine.rig;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwright.engine.check.Checks;
import lampwright.engine.check.ListLimit;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.light.Curve;

/**
 * What is fitted to the model.
 *
 * @param supplyVolts 1 to 60 V
 * @param supplyLimitMilliamps what the supply can give, 1 to 1,000,000 mA
 * @param dataVolts the high level of the data line, 1 to 12 V; none if not stated: then that of the
 *     controller
 * @param curve the map from code values and levels to light
 * @param colourMatching how sRGB and hue colours become drives
 * @param whiteFromRgb whether direct colour moves the least of three drives to the white emitter
 * @param brightnessCap every drive is multiplied by this, 0 to 1
 * @param currentCap how the supply's limit bounds the light
 * @param feed the supply wires of each chain that states none of its own, if stated
 * @param battery what the supply runs from, if stated
 * @param controller what plays the exported data, if stated
 * @param chains at most 64
 * @param outputs at most 256
 * @param lamps at most 4,096, each pixel and output in at most one of them
 */
public record Rig(
    double supplyVolts,
    double supplyLimitMilliamps,
    OptionalDouble dataVolts,
    Curve curve,
    ColourMatching colourMatching,
    boolean whiteFromRgb,
    double brightnessCap,
    CurrentCap currentCap,
    Optional<Feed> feed,
    Optional<Battery> battery,
    Optional<Controller> controller,
    List<Chain> chains,
    List<DriverOutput> outputs,
    List<Lamp> lamps) {
  public static final ListLimit CHAINS = new ListLimit(0, 64, "chains");
  public static final ListLimit OUTPUTS = new ListLimit(0, 256, "outputs");
  public static final ListLimit LAMPS = new ListLimit(0, 4096, "lamps");
  public static final double DEFAULT_SUPPLY_VOLTS = 5;
  public static final double DEFAULT_SUPPLY_LIMIT_MILLIAMPS = 2000;

  /** The level of a data line of which neither level nor controller is stated. */
  public static final double DEFAULT_DATA_VOLTS = 5;

  public static final ColourMatching DEFAULT_COLOUR_MATCHING = ColourMatching.DIRECT;
  public static final boolean DEFAULT_WHITE_FROM_RGB = false;
  public static final double DEFAULT_BRIGHTNESS_CAP = 1;
  public static final CurrentCap DEFAULT_CURRENT_CAP = CurrentCap.OFF;

  public Rig {
    chains = List.copyOf(chains);
    outputs = List.copyOf(outputs);
    lamps = List.copyOf(lamps);
    Checks.of("rig")
        .range("supplyVolts", supplyVolts, 1, 60)
        .range("supplyLimitMilliamps", supplyLimitMilliamps, 1, 1_000_000)
        .range("dataVolts", dataVolts.orElse(DEFAULT_DATA_VOLTS), 1, 12)
        .range("brightnessCap", brightnessCap, 0, 1)
        .size("chains", chains, CHAINS)
        .size("outputs", outputs, OUTPUTS)
        .size("lamps", lamps, LAMPS)
        .that(
            !chains.isEmpty() || !outputs.isEmpty(),
            "chains",
            "none",
            "needs at least one chain or output")
        .addAll(RigFaults.find(chains, outputs, lamps))
        .done();
  }

  /** A rig of which the data level is stated, but no feed, battery or controller. */
  public Rig(
      double supplyVolts,
      double supplyLimitMilliamps,
      double dataVolts,
      Curve curve,
      ColourMatching colourMatching,
      boolean whiteFromRgb,
      double brightnessCap,
      CurrentCap currentCap,
      List<Chain> chains,
      List<DriverOutput> outputs,
      List<Lamp> lamps) {
    this(
        supplyVolts,
        supplyLimitMilliamps,
        OptionalDouble.of(dataVolts),
        curve,
        colourMatching,
        whiteFromRgb,
        brightnessCap,
        currentCap,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        chains,
        outputs,
        lamps);
  }

  /** A rig with the default supply, curve and caps. */
  public static Rig of(List<Chain> chains, List<DriverOutput> outputs, List<Lamp> lamps) {
    return new Rig(
        DEFAULT_SUPPLY_VOLTS,
        DEFAULT_SUPPLY_LIMIT_MILLIAMPS,
        OptionalDouble.empty(),
        Curve.DEFAULT,
        DEFAULT_COLOUR_MATCHING,
        DEFAULT_WHITE_FROM_RGB,
        DEFAULT_BRIGHTNESS_CAP,
        DEFAULT_CURRENT_CAP,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        chains,
        outputs,
        lamps);
  }

  public Rig withChains(List<Chain> newChains) {
    return with(newChains, outputs, lamps);
  }

  public Rig withOutputs(List<DriverOutput> newOutputs) {
    return with(chains, newOutputs, lamps);
  }

  public Rig withLamps(List<Lamp> newLamps) {
    return with(chains, outputs, newLamps);
  }

  /** The same supply, caps and controller with other parts. */
  public Rig with(List<Chain> newChains, List<DriverOutput> newOutputs, List<Lamp> newLamps) {
    return new Rig(
        supplyVolts,
        supplyLimitMilliamps,
        dataVolts,
        curve,
        colourMatching,
        whiteFromRgb,
        brightnessCap,
        currentCap,
        feed,
        battery,
        controller,
        newChains,
        newOutputs,
        newLamps);
  }

  /** The high level of the data line as it is: stated, or the controller's own, V. */
  public double dataLevelVolts() {
    return dataVolts.orElse(
        controller.map(c -> c.pinVolts(supplyVolts)).orElse(DEFAULT_DATA_VOLTS));
  }

  /** The high level of the controller's pins, V; the data line's where no controller is stated. */
  public double pinVolts() {
    return controller.map(c -> c.pinVolts(supplyVolts)).orElseGet(this::dataLevelVolts);
  }

  /** The supply wires of a chain: its own, else those of all chains; none if not stated. */
  public Optional<Feed> feedOf(Chain chain) {
    return chain.feed().or(() -> feed);
  }

  /** The lamp with this id. */
  public Optional<Lamp> lamp(String id) {
    return lamps.stream().filter(l -> l.id().equals(id)).findFirst();
  }
}
