package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;
import java.util.function.Function;
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

/** The values of a pixel type of one's own. The ranges are those of the records. */
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
    String key = "emitter." + kind.key();
    return List.of(
        part(
            key + ".mcd",
            kind,
            Kind.Amount.of("mcd", 0.000001, 1_000_000, 10),
            f -> f.light().millicandela(),
            (f, v) -> new FittedEmitter(new Emitter(f.light().chromaticity(), v), f.milliamps())),
        part(
            key + ".milliamps",
            kind,
            Kind.Amount.of("milliamps", 0, 10_000, 1),
            FittedEmitter::milliamps,
            (f, v) -> new FittedEmitter(f.light(), v)),
        part(
            key + ".x",
            kind,
            Kind.Amount.of("", 0, 1, 0.001),
            f -> f.light().chromaticity().x(),
            (f, v) ->
                new FittedEmitter(
                    new Emitter(
                        new Chromaticity(v, f.light().chromaticity().y()),
                        f.light().millicandela()),
                    f.milliamps())),
        part(
            key + ".y",
            kind,
            Kind.Amount.of("", 0.001, 1, 0.001),
            f -> f.light().chromaticity().y(),
            (f, v) ->
                new FittedEmitter(
                    new Emitter(
                        new Chromaticity(f.light().chromaticity().x(), v),
                        f.light().millicandela()),
                    f.milliamps())));
  }

  private static Setting<PixelType, BigDecimal> part(
      String key,
      EmitterKind kind,
      Kind.Amount amount,
      Function<FittedEmitter, Double> get,
      BiFunction<FittedEmitter, Double, FittedEmitter> set) {
    return Setting.ofDouble(
        key,
        amount,
        t -> get.apply(fitted(t, kind)),
        (t, v) -> {
          Map<EmitterKind, FittedEmitter> emitters = new EnumMap<>(t.emitters());
          emitters.put(kind, set.apply(fitted(t, kind), v));
          return PixelType.EMITTERS.with(t, emitters);
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
