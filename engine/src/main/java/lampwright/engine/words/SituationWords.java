package lampwright.engine.words;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.stream.Collectors;
import lampwright.engine.situation.Change;
import lampwright.engine.situation.Condition;
import lampwright.engine.situation.Criterion;
import lampwright.engine.situation.Join;
import lampwright.engine.situation.Situation;

/** Situations and their conditions in words. */
public final class SituationWords {
  private final TextBundle texts =
      TextBundle.of(
          ResourceBundle.getBundle(
              "lampwright.engine.words.situations", Locale.ROOT, SituationWords.class.getModule()));

  /** Words that have no state. */
  public SituationWords() {}

  /** When a situation is active: {@code throttle above 1540 us, for 500 ms; lingers 600 ms}. */
  public String when(Situation situation) {
    List<Condition> conditions = situation.trigger().conditions();
    List<String> parts = new ArrayList<>();
    parts.add(
        conditions.isEmpty()
            ? texts.get("when.always")
            : conditions.stream()
                .map(this::condition)
                .collect(Collectors.joining(texts.get("when." + join(situation)))));
    if (situation.afterMs().signum() > 0) {
      parts.add(texts.get("when.after", plain(situation.afterMs())));
    }
    if (situation.toggle()) {
      parts.add(texts.get("when.toggle"));
    } else if (situation.lingerMs().signum() > 0) {
      parts.add(texts.get("when.linger", plain(situation.lingerMs())));
    }
    return String.join("; ", parts);
  }

  private static String join(Situation situation) {
    return situation.trigger().join() == Join.ANY ? "or" : "and";
  }

  /** Why a situation began or ended. */
  public String why(Change change) {
    List<Condition> conditions = change.situation().trigger().conditions();
    String deciders =
        change.deciders().stream()
            .map(i -> condition(conditions.get(i)))
            .collect(Collectors.joining("; "));
    String named = deciders.isEmpty() ? texts.get("when.always") : deciders;
    return switch (change.cause()) {
      case CONDITIONS_HOLD -> named;
      case CONDITIONS_ENDED -> texts.get("why.ended", named);
      case LINGER_OVER -> texts.get("why.lingered", named, plain(change.situation().lingerMs()));
      case TOGGLED -> texts.get("why.toggled", named);
    };
  }

  /** A condition: {@code throttle between 1460 and 1540 us, 2 taps}. */
  public String condition(Condition condition) {
    String words = criterion(condition.criterion());
    return condition.taps().isEmpty()
        ? words
        : texts.get("condition.taps", words, condition.taps().getAsInt());
  }

  private String criterion(Criterion criterion) {
    if (criterion instanceof Criterion.Above a) {
      return texts.get("condition.above", a.channel(), us(a.aboveUs()));
    } else if (criterion instanceof Criterion.Below b) {
      return texts.get("condition.below", b.channel(), us(b.belowUs()));
    } else if (criterion instanceof Criterion.Between b) {
      return texts.get("condition.between", b.channel(), us(b.fromUs()), us(b.toUs()));
    } else if (criterion instanceof Criterion.Lost lost) {
      return texts.get("condition.lost", lost.channel());
    } else if (criterion instanceof Criterion.SwitchIs contact) {
      return texts.get(contact.on() ? "condition.on" : "condition.off", contact.contact());
    } else if (criterion instanceof Criterion.SituationIs other) {
      return texts.get(other.active() ? "condition.active" : "condition.inactive", other.other());
    }
    Criterion.EndedWithin ended = (Criterion.EndedWithin) criterion;
    return texts.get("condition.ended", ended.other(), plain(ended.withinMs()));
  }

  private static String us(int width) {
    return Integer.toString(width);
  }

  private static String plain(BigDecimal ms) {
    return ms.toPlainString();
  }
}
