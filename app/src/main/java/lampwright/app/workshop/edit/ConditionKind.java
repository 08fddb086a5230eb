package lampwright.app.workshop.edit;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Stream;
import lampwright.engine.situation.Criteria;
import lampwright.engine.situation.Criterion;

/** What a condition asks of an input or a situation, as one choice. */
public enum ConditionKind {
  ABOVE("above", ConditionSource.Sort.CHANNEL),
  BELOW("below", ConditionSource.Sort.CHANNEL),
  BETWEEN("between", ConditionSource.Sort.CHANNEL),
  LOST("lost", ConditionSource.Sort.CHANNEL),
  ON("on", ConditionSource.Sort.SWITCH),
  OFF("off", ConditionSource.Sort.SWITCH),
  ACTIVE("active", ConditionSource.Sort.SITUATION),
  INACTIVE("inactive", ConditionSource.Sort.SITUATION),
  ENDED("ended", ConditionSource.Sort.SITUATION);

  // What a new condition begins with: a stick that is clearly off its centre, or at rest.
  private static final int FORWARD_US = 1600;
  private static final int BACK_US = 1400;
  private static final int REST_FROM_US = 1460;
  private static final int REST_TO_US = 1540;
  private static final BigDecimal WITHIN_MS = BigDecimal.valueOf(800);

  private final String key;
  private final ConditionSource.Sort sort;

  ConditionKind(String key, ConditionSource.Sort sort) {
    this.key = key;
    this.sort = sort;
  }

  /** Of its text. */
  public String key() {
    return key;
  }

  /** What can be asked of a sort of source. */
  public static List<ConditionKind> of(ConditionSource.Sort sort) {
    return Stream.of(values()).filter(kind -> kind.sort == sort).toList();
  }

  /** What a condition asks. */
  public static ConditionKind of(Criterion criterion) {
    if (criterion instanceof Criterion.Above) {
      return ABOVE;
    } else if (criterion instanceof Criterion.Below) {
      return BELOW;
    } else if (criterion instanceof Criterion.Between) {
      return BETWEEN;
    } else if (criterion instanceof Criterion.Lost) {
      return LOST;
    } else if (criterion instanceof Criterion.SwitchIs contact) {
      return contact.on() ? ON : OFF;
    }
    return criterion instanceof Criterion.SituationIs other
        ? other.active() ? ACTIVE : INACTIVE
        : ENDED;
  }

  /** A condition of this kind with its usual numbers. */
  public Criterion make(String subject) {
    return make(subject, new Criterion.Lost(subject));
  }

  /**
   * A condition of this kind.
   *
   * @param subject id of the input or situation
   * @param like gives its numbers as far as it has the same
   */
  public Criterion make(String subject, Criterion like) {
    int hysteresis =
        like instanceof Criterion.Width width
            ? width.hysteresisUs()
            : Criteria.DEFAULT_HYSTERESIS_US;
    return switch (this) {
      case ABOVE ->
          new Criterion.Above(
              subject, like instanceof Criterion.Above a ? a.aboveUs() : FORWARD_US, hysteresis);
      case BELOW ->
          new Criterion.Below(
              subject, like instanceof Criterion.Below b ? b.belowUs() : BACK_US, hysteresis);
      case BETWEEN ->
          like instanceof Criterion.Between b
              ? new Criterion.Between(subject, b.fromUs(), b.toUs(), hysteresis)
              : new Criterion.Between(subject, REST_FROM_US, REST_TO_US, hysteresis);
      case LOST -> new Criterion.Lost(subject);
      case ON -> new Criterion.SwitchIs(subject, true);
      case OFF -> new Criterion.SwitchIs(subject, false);
      case ACTIVE -> new Criterion.SituationIs(subject, true);
      case INACTIVE -> new Criterion.SituationIs(subject, false);
      case ENDED ->
          new Criterion.EndedWithin(
              subject, like instanceof Criterion.EndedWithin e ? e.withinMs() : WITHIN_MS);
    };
  }
}
