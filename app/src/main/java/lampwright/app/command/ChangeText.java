package lampwright.app.command;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.stream.Collectors;
import lampwright.engine.situation.Change;
import lampwright.engine.situation.Condition;
import lampwright.engine.situation.Criterion;
import lampwright.engine.situation.ShowClock;
import lampwright.engine.situation.Situation;

/** A change of a situation as a line of a log. */
final class ChangeText {
  private ChangeText() {}

  /** As in {@code frame 75 (1.500 s): braking begins: throttle between 1460 and 1540 us}. */
  static String line(Change change, ShowClock clock) {
    BigDecimal seconds =
        BigDecimal.valueOf(change.frame()).divide(clock.framesPerSecond(), 3, RoundingMode.HALF_UP);
    return "frame "
        + change.frame()
        + " ("
        + seconds.toPlainString()
        + " s): "
        + change.situation().id()
        + (change.begins() ? " begins" : " ends")
        + ": "
        + reason(change);
  }

  private static String reason(Change change) {
    Situation situation = change.situation();
    List<Condition> conditions = situation.trigger().conditions();
    String deciders =
        change.deciders().stream()
            .map(i -> words(conditions.get(i)))
            .collect(Collectors.joining("; "));
    String delay =
        situation.afterMs().signum() == 0
            ? ""
            : ", for " + situation.afterMs().toPlainString() + " ms";
    return switch (change.cause()) {
      case CONDITIONS_HOLD -> (deciders.isEmpty() ? "always" : deciders) + delay;
      case CONDITIONS_ENDED -> "no longer " + deciders;
      case LINGER_OVER ->
          "no longer " + deciders + ", since " + situation.lingerMs().toPlainString() + " ms";
      case TOGGLED -> "toggled: " + (deciders.isEmpty() ? "always" : deciders) + delay;
    };
  }

  /** As in {@code throttle between 1460 and 1540 us, 2 taps}. */
  static String words(Condition condition) {
    String taps =
        condition.taps().isEmpty()
            ? ""
            : ", "
                + condition.taps().getAsInt()
                + (condition.taps().getAsInt() == 1 ? " tap" : " taps");
    return words(condition.criterion()) + taps;
  }

  private static String words(Criterion criterion) {
    if (criterion instanceof Criterion.Above above) {
      return above.channel() + " above " + above.aboveUs() + " us";
    } else if (criterion instanceof Criterion.Below below) {
      return below.channel() + " below " + below.belowUs() + " us";
    } else if (criterion instanceof Criterion.Between between) {
      return between.channel() + " between " + between.fromUs() + " and " + between.toUs() + " us";
    } else if (criterion instanceof Criterion.Lost lost) {
      return lost.channel() + " lost";
    } else if (criterion instanceof Criterion.SwitchIs contact) {
      return contact.contact() + (contact.on() ? " on" : " off");
    } else if (criterion instanceof Criterion.SituationIs other) {
      return other.other() + (other.active() ? " active" : " inactive");
    }
    Criterion.EndedWithin ended = (Criterion.EndedWithin) criterion;
    return ended.other() + " ended within " + ended.withinMs().toPlainString() + " ms";
  }
}
