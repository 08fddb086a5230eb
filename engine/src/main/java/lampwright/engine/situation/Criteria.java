package lampwright.engine.situation;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import lampwright.engine.check.Checks;
import lampwright.engine.check.ListLimit;
import lampwright.engine.field.ChoiceType;
import lampwright.engine.field.DecimalType;
import lampwright.engine.field.Draft;
import lampwright.engine.field.Field;
import lampwright.engine.field.FlagType;
import lampwright.engine.field.ListType;
import lampwright.engine.field.OptionalType;
import lampwright.engine.field.ReferenceType;
import lampwright.engine.field.Shape;
import lampwright.engine.field.Unit;
import lampwright.engine.field.WholeType;
import lampwright.engine.pattern.Times;

/** How project files write what a condition looks at: its subject, and one of several forms. */
public final class Criteria {
  /** A width of servo pulses, or a difference of two. */
  public static final WholeType<Integer> WIDTH = WholeType.ofInt(Unit.MICROSECONDS, 0, 5000);

  /** How long ago another situation may have ended. */
  public static final DecimalType TIME = Times.MS;

  public static final int DEFAULT_HYSTERESIS_US = 20;

  /** The words of {@code is}. */
  enum State {
    ON("on", true, true),
    OFF("off", true, false),
    ACTIVE("active", false, true),
    INACTIVE("inactive", false, false);

    private final String key;
    private final boolean ofInput;
    private final boolean positive;

    State(String key, boolean ofInput, boolean positive) {
      this.key = key;
      this.ofInput = ofInput;
      this.positive = positive;
    }

    String key() {
      return key;
    }

    private static State of(boolean ofInput, boolean positive) {
      return Stream.of(values())
          .filter(state -> state.ofInput == ofInput && state.positive == positive)
          .findFirst()
          .orElseThrow();
    }
  }

  public static final Field<Criterion, Optional<String>> INPUT =
      Field.optional("input", OptionalType.of(ReferenceType.to("rig.inputs")), Criterion::input);
  public static final Field<Criterion, Optional<String>> SITUATION =
      Field.optional(
          "situation", OptionalType.of(ReferenceType.to("situations")), Criterion::situation);
  public static final Field<Criterion, OptionalInt> ABOVE_US =
      Field.optional(
          "aboveUs",
          OptionalType.ofInt(WIDTH),
          c ->
              c instanceof Criterion.Above above
                  ? OptionalInt.of(above.aboveUs())
                  : OptionalInt.empty());
  public static final Field<Criterion, OptionalInt> BELOW_US =
      Field.optional(
          "belowUs",
          OptionalType.ofInt(WIDTH),
          c ->
              c instanceof Criterion.Below below
                  ? OptionalInt.of(below.belowUs())
                  : OptionalInt.empty());
  public static final Field<Criterion, Optional<List<Integer>>> BETWEEN_US =
      Field.optional(
          "betweenUs",
          OptionalType.of(new ListType<>(WIDTH, new ListLimit(2, 2, "widths"))),
          c ->
              c instanceof Criterion.Between between
                  ? Optional.of(List.of(between.fromUs(), between.toUs()))
                  : Optional.empty());
  public static final Field<Criterion, Optional<Boolean>> LOST =
      Field.optional(
          "lost",
          OptionalType.of(new FlagType()),
          c -> c instanceof Criterion.Lost ? Optional.of(true) : Optional.empty());
  static final Field<Criterion, Optional<State>> IS =
      Field.optional(
          "is",
          OptionalType.of(ChoiceType.of("conditionIs", State.class, State::key)),
          Criteria::state);
  public static final Field<Criterion, Optional<BigDecimal>> ENDED_WITHIN_MS =
      Field.optional(
          "endedWithinMs",
          OptionalType.of(TIME),
          c ->
              c instanceof Criterion.EndedWithin ended
                  ? Optional.of(ended.withinMs())
                  : Optional.empty());
  public static final Field<Criterion, Integer> HYSTERESIS_US =
      Field.usual(
          "hysteresisUs",
          WIDTH,
          c -> c instanceof Criterion.Width width ? width.hysteresisUs() : DEFAULT_HYSTERESIS_US,
          DEFAULT_HYSTERESIS_US);

  private static final List<Field<Criterion, ?>> WIDTH_FORMS =
      List.of(ABOVE_US, BELOW_US, BETWEEN_US);
  private static final List<Field<Criterion, ?>> FORMS =
      List.of(ABOVE_US, BELOW_US, BETWEEN_US, LOST, IS, ENDED_WITHIN_MS);

