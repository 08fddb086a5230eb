package lampwright.engine.rig;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import lampwright.engine.check.ListLimit;
import lampwright.engine.field.ChoiceType;
import lampwright.engine.field.Field;
import lampwright.engine.field.FlagType;
import lampwright.engine.field.Group;
import lampwright.engine.field.ListType;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.RecordType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;
import lampwright.engine.light.ColourMatching;
import lampwright.engine.light.Curve;
import lampwright.engine.light.Curves;

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
 * @param currentCap how the supply's limit bounds the light of a scene
 * @param ceiling whether a frame of situations that would draw more than the supply's limit is
 *     scaled as it is sent
 * @param feed the supply wires of each chain that states none of its own, if stated
 * @param battery what the supply runs from, if stated
 * @param controller what plays the exported data, if stated
 * @param chains at most 64
 * @param outputs at most 256
 * @param lamps at most 4,096, each pixel and output in at most one of them
 * @param inputs what situations look at, at most 32
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
    boolean ceiling,
    Optional<Feed> feed,
    Optional<Battery> battery,
    Optional<Controller> controller,
    List<Chain> chains,
    List<DriverOutput> outputs,
    List<Lamp> lamps,
    List<Input> inputs) {
  public static final double DEFAULT_SUPPLY_VOLTS = 5;
  public static final double DEFAULT_SUPPLY_LIMIT_MILLIAMPS = 2000;

  /** The level of a data line of which neither level nor controller is stated. */
  public static final double DEFAULT_DATA_VOLTS = 5;

  public static final ColourMatching DEFAULT_COLOUR_MATCHING = ColourMatching.DIRECT;
  public static final boolean DEFAULT_WHITE_FROM_RGB = false;
  public static final double DEFAULT_BRIGHTNESS_CAP = 1;
  public static final Field<Rig, Double> SUPPLY_VOLTS =
      Field.usual(
              "supplyVolts",
              new NumberType(Unit.VOLTS, 1, 60),
              Rig::supplyVolts,
              DEFAULT_SUPPLY_VOLTS)
          .alwaysWritten();
  public static final Field<Rig, Double> SUPPLY_LIMIT_MILLIAMPS =
      Field.usual(
              "supplyLimitMilliamps",
              new NumberType(Unit.MILLIAMPS, 1, 1_000_000),
              Rig::supplyLimitMilliamps,
              DEFAULT_SUPPLY_LIMIT_MILLIAMPS)
          .alwaysWritten();
  public static final Field<Rig, OptionalDouble> DATA_VOLTS =
      Field.optional(
          "dataVolts", OptionalType.ofNumber(new NumberType(Unit.VOLTS, 1, 12)), Rig::dataVolts);
  public static final Field<Rig, Curve> CURVE =
      Field.usual("curve", Curves.ANY, Rig::curve, Curve.DEFAULT).alwaysWritten();
  public static final Field<Rig, ColourMatching> COLOUR_MATCHING =
      Field.usual(
              "colourMatching",
              ChoiceType.of("colourMatching", ColourMatching.class, ColourMatching::key),
              Rig::colourMatching,
              DEFAULT_COLOUR_MATCHING)
          .alwaysWritten();
  public static final Field<Rig, Boolean> WHITE_FROM_RGB =
      Field.usual("whiteFromRgb", new FlagType(), Rig::whiteFromRgb, DEFAULT_WHITE_FROM_RGB)
          .alwaysWritten();
  public static final Field<Rig, Double> BRIGHTNESS_CAP =
      Field.usual("brightnessCap", NumberType.SHARE, Rig::brightnessCap, DEFAULT_BRIGHTNESS_CAP)
          .alwaysWritten();
  public static final Field<Rig, CurrentCap> CURRENT_CAP =
      Field.usual(
              "currentCap",
              ChoiceType.of("currentCap", CurrentCap.class, CurrentCap::key),
              Rig::currentCap,
              CurrentCap.OFF)
          .alwaysWritten();
  public static final Field<Rig, Boolean> CEILING =
      Field.usual("ceiling", new FlagType(), Rig::ceiling, false);
  public static final Field<Rig, Optional<Feed>> FEED =
      Field.optional("feed", OptionalType.of(RecordType.of(Feed.SHAPE)), Rig::feed);
  public static final Field<Rig, Optional<Battery>> BATTERY =
      Field.optional("battery", OptionalType.of(RecordType.of(Battery.SHAPE)), Rig::battery);
  public static final Group<Rig, Optional<Controller>> CONTROLLER =
      Group.of("controller", Rig::controller, Controller.SHAPE, Optional.empty());
  public static final Field<Rig, List<Chain>> CHAINS =
      Field.list(
          "chains",
          new ListType<>(RecordType.of(Chain.SHAPE), new ListLimit(0, 64, "chains")),
          Rig::chains);
  public static final Field<Rig, List<DriverOutput>> OUTPUTS =
      Field.list(
          "outputs",
          new ListType<>(RecordType.of(DriverOutput.SHAPE), new ListLimit(0, 256, "outputs")),
          Rig::outputs);
  public static final Field<Rig, List<Lamp>> LAMPS =
      Field.list(
          "lamps",
          new ListType<>(RecordType.of(Lamp.SHAPE), new ListLimit(0, 4096, "lamps")),
          Rig::lamps);
  public static final Field<Rig, List<Input>> INPUTS =
      Field.list(
          "inputs",
          new ListType<>(RecordType.of(Input.SHAPE), new ListLimit(0, 32, "inputs")),
          Rig::inputs);

  public static final Shape<Rig> SHAPE =
      Shape.of(
          "rig",
          Rig.class,
          SUPPLY_VOLTS,
          SUPPLY_LIMIT_MILLIAMPS,
          DATA_VOLTS,
          CURVE,
          COLOUR_MATCHING,
          WHITE_FROM_RGB,
          BRIGHTNESS_CAP,
          CURRENT_CAP,
          CEILING,
          FEED,
          BATTERY,
          CONTROLLER,
          CHAINS,
          OUTPUTS,
          LAMPS,
          INPUTS);

  public Rig {
    chains = List.copyOf(chains);
    outputs = List.copyOf(outputs);
    lamps = List.copyOf(lamps);
    inputs = List.copyOf(inputs);
    SHAPE
        .check(
            supplyVolts,
            supplyLimitMilliamps,
            dataVolts,
            curve,
            colourMatching,
            whiteFromRgb,
            brightnessCap,
            currentCap,
            ceiling,
            feed,
            battery,
            controller,
            chains,
            outputs,
            lamps,
            inputs)
        .that(
            !chains.isEmpty() || !outputs.isEmpty(),
            "chains",
            "none",
            "must have at least one chain or output")
        .addAll(RigFaults.find(chains, outputs, lamps, inputs))
        .done();
  }

  /** A rig of which the data level is stated, but no feed, battery, controller or input. */
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
        false,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        chains,
        outputs,
        lamps,
        List.of());
  }

  /** A rig with the default supply, curve and caps. */
  public static Rig of(List<Chain> chains, List<DriverOutput> outputs, List<Lamp> lamps) {
    return SHAPE.draft().set(CHAINS, chains).set(OUTPUTS, outputs).set(LAMPS, lamps).make();
  }

  /** The same supply, caps, controller and inputs with other parts. */
  public Rig with(List<Chain> newChains, List<DriverOutput> newOutputs, List<Lamp> newLamps) {
    return SHAPE
        .draft(this)
        .set(CHAINS, newChains)
        .set(OUTPUTS, newOutputs)
        .set(LAMPS, newLamps)
        .make();
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
