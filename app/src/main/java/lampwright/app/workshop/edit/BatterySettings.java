package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import lampwright.engine.rig.Battery;
import lampwright.engine.rig.Regulator;
import lampwright.engine.rig.Rig;

/** The values of the battery. The ranges are those of the record. */
public final class BatterySettings {
  private static final double FIRST_MILLIAMP_HOURS = 2000;

  private BatterySettings() {}

  /** All of them; a battery that states no capacity is none. */
  public static List<Setting<Rig, ?>> all() {
    return List.of(
        new Setting<>(
            "battery.milliampHours",
            new Kind.Maybe<>(
                Kind.Amount.of("milliampHours", 1, 1_000_000, 100),
                BigDecimal.valueOf(FIRST_MILLIAMP_HOURS)),
            rig -> rig.battery().map(b -> BigDecimal.valueOf(b.milliampHours())),
            (rig, v) ->
                RigDraft.changed(
                    rig,
                    d -> d.battery = v.map(mah -> of(rig).withMilliampHours(mah.doubleValue())))),
        Setting.ofDouble(
            "battery.usableShare",
            Kind.Amount.of("", 0.01, 1, 0.05),
            rig -> of(rig).usableShare(),
            (rig, v) -> change(rig, b -> b.withUsableShare(v))),
        Setting.ofMaybeDouble(
            "battery.packVolts",
            Kind.Amount.of("volts", 0.5, 100, 0.1),
            7.4,
            rig -> of(rig).packVolts(),
            (rig, v) -> change(rig, b -> b.withPackVolts(v))),
        new Setting<>(
            "battery.regulator",
            new Kind.Choice<>("regulator", List.of(Regulator.values()), Regulator::key),
            rig -> of(rig).regulator(),
            (rig, v) -> change(rig, b -> b.withRegulator(v))),
        Setting.ofMaybeDouble(
            "battery.efficiency",
            Kind.Amount.of("", 0.1, 1, 0.01),
            0.9,
            rig -> of(rig).efficiency(),
            (rig, v) -> change(rig, b -> b.withEfficiency(v))),
        Setting.ofMaybeDouble(
            "battery.fuseAmps",
            Kind.Amount.of("amps", 0.01, 100, 0.5),
            2,
            rig -> of(rig).fuseAmps(),
            (rig, v) -> change(rig, b -> b.withFuseAmps(v))));
  }

  private static Battery of(Rig rig) {
    return rig.battery().orElseGet(() -> Battery.of(FIRST_MILLIAMP_HOURS));
  }

  // Of a battery that is not stated there is nothing to change.
  private static Rig change(Rig rig, UnaryOperator<Battery> change) {
    Optional<Battery> changed = rig.battery().map(change);
    return changed.isEmpty() ? rig : RigDraft.changed(rig, d -> d.battery = changed);
  }
}
