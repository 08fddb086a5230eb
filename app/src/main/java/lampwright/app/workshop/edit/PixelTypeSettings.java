package lampwright.app.workshop.edit;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import lampwright.engine.field.Draft;
import lampwright.engine.field.Field;
import lampwright.engine.field.Part;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.light.Emitter;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.light.FittedEmitter;
import lampwright.engine.rig.LineTiming;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.SupplyNeeds;

/** The values of a pixel type of one's own. */
public final class PixelTypeSettings {
  private PixelTypeSettings() {}

  /** All but its id and order; of times, in the form that they have in this type. */
  public static List<Setting<PixelType, ?>> of(PixelType type) {
    List<Setting<PixelType, ?>> settings = new ArrayList<>();
    settings.add(FieldSettings.of(PixelType.IDLE_MILLIAMPS, "type.idleMilliamps"));
    settings.add(FieldSettings.of(PixelType.VOLTS, "type.volts", PixelTypeSettings::withVolts));
    for (Part<SupplyNeeds, ?> part : PixelType.NEEDS.parts().parts()) {
      settings.add(need((Field<SupplyNeeds, ?>) part));
    }
    for (EmitterKind kind : type.emitters().keySet()) {
      settings.addAll(emitter(kind));
    }
    for (Setting<LineTiming, ?> setting : LineSettings.of(type.line())) {
      settings.add(setting.inside(PixelType::line, PixelType.LINE::with));
    }
    return List.copyOf(settings);
  }

  private static <V> Setting<PixelType, ?> need(Field<SupplyNeeds, V> field) {
    return FieldSettings.of(field, "type." + field.name())
        .inside(PixelType::needs, PixelType.NEEDS::with);
  }

  private static List<Setting<PixelType, ?>> emitter(EmitterKind kind) {
    return List.of(
        light(Emitter.MILLICANDELA, kind),
        fitted(FittedEmitter.MILLIAMPS, kind),
        point(Chromaticity.X, kind),
        point(Chromaticity.Y, kind));
  }

  private static Setting<PixelType, ?> fitted(Field<FittedEmitter, ?> field, EmitterKind kind) {
    return of(FieldSettings.of(field, key(kind, field)), kind);
  }

  private static Setting<PixelType, ?> light(Field<Emitter, ?> field, EmitterKind kind) {
    return of(
        FieldSettings.of(field, key(kind, field))
            .inside(FittedEmitter::light, FittedEmitter.LIGHT::with),
        kind);
  }

  private static Setting<PixelType, ?> point(Field<Chromaticity, ?> field, EmitterKind kind) {
    return of(
        FieldSettings.of(field, key(kind, field))
            .inside(Emitter::chromaticity, Emitter.CHROMATICITY::with)
            .inside(FittedEmitter::light, FittedEmitter.LIGHT::with),
        kind);
  }

  private static String key(EmitterKind kind, Field<?, ?> field) {
    return "emitter." + kind.key() + "." + field.name();
  }

  private static Setting<PixelType, ?> of(Setting<FittedEmitter, ?> setting, EmitterKind kind) {
    return setting.inside(
        type -> fitted(type, kind),
        (type, emitter) -> {
          Map<EmitterKind, FittedEmitter> emitters = new EnumMap<>(type.emitters());
          emitters.put(kind, emitter);
          return PixelType.EMITTERS.with(type, emitters);
        });
  }

  private static FittedEmitter fitted(PixelType type, EmitterKind kind) {
    return java.util.Objects.requireNonNull(type.emitters().get(kind), kind.key());
  }

  // Needs that nobody stated follow.
  private static PixelType withVolts(PixelType t, double volts) {
    boolean usual = t.needs().equals(PixelType.usualNeeds(t.volts()));
    Draft<PixelType> draft = PixelType.SHAPE.draft(t).set(PixelType.VOLTS, volts);
    return usual ? draft.set(PixelType.NEEDS, PixelType.usualNeeds(volts)).make() : draft.make();
  }
}