  static final Shape<Criterion> SHAPE =
      Shape.custom(
          "criterion",
          Criterion.class,
          Criteria::make,
          INPUT,
          SITUATION,
          ABOVE_US,
          BELOW_US,
          BETWEEN_US,
          LOST,
          IS,
          ENDED_WITHIN_MS,
          HYSTERESIS_US);

  private Criteria() {}

  /** The names of the forms of which a condition has one. */
  public static List<String> forms() {
    return FORMS.stream().map(Field::name).toList();
  }

  static Checks checkWidth(String field, int widthUs, int hysteresisUs) {
    Checks checks = Checks.of("condition");
    WIDTH.check(field, widthUs, checks);
    WIDTH.check(HYSTERESIS_US.name(), hysteresisUs, checks);
    return checks;
  }

  private static Optional<State> state(Criterion criterion) {
    if (criterion instanceof Criterion.SwitchIs contact) {
      return Optional.of(State.of(true, contact.on()));
    }
    return criterion instanceof Criterion.SituationIs other
        ? Optional.of(State.of(false, other.active()))
        : Optional.empty();
  }

  private static Criterion make(Draft<Criterion> draft) {
    Checks checks = Checks.of("condition");
    subject(draft, checks);
    List<Field<Criterion, ?>> given = FORMS.stream().filter(draft::has).toList();
    if (given.size() != 1) {
      String names = String.join(" and ", given.stream().map(Field::name).toList());
      checks.add(
          given.isEmpty() ? IS.name() : given.get(1).name(),
          given.isEmpty() ? "missing" : names,
          "must have exactly one of " + String.join(", ", forms()));
    } else {
      form(draft, given.get(0), checks);
    }
    checks.done();
    return criterion(draft);
  }

  private static void subject(Draft<Criterion> draft, Checks checks) {
    boolean input = draft.has(INPUT);
    boolean situation = draft.has(SITUATION);
    checks
        .that(input || situation, INPUT.name(), "missing", "must have input or situation")
        .that(
            !input || !situation,
            SITUATION.name(),
            "input and situation",
            "must be either input or situation, not both");
  }

  private static void form(Draft<Criterion> draft, Field<Criterion, ?> form, Checks checks) {
    boolean width = WIDTH_FORMS.contains(form);
    checks
        .that(
            width || !draft.has(HYSTERESIS_US),
            HYSTERESIS_US.name(),
            Integer.toString(draft.get(HYSTERESIS_US)),
            "must be used with aboveUs, belowUs or betweenUs")
        .that(
            !draft.given(LOST).equals(Optional.of(Optional.of(false))),
            LOST.name(),
            "false",
            "must be true");
    if (draft.has(INPUT) == draft.has(SITUATION)) {
      return;
    }
    boolean ofInput = draft.has(INPUT);
    if (form == IS) {
      State state = draft.get(IS).orElseThrow();
      checks.that(
          state.ofInput == ofInput,
          IS.name(),
          state.key(),
          ofInput
              ? "must be on or off with an input"
              : "must be active or inactive with a situation");
    } else {
      boolean needsInput = form != ENDED_WITHIN_MS;
      checks.that(
          needsInput == ofInput,
          form.name(),
          ofInput ? "an input" : "a situation",
          needsInput ? "must be used with an input" : "must be used with a situation");
    }
  }

  private static Criterion criterion(Draft<Criterion> draft) {
    String subject = draft.get(INPUT).or(() -> draft.get(SITUATION)).orElseThrow();
    int hysteresis = draft.get(HYSTERESIS_US);
    if (draft.has(ABOVE_US)) {
      return new Criterion.Above(subject, draft.get(ABOVE_US).orElseThrow(), hysteresis);
    } else if (draft.has(BELOW_US)) {
      return new Criterion.Below(subject, draft.get(BELOW_US).orElseThrow(), hysteresis);
    } else if (draft.has(BETWEEN_US)) {
      List<Integer> ends = draft.get(BETWEEN_US).orElseThrow();
      Checks checks = Checks.of("condition");
      BETWEEN_US.type().check(BETWEEN_US.name(), Optional.of(ends), checks);
      checks.done();
      return new Criterion.Between(subject, ends.get(0), ends.get(1), hysteresis);
    } else if (draft.has(LOST)) {
      return new Criterion.Lost(subject);
    } else if (draft.has(ENDED_WITHIN_MS)) {
      return new Criterion.EndedWithin(subject, draft.get(ENDED_WITHIN_MS).orElseThrow());
    }
    State state = draft.get(IS).orElseThrow();
    return state.ofInput
        ? new Criterion.SwitchIs(subject, state.positive)
        : new Criterion.SituationIs(subject, state.positive);
  }
}
