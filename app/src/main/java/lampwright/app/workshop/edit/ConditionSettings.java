package lampwright.app.workshop.edit;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.function.ToIntFunction;
import java.util.stream.Stream;
import lampwright.engine.situation.Condition;
import lampwright.engine.situation.Criteria;
import lampwright.engine.situation.Criterion;

/** The values of a condition, in the order in which it is read aloud. */
public final class ConditionSettings {
  private ConditionSettings() {}

  /**
   * The settings of a condition as it is now; another kind has others.
   *
   * @param sources what it may look at
   * @param name of a source
   */
  public static List<Setting<Condition, ?>> of(
      Condition condition, List<ConditionSource> sources, Function<ConditionSource, String> name) {
    Criterion criterion = condition.criterion();
    ConditionKind kind = ConditionKind.of(criterion);
    ConditionSource source = source(criterion, sources);
    List<Setting<Condition, ?>> all = new ArrayList<>();
    all.add(
        new Setting<>(
            "condition.source",
            new Kind.Choice<>("conditionSource", sources, name),
            c -> source(c.criterion(), sources),
            ConditionSettings::withSource));
    all.add(
        new Setting<>(
            "condition.kind",
            new Kind.Choice<>("conditionKind", kinds(source, kind), ConditionKind::key),
            c -> ConditionKind.of(c.criterion()),
            (c, k) -> with(c, k.make(subject(c.criterion()), c.criterion()))));
    switch (kind) {
      case ABOVE ->
          all.add(
              width(
                  "aboveUs",
                  c -> ((Criterion.Above) c).aboveUs(),
                  (c, us) ->
                      new Criterion.Above(subject(c), us, ((Criterion.Above) c).hysteresisUs())));
      case BELOW ->
          all.add(
              width(
                  "belowUs",
                  c -> ((Criterion.Below) c).belowUs(),
                  (c, us) ->
                      new Criterion.Below(subject(c), us, ((Criterion.Below) c).hysteresisUs())));
      case BETWEEN -> {
        all.add(
            width(
                "fromUs",
                c -> ((Criterion.Between) c).fromUs(),
                (c, us) -> between((Criterion.Between) c, us, ((Criterion.Between) c).toUs())));
        all.add(
            width(
                "toUs",
                c -> ((Criterion.Between) c).toUs(),
                (c, us) -> between((Criterion.Between) c, ((Criterion.Between) c).fromUs(), us)));
      }
      case ENDED ->
          all.add(
              FieldForm.of(Criteria.TIME)
                  .<Condition>setting(
                      "condition.withinMs",
                      c -> ((Criterion.EndedWithin) c.criterion()).withinMs(),
                      (c, ms) -> with(c, new Criterion.EndedWithin(subject(c.criterion()), ms))));
      default -> {
        // Nothing more to be set.
      }
    }
    if (criterion instanceof Criterion.Width) {
      all.add(
          width(
              "hysteresisUs",
              c -> ((Criterion.Width) c).hysteresisUs(),
              ConditionSettings::withHysteresis));
    }
    if (criterion.input().isPresent()) {
      all.add(FieldSettings.of(Condition.TAPS, "condition.taps"));
    }
    return all;
  }

  /** A condition as it begins. */
  public static Condition first(ConditionSource source) {
    return Condition.of(ConditionKind.of(source.sort()).get(0).make(source.id()));
  }

  /**
   * Takes a width into a condition: its threshold, or the end of its range that is nearer.
   *
   * @return the same condition where it has none
   */
  public static Condition taking(Condition condition, int us) {
    Criterion criterion = condition.criterion();
    if (criterion instanceof Criterion.Above a) {
      return with(condition, new Criterion.Above(a.channel(), us, a.hysteresisUs()));
    } else if (criterion instanceof Criterion.Below b) {
      return with(condition, new Criterion.Below(b.channel(), us, b.hysteresisUs()));
    } else if (criterion instanceof Criterion.Between b) {
      boolean lower = Math.abs(us - b.fromUs()) <= Math.abs(us - b.toUs());
      return with(condition, lower ? between(b, us, b.toUs()) : between(b, b.fromUs(), us));
    }
    return condition;
  }

  private static Criterion between(Criterion.Between b, int fromUs, int toUs) {
    return new Criterion.Between(b.channel(), fromUs, toUs, b.hysteresisUs());
  }

  private static Criterion withHysteresis(Criterion c, int us) {
    if (c instanceof Criterion.Above a) {
      return new Criterion.Above(a.channel(), a.aboveUs(), us);
    } else if (c instanceof Criterion.Below b) {
      return new Criterion.Below(b.channel(), b.belowUs(), us);
    }
    Criterion.Between b = (Criterion.Between) c;
    return new Criterion.Between(b.channel(), b.fromUs(), b.toUs(), us);
  }

  /** Changes a width in a criterion. */
  @FunctionalInterface
  private interface WithWidth {
    Criterion apply(Criterion criterion, int us);
  }

  private static Setting<Condition, Long> width(
      String key, ToIntFunction<Criterion> get, WithWidth set) {
    return new Setting<>(
        "condition." + key,
        FormOfType.count(Criteria.WIDTH),
        c -> (long) get.applyAsInt(c.criterion()),
        (c, us) -> with(c, set.apply(c.criterion(), Math.toIntExact(us))));
  }

  private static Condition with(Condition condition, Criterion criterion) {
    return Condition.CRITERION.with(condition, criterion);
  }

  // Of another sort of source something else is asked.
  private static Condition withSource(Condition condition, ConditionSource source) {
    Criterion now = condition.criterion();
    List<ConditionKind> possible = ConditionKind.of(source.sort());
    ConditionKind kind = ConditionKind.of(now);
    ConditionKind next = possible.contains(kind) ? kind : possible.get(0);
    boolean counts = source.sort() != ConditionSource.Sort.SITUATION;
    return new Condition(
        next.make(source.id(), now), counts ? condition.taps() : OptionalInt.empty());
  }

  // A switch may be asked whether it is lost.
  private static List<ConditionKind> kinds(ConditionSource source, ConditionKind now) {
    List<ConditionKind> possible = ConditionKind.of(source.sort());
    return possible.contains(now)
        ? possible
        : Stream.concat(possible.stream(), Stream.of(now)).toList();
  }

  private static ConditionSource source(Criterion criterion, List<ConditionSource> sources) {
    return sources.stream().filter(s -> s.isOf(criterion)).findFirst().orElseThrow();
  }

  private static String subject(Criterion criterion) {
    return criterion.input().or(criterion::situation).orElseThrow();
  }
}
