package lampwright.engine.project;

import static lampwright.engine.project.ValueKind.NUMBER;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import lampwright.engine.light.Chromaticity;
import lampwright.engine.light.Emitter;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.light.FittedEmitter;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.EmitterOrder;
import lampwright.engine.rig.InputLevel;
import lampwright.engine.rig.LineTiming;
import lampwright.engine.rig.PixelType;
import lampwright.engine.rig.SupplyNeeds;

/** Reads a project's own pixel types. */
final class PixelTypeReader {
  /** Has every emitter, so that it fits whatever a chain asks for. */
  static final PixelType STAND_IN =
      BuiltInPixelTypes.all().stream().filter(t -> t.order().size() == 4).findFirst().orElseThrow();

  static final ValueKind<EmitterOrder> ORDER =
      ValueKind.text(EmitterOrder.ALLOWED, EmitterOrder::parse);

  private static final FittedEmitter EMITTER = STAND_IN.emitters().get(EmitterKind.WHITE);

  private PixelTypeReader() {}

  static PixelType read(Located at, Names names) {
    Fields fields = at.fields();
    String id = names.read(fields);
    fields.expect("order", "idleMilliamps", "volts", "failVolts", "minVolts", "maxVolts");
    fields.expect("inputHighShare", "inputHighVolts", "inputMaxShare", "inputMaxVolts");
    Map<EmitterKind, FittedEmitter> emitters = emitters(fields);
    // The stand-in of a broken order fits the emitters, which are then not at fault.
    String letters = emitters.containsKey(EmitterKind.WHITE) ? "GRBW" : "GRB";
    EmitterOrder order = fields.required("order", ORDER, EmitterOrder.parse(letters).orElseThrow());
    double idle = fields.optional("idleMilliamps", NUMBER, PixelType.DEFAULT_IDLE_MILLIAMPS);
    double volts = fields.optional("volts", NUMBER, PixelType.DEFAULT_VOLTS);
    LineTiming line =
        fields.find("line").map(l -> LineTimingReader.read(l, fields)).orElse(LineTiming.DEFAULT);
    PixelType type =
        fields.build(
            () -> new PixelType(id, order, idle, volts, emitters, line, needs(fields, volts)),
            () -> standIn(names.ofStandIn(id, fields)));
    fields.close();
    return type;
  }

  private static PixelType standIn(String id) {
    return new PixelType(
        id,
        STAND_IN.order(),
        STAND_IN.idleMilliamps(),
        STAND_IN.volts(),
        STAND_IN.emitters(),
        STAND_IN.line(),
        STAND_IN.needs());
  }

  private static SupplyNeeds needs(Fields f, double volts) {
    SupplyNeeds usual = PixelType.usualNeeds(volts);
    double minVolts = f.optional("minVolts", NUMBER, usual.minVolts());
    return new SupplyNeeds(
        f.optional("failVolts", NUMBER, minVolts),
        minVolts,
        f.optional("maxVolts", NUMBER, usual.maxVolts()),
        level(f, "inputHigh", usual.inputHigh()),
        level(f, "inputMax", usual.inputMax()));
  }

  // Of a level that is given in part, the other part is nothing.
  private static InputLevel level(Fields f, String name, InputLevel usual) {
    String share = name + "Share";
    String volts = name + "Volts";
    boolean given = f.has(share) || f.has(volts);
    return new InputLevel(
        f.optional(share, NUMBER, given ? 0 : usual.supplyShare()),
        f.optional(volts, NUMBER, given ? 0 : usual.volts()));
  }

  private static Map<EmitterKind, FittedEmitter> emitters(Fields fields) {
    Map<EmitterKind, FittedEmitter> emitters = new EnumMap<>(EmitterKind.class);
    Optional<Located> at = fields.find("emitters");
    if (at.isEmpty()) {
      fields.missing("emitters", ValueKind.OBJECT.allowed());
      return emitters;
    }
    Fields each = at.get().fields();
    for (EmitterKind kind : EmitterKind.values()) {
      each.find(kind.key()).ifPresent(e -> emitters.put(kind, emitter(e, each, kind)));
    }
    each.close();
    if (!each.sound()) {
      fields.breaks("emitters");
    }
    return emitters;
  }

  private static FittedEmitter emitter(Located at, Fields parent, EmitterKind kind) {
    Fields f = at.fields();
    double x = f.required("x", NUMBER, 0.3);
    double y = f.required("y", NUMBER, 0.3);
    double mcd = f.required("mcd", NUMBER, 1.0);
    double milliamps = f.optional("milliamps", NUMBER, PixelType.DEFAULT_EMITTER_MILLIAMPS);
    // In steps, so that a fault of one leaves the others to be found.
    Chromaticity point = f.build(() -> new Chromaticity(x, y), () -> Chromaticity.D65);
    Emitter light = f.build(() -> new Emitter(point, mcd), EMITTER::light);
    FittedEmitter emitter = f.build(() -> new FittedEmitter(light, milliamps), () -> EMITTER);
    f.close();
    if (!f.sound()) {
      parent.breaks(kind.key());
    }
    return emitter;
  }
}
