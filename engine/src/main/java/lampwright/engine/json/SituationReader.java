package lampwright.engine.json;

import lampwright.engine.field.Draft;
import lampwright.engine.situation.Condition;
import lampwright.engine.situation.Criterion;
import lampwright.engine.situation.Situation;

/** Reads situations: their ids, and the stand-ins of broken ones. */
final class SituationReader {
  private final ShapeReader reader;
  private final Names names;

  SituationReader(ShapeReader reader, Names names) {
    this.reader = reader;
    this.names = names;
    reader.inPlaceOf(Condition.SHAPE, this::brokenCondition);
  }

  Situation read(Located at) {
    Fields f = at.fields();
    String id = names.read(f);
    Draft<Situation> draft = Situation.SHAPE.draft().set(Situation.ID, id);
    reader.fill(Situation.SHAPE, f, draft);
    Situation situation =
        f.build(
            draft::make,
            () ->
                Situation.SHAPE
                    .draft()
                    .set(Situation.ID, names.ofStandIn(id, f))
                    .set(Situation.SCENE, draft.get(Situation.SCENE))
                    .set(Situation.TRIGGER, draft.get(Situation.TRIGGER))
                    .make());
    f.close();
    return situation;
  }

  // On a situation of which nobody says that it is not there.
  private Condition brokenCondition(Located at) {
    return Condition.of(
        new Criterion.SituationIs(names.standIn(at.json().line(), at.json().column()), true));
  }
}
