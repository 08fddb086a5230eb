package lampwright.engine.situation;

import static lampwright.engine.check.Checks.canonical;

import java.math.BigDecimal;
import java.util.Optional;
import lampwright.engine.field.Field;
import lampwright.engine.field.FlagType;
import lampwright.engine.field.Group;
import lampwright.engine.field.IdType;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.ReferenceType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;
import lampwright.engine.field.WholeType;
import lampwright.engine.pattern.Times;

/**
 * A state of the model that calls up a scene.
 *
 * @param id unique among the situations
 * @param priority of those that want a lamp, the highest has it; 0 to 1,000
 * @param scene id of the scene that it shows; none: it is there for others to look at
 * @param start where the scene begins
 * @param afterMs how long the trigger has to last, 0 to a day
 * @param lingerMs how long it stays active afterwards, 0 to a day; without effect if it toggles
 * @param toggle whether each new trigger turns it over, instead of keeping it active
 * @param trigger what brings it about
 */
public record Situation(
    String id,
    int priority,
    Optional<String> scene,
    Start start,
    BigDecimal afterMs,
    BigDecimal lingerMs,
    boolean toggle,
    Trigger trigger) {
  public static final Field<Situation, String> ID =
      Field.required("id", new IdType(), Situation::id, "");
  public static final Field<Situation, Integer> PRIORITY =
      Field.usual("priority", WholeType.ofInt(Unit.NONE, 0, 1000), Situation::priority, 0)
          .alwaysWritten();
  public static final Field<Situation, Optional<String>> SCENE =
      Field.optional("scene", OptionalType.of(ReferenceType.to("scenes")), Situation::scene);
  public static final Field<Situation, Start> START =
      Field.usual("start", Start.TYPE, Situation::start, Start.RESTART);
  public static final Field<Situation, BigDecimal> AFTER_MS =
      Field.usual("afterMs", Times.MS, Situation::afterMs, BigDecimal.ZERO);
  public static final Field<Situation, BigDecimal> LINGER_MS =
      Field.usual("lingerMs", Times.MS, Situation::lingerMs, BigDecimal.ZERO);
  public static final Field<Situation, Boolean> TOGGLE =
      Field.usual("toggle", new FlagType(), Situation::toggle, false);
  public static final Group<Situation, Trigger> TRIGGER =
      Group.of("trigger", Situation::trigger, Trigger.SHAPE, Trigger.ALWAYS);

  public static final Shape<Situation> SHAPE =
      Shape.of(
          "situation",
          Situation.class,
          ID,
          PRIORITY,
          SCENE,
          START,
          AFTER_MS,
          LINGER_MS,
          TOGGLE,
          TRIGGER);

  public Situation {
    afterMs = canonical(afterMs);
    lingerMs = canonical(lingerMs);
    SHAPE.check(id, priority, scene, start, afterMs, lingerMs, toggle, trigger).done();
  }

  /** A situation with defaults for all else. */
  public static Situation of(String id, Trigger trigger) {
    return SHAPE.draft().set(ID, id).set(TRIGGER, trigger).make();
  }
}
