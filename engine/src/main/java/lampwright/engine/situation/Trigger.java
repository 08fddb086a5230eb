package lampwright.engine.situation;

import java.util.List;
import java.util.Optional;
import lampwright.engine.check.Checks;
import lampwright.engine.check.ListLimit;
import lampwright.engine.field.Draft;
import lampwright.engine.field.Field;
import lampwright.engine.field.ListType;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.RecordType;
import lampwright.engine.field.Shape;

/**
 * What brings a situation about. Project files write it as one of two fields, or as neither where
 * the situation always is.
 *
 * @param join how many of the conditions have to be on
 * @param conditions at most 16; none: always on
 */
public record Trigger(Join join, List<Condition> conditions) {
  /** Without a condition. */
  public static final Trigger ALWAYS = new Trigger(Join.ALL, List.of());

  public static final Field<Trigger, Optional<List<Condition>>> ALL = field(Join.ALL);
  public static final Field<Trigger, Optional<List<Condition>>> ANY = field(Join.ANY);

  static final Shape<Trigger> SHAPE =
      Shape.custom("trigger", Trigger.class, Trigger::make, ALL, ANY);

  public Trigger {
    conditions = List.copyOf(conditions);
    // Of none, all are on; any of none would never be.
    join = conditions.isEmpty() ? Join.ALL : join;
  }

  private static Field<Trigger, Optional<List<Condition>>> field(Join join) {
    return Field.optional(
        join.key(),
        OptionalType.of(
            new ListType<>(RecordType.of(Condition.SHAPE), new ListLimit(1, 16, "conditions"))),
        trigger ->
            trigger.join == join && !trigger.conditions.isEmpty()
                ? Optional.of(trigger.conditions)
                : Optional.empty());
  }

  private static Trigger make(Draft<Trigger> draft) {
    Optional<List<Condition>> all = draft.get(ALL);
    Optional<List<Condition>> any = draft.get(ANY);
    Checks checks = Checks.of("situation");
    checks.that(
        all.isEmpty() || any.isEmpty(),
        Join.ANY.key(),
        "all and any",
        "must be either all or any, not both");
    ALL.type().check(Join.ALL.key(), all, checks);
    ANY.type().check(Join.ANY.key(), any, checks);
    checks.done();
    return any.map(conditions -> new Trigger(Join.ANY, conditions))
        .or(() -> all.map(conditions -> new Trigger(Join.ALL, conditions)))
        .orElse(ALWAYS);
  }
}
