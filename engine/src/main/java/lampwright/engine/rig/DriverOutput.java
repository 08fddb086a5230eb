package lampwright.engine.rig;

import java.util.Optional;
import lampwright.engine.field.ChoiceType;
import lampwright.engine.field.Field;
import lampwright.engine.field.IdType;
import lampwright.engine.field.NumberType;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;
import lampwright.engine.field.WholeType;
import lampwright.engine.light.Colour;
import lampwright.engine.light.Colours;

/**
 * One constant-current or PWM output that drives plain LEDs in series.
 *
 * @param id unique among the outputs
 * @param colour the colour of its LEDs, for the screen
 * @param milliamps current at full duty, 0 to 10,000 mA
 * @param ledsInSeries 1 to 100
 * @param forwardVolts forward voltage of one LED, 0.5 to 10 V
 * @param supply whether it gives a current or a voltage
 * @param drive what drives its LEDs: the controller's pin or a driver; none if not set
 * @param pin the controller's pin that drives it, if stated
 */
public record DriverOutput(
    String id,
    Colour.Srgb colour,
    double milliamps,
    int ledsInSeries,
    double forwardVolts,
    OutputSupply supply,
    Optional<OutputDrive> drive,
    Optional<Pin> pin) {
  public static final Colour.Srgb DEFAULT_COLOUR = new Colour.Srgb(255, 255, 255);
  public static final OutputSupply DEFAULT_SUPPLY = OutputSupply.CURRENT;

  public static final Field<DriverOutput, String> ID =
      Field.required("id", new IdType(), DriverOutput::id, "");
  public static final Field<DriverOutput, Colour.Srgb> COLOUR =
      Field.usual("colour", Colours.SRGB_ONLY, DriverOutput::colour, DEFAULT_COLOUR);
  public static final Field<DriverOutput, Double> MILLIAMPS =
      Field.usual(
          "milliamps", new NumberType(Unit.MILLIAMPS, 0, 10_000), DriverOutput::milliamps, 20.0);
  public static final Field<DriverOutput, Integer> LEDS_IN_SERIES =
      Field.usual(
          "ledsInSeries", WholeType.ofInt(Unit.NONE, 1, 100), DriverOutput::ledsInSeries, 1);

  /** Of a red or amber LED; blue and white ones have 2.8 to 3.4 V (common practice). */
  public static final Field<DriverOutput, Double> FORWARD_VOLTS =
      Field.usual(
          "forwardVolts", new NumberType(Unit.VOLTS, 0.5, 10), DriverOutput::forwardVolts, 2.1);

  public static final Field<DriverOutput, OutputSupply> SUPPLY =
      Field.derived(
          "supply",
          ChoiceType.of("outputSupply", OutputSupply.class, OutputSupply::key),
          DriverOutput::supply,
          output -> usualSupply(output.get(DriverOutput.DRIVE)));
  public static final Field<DriverOutput, Optional<OutputDrive>> DRIVE =
      Field.optional(
          "drive",
          OptionalType.of(ChoiceType.of("outputDrive", OutputDrive.class, OutputDrive::key)),
          DriverOutput::drive);
  public static final Field<DriverOutput, Optional<Pin>> PIN =
      Field.optional("pin", OptionalType.of(Pin.TYPE), DriverOutput::pin);

  public static final Shape<DriverOutput> SHAPE =
      Shape.of(
          "output",
          DriverOutput.class,
          ID,
          COLOUR,
          MILLIAMPS,
          LEDS_IN_SERIES,
          FORWARD_VOLTS,
          SUPPLY,
          DRIVE,
          PIN);

  public DriverOutput {
    SHAPE
        .check(id, colour, milliamps, ledsInSeries, forwardVolts, supply, drive, pin)
        .that(
            drive.filter(OutputDrive.PIN::equals).isEmpty() || supply == OutputSupply.VOLTAGE,
            "drive",
            OutputDrive.PIN.key(),
            "must be used with supply voltage: a controller pin is no constant-current source")
        .done();
  }

  /** An output of which it is not stated what drives it. */
  public DriverOutput(
      String id,
      Colour.Srgb colour,
      double milliamps,
      int ledsInSeries,
      double forwardVolts,
      OutputSupply supply,
      Optional<Pin> pin) {
    this(id, colour, milliamps, ledsInSeries, forwardVolts, supply, Optional.empty(), pin);
  }

  /** An output of which no pin is stated. */
  public DriverOutput(
      String id,
      Colour.Srgb colour,
      double milliamps,
      int ledsInSeries,
      double forwardVolts,
      OutputSupply supply) {
    this(id, colour, milliamps, ledsInSeries, forwardVolts, supply, Optional.empty());
  }

  /** An output that gives a current. */
  public DriverOutput(
      String id, Colour.Srgb colour, double milliamps, int ledsInSeries, double forwardVolts) {
    this(id, colour, milliamps, ledsInSeries, forwardVolts, DEFAULT_SUPPLY);
  }

  /** An output with defaults for all but its id. */
  public static DriverOutput of(String id) {
    return SHAPE.draft().set(ID, id).make();
  }

  /**
   * Whether the controller's pin may drive its LEDs itself. Where nothing is set it may, so that a
   * driver forgotten is noticed before the pin burns.
   */
  public boolean mayHangOnPin() {
    return drive.filter(OutputDrive.DRIVER::equals).isEmpty();
  }

  /** What an output gives of which only its drive is stated. */
  public static OutputSupply usualSupply(Optional<OutputDrive> drive) {
    return drive.filter(OutputDrive.PIN::equals).isPresent()
        ? OutputSupply.VOLTAGE
        : DEFAULT_SUPPLY;
  }

  /** Forward voltage of all its LEDs in series, V. */
  public double stringVolts() {
    return ledsInSeries * forwardVolts;
  }

  /** With another supply; a constant current needs a driver, so that a pin is left out. */
  public DriverOutput withSupply(OutputSupply newSupply) {
    return new DriverOutput(
        id,
        colour,
        milliamps,
        ledsInSeries,
        forwardVolts,
        newSupply,
        newSupply == OutputSupply.CURRENT ? drive.filter(OutputDrive.DRIVER::equals) : drive,
        pin);
  }

  /** With another drive; a pin gives a voltage. */
  public DriverOutput withDrive(Optional<OutputDrive> newDrive) {
    return new DriverOutput(
        id,
        colour,
        milliamps,
        ledsInSeries,
        forwardVolts,
        newDrive.filter(OutputDrive.PIN::equals).isPresent() ? OutputSupply.VOLTAGE : supply,
        newDrive,
        pin);
  }
}
