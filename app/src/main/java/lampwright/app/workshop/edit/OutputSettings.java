package lampwright.app.workshop.edit;

import java.util.List;
import lampwright.engine.light.Colour;
import lampwright.engine.rig.DriverOutput;
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
            (o, v) ->
                v instanceof Colour.Srgb srgb
                    ? new DriverOutput(
                        o.id(),
                        srgb,
                        o.milliamps(),
                        o.ledsInSeries(),
                        o.forwardVolts(),
                        o.supply(),
                        o.pin())
                    : o),
        Setting.ofDouble(
            "milliamps",
            Kind.Amount.of("milliamps", 0, 10_000, 1),
            DriverOutput::milliamps,
            (o, v) ->
                new DriverOutput(
                    o.id(),
                    o.colour(),
                    v,
                    o.ledsInSeries(),
                    o.forwardVolts(),
                    o.supply(),
                    o.pin())),
        Setting.ofInt(
            "ledsInSeries",
            new Kind.Whole("", 1, 100),
            DriverOutput::ledsInSeries,
            (o, v) ->
                new DriverOutput(
                    o.id(), o.colour(), o.milliamps(), v, o.forwardVolts(), o.supply(), o.pin())),
        Setting.ofDouble(
            "forwardVolts",
            Kind.Amount.of("volts", 0.5, 10, 0.1),
            DriverOutput::forwardVolts,
            (o, v) ->
                new DriverOutput(
                    o.id(), o.colour(), o.milliamps(), o.ledsInSeries(), v, o.supply(), o.pin())),
        new Setting<>(
            "output.supply",
            new Kind.Choice<>("outputSupply", List.of(OutputSupply.values()), OutputSupply::key),
            DriverOutput::supply,
            (o, v) ->
                new DriverOutput(
                    o.id(),
                    o.colour(),
                    o.milliamps(),
                    o.ledsInSeries(),
                    o.forwardVolts(),
                    v,
                    o.pin())),
        PinSetting.of(
            DriverOutput::pin,
            (o, v) ->
                new DriverOutput(
                    o.id(),
                    o.colour(),
                    o.milliamps(),
                    o.ledsInSeries(),
                    o.forwardVolts(),
                    o.supply(),
                    v)));
  }
}
