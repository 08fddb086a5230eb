package lampwright.engine.json;

import lampwright.engine.field.Draft;
import lampwright.engine.light.EmitterKind;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.EmitterOrder;
import lampwright.engine.rig.PixelType;

/** Reads a project's own pixel types. */
final class PixelTypeReader {
  private final ShapeReader reader;
  private final Names names;

  PixelTypeReader(ShapeReader reader, Names names) {
    this.reader = reader;
    this.names = names;
  }

  PixelType read(Located at) {
    Fields f = at.fields();
    String id = names.read(f);
    Draft<PixelType> draft = PixelType.SHAPE.draft().set(PixelType.ID, id);
    reader.fill(PixelType.SHAPE, f, draft);
    if (draft.given(PixelType.ORDER).isEmpty()) {
      // The stand-in of a broken order fits the emitters, which are then not at fault.
      boolean white = draft.get(PixelType.EMITTERS).containsKey(EmitterKind.WHITE);
      draft.set(PixelType.ORDER, EmitterOrder.parse(white ? "GRBW" : "GRB").orElseThrow());
    }
    PixelType type = f.build(draft::make, () -> standIn(names.ofStandIn(id, f)));
    f.close();
    return type;
  }

  private static PixelType standIn(String id) {
    return PixelType.ID.with(BuiltInPixelTypes.standIn(), id);
  }
}
