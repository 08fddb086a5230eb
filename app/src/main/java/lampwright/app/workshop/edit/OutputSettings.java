package lampwright.app.workshop.edit;

import java.util.List;
import lampwright.engine.light.Colour;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.OutputDrive;
import lampwright.engine.rig.OutputSupply;

/** The values of a driver output. The ranges are those of the record. */
public final class OutputSettings {
  private OutputSettings() {}

  /** All but its id. */
  public static List<Setting<DriverOutput, ?>> all() {
    return List.of(
        new Setting<>(
            "output.colour",
            new Kind.Colours(),
            DriverOutput::colour,
            (o, v) -> v instanceof Colour.Srgb srgb ? o.withColour(srgb) : o),
        Setting.ofDouble(
            "milliamps",
            Kind.Amount.of("milliamps", 0, 10_000, 1),
            DriverOutput::milliamps,
            DriverOutput::withMilliamps),
        Setting.ofInt(
            "ledsInSeries",
            new Kind.Whole("", 1, 100),
            DriverOutput::ledsInSeries,
            DriverOutput::withLedsInSeries),
        Setting.ofDouble(
            "forwardVolts",
            Kind.Amount.of("volts", 0.5, 10, 0.1),
            DriverOutput::forwardVolts,
            DriverOutput::withForwardVolts),
        new Setting<>(
            "output.supply",
            new Kind.Choice<>("outputSupply", List.of(OutputSupply.values()), OutputSupply::key),
            DriverOutput::supply,
            DriverOutput::withSupply),
        new Setting<>(
            "output.drive",
            new Kind.Maybe<>(
                new Kind.Choice<>("outputDrive", List.of(OutputDrive.values()), OutputDrive::key),
                OutputDrive.DRIVER),
            DriverOutput::drive,
            DriverOutput::withDrive),
        PinSetting.of(DriverOutput::pin, DriverOutput::withPin));
  }
}
