package lampwright.app.workshop.edit;

import java.util.List;
import lampwright.engine.rig.DriverOutput;

/** The values of a driver output. */
public final class OutputSettings {
  private OutputSettings() {}

  /** All but its id. */
  public static List<Setting<DriverOutput, ?>> all() {
    return List.of(
        FieldSettings.of(DriverOutput.COLOUR, "output.colour"),
        FieldSettings.of(DriverOutput.MILLIAMPS),
        FieldSettings.of(DriverOutput.LEDS_IN_SERIES),
        FieldSettings.of(DriverOutput.FORWARD_VOLTS),
        FieldSettings.of(DriverOutput.SUPPLY, "output.supply", DriverOutput::withSupply),
        FieldSettings.of(DriverOutput.DRIVE, "output.drive", DriverOutput::withDrive),
        FieldSettings.of(DriverOutput.PIN));
  }
}
