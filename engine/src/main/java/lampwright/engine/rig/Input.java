package lampwright.engine.rig;

import static lampwright.engine.check.Checks.canonical;

import java.math.BigDecimal;
import java.util.Optional;
import lampwright.engine.field.DecimalType;
import lampwright.engine.field.Field;
import lampwright.engine.field.FlagType;
import lampwright.engine.field.IdType;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;

/**
 * What the model listens to: a receiver channel or a switch.
 *
 * @param id unique among the inputs
 * @param kind a receiver channel or a switch
 * @param pin the controller's pin that it is on, if stated
 * @param lostAfterMs how long after its last valid pulse a channel is lost, 1 to 60,000 ms; without
 *     effect on a switch
 * @param centre where the centre of a channel comes from; without effect on a switch
 * @param activeLow whether a switch is on where its pin is low; without effect on a channel
 */
public record Input(
    String id,
    InputKind kind,
    Optional<Pin> pin,
    BigDecimal lostAfterMs,
    Centre centre,
    boolean activeLow) {
  public static final Field<Input, String> ID = Field.required("id", new IdType(), Input::id, "");
  public static final Field<Input, InputKind> KIND =
      Field.required("kind", InputKind.TYPE, Input::kind, InputKind.SERVO_PULSE);
  public static final Field<Input, Optional<Pin>> PIN =
      Field.optional("pin", OptionalType.of(Pin.TYPE), Input::pin);
  public static final Field<Input, BigDecimal> LOST_AFTER_MS =
      Field.usual(
          "lostAfterMs",
          new DecimalType(Unit.MILLISECONDS, 1, 60_000),
          Input::lostAfterMs,
          BigDecimal.valueOf(100));
  public static final Field<Input, Centre> CENTRE =
      Field.usual("centre", Centre.TYPE, Input::centre, Centre.FIXED);
  public static final Field<Input, Boolean> ACTIVE_LOW =
      Field.usual("activeLow", new FlagType(), Input::activeLow, false);

  public static final Shape<Input> SHAPE =
      Shape.of("input", Input.class, ID, KIND, PIN, LOST_AFTER_MS, CENTRE, ACTIVE_LOW);

  public Input {
    lostAfterMs = canonical(lostAfterMs);
    SHAPE.check(id, kind, pin, lostAfterMs, centre, activeLow).done();
  }

  /** Whether it is a channel of a receiver, with servo pulses; else it is a switch. */
  public boolean isChannel() {
    return kind == InputKind.SERVO_PULSE;
  }

  /** An input with defaults for all else. */
  public static Input of(String id, InputKind kind) {
    return SHAPE.draft().set(ID, id).set(KIND, kind).make();
  }
}
