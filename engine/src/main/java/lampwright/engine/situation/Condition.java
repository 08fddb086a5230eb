package lampwright.engine.situation;

import java.util.OptionalInt;
import lampwright.engine.check.Checks;
import lampwright.engine.field.Field;
import lampwright.engine.field.Group;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;
import lampwright.engine.field.WholeType;

/**
 * One condition of a situation.
 *
 * @param criterion what is looked at
 * @param taps how many short spells of it are counted, 1 to 20; none: it is on while it lasts
 */
public record Condition(Criterion criterion, OptionalInt taps) {
  public static final Group<Condition, Criterion> CRITERION =
      Group.of(
          "criterion",
          Condition::criterion,
          Criteria.SHAPE,
          new Criterion.SituationIs("none", true));
  public static final Field<Condition, OptionalInt> TAPS =
      Field.optional(
          "taps", OptionalType.ofInt(WholeType.ofInt(Unit.NONE, 1, 20)), Condition::taps);

  public static final Shape<Condition> SHAPE =
      Shape.of("condition", Condition.class, CRITERION, TAPS);

  public Condition {
    Checks checks = SHAPE.check(criterion, taps);
    checks
        .that(
            taps.isEmpty() || criterion.input().isPresent(),
            "taps",
            "a situation",
            "must be used with an input")
        .done();
  }

  /** A condition that is on as long as its criterion. */
  public static Condition of(Criterion criterion) {
    return new Condition(criterion, OptionalInt.empty());
  }

  /** A condition that counts short spells of its criterion. */
  public static Condition taps(int count, Criterion criterion) {
    return new Condition(criterion, OptionalInt.of(count));
  }
}
