package lampwright.app.workshop.edit;

import java.util.List;
import java.util.Optional;
import lampwright.engine.field.Field;
import lampwright.engine.rig.Battery;
import lampwright.engine.rig.Rig;

/** The values of the battery. */
public final class BatterySettings {
  private static final Battery FIRST = Battery.SHAPE.draft().make();

  private BatterySettings() {}

  /** All of them; a battery that states no capacity is none. */
  public static List<Setting<Rig, ?>> all() {
    return List.of(
        FieldSettings.stating(
            Rig.BATTERY, FIRST, Battery.MILLIAMP_HOURS, key(Battery.MILLIAMP_HOURS)),
        of(Battery.USABLE_SHARE),
        of(Battery.PACK_VOLTS),
        FieldSettings.of(Battery.REGULATOR, key(Battery.REGULATOR), Battery::withRegulator)
            .inside(
                rig -> rig.battery().orElse(FIRST),
                (rig, battery) -> Rig.BATTERY.with(rig, Optional.of(battery)),
                rig -> rig.battery().isPresent()),
        of(Battery.EFFICIENCY),
        of(Battery.FUSE_AMPS));
  }

  private static <V> Setting<Rig, ?> of(Field<Battery, V> field) {
    return FieldSettings.within(Rig.BATTERY, FIRST, field, key(field));
  }

  private static String key(Field<Battery, ?> field) {
    return "battery." + field.name();
  }
}
