package lampwright.app.workshop.edit;

import java.util.List;
import lampwright.engine.rig.DriverOutput;

/** The values of a driver output. */
public final class OutputSettings {
  private OutputSettings() {}

  /** All but its id. */
  public static List<Setting<DriverOutput, ?>> all() {
    return ShapeSettings.of(DriverOutput.SHAPE)
        .without(DriverOutput.ID)
        .own(DriverOutput.COLOUR, FieldSettings.of(DriverOutput.COLOUR, "output.colour"))
        .own(
            DriverOutput.SUPPLY,
            FieldSettings.of(DriverOutput.SUPPLY, "output.supply", DriverOutput::withSupply))
        .own(
            DriverOutput.DRIVE,
            FieldSettings.of(DriverOutput.DRIVE, "output.drive", DriverOutput::withDrive))
        .list();
  }
}
