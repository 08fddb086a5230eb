package lampwright.engine.situation;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import lampwright.engine.rig.Centre;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.InputKind;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;

/**
 * Finds situations that certainly can't be seen. Not all of them: that would take every drive there
 * can be.
 */
public final class SituationReach {
  /** Why a situation can't be seen. */
  public enum Unseen {
    /** Its scene has no track. */
    NO_TRACK,
    /** Its conditions can't hold. */
    IMPOSSIBLE,
    /** Others of higher priority have all its lamps whenever it is active. */
    COVERED
  }

  // How far the centre that is learnt can move a width.
  private static final int CENTRE_REACH_US = 100;

  private final Rig rig;
  private final List<Scene> scenes;
  private final List<Situation> situations;
  private final Set<String> never = new HashSet<>();
  private final Set<String> always = new HashSet<>();

  private SituationReach(Rig rig, List<Scene> scenes, List<Situation> situations) {
    this.rig = rig;
    this.scenes = scenes;
    this.situations = situations;
  }

  /** For each situation in order, why it can't be seen, if that is known. */
  public static List<Optional<Unseen>> of(Rig rig, List<Scene> scenes, List<Situation> situations) {
    SituationReach reach = new SituationReach(rig, scenes, situations);
    List<Optional<Unseen>> found = new ArrayList<>();
    situations.forEach(situation -> found.add(reach.unseen(situation)));
    return found;
  }

  private Optional<Unseen> unseen(Situation situation) {
    if (impossible(situation)) {
      never.add(situation.id());
    } else if (isAlways(situation)) {
      always.add(situation.id());
    }
    Optional<Scene> scene = situation.scene().flatMap(id -> Show.scene(scenes, id));
    if (never.contains(situation.id())) {
      return Optional.of(Unseen.IMPOSSIBLE);
    } else if (scene.isEmpty()) {
      return Optional.empty();
    } else if (scene.get().tracks().isEmpty()) {
      return Optional.of(Unseen.NO_TRACK);
    }
    boolean covered =
        scene.get().tracks().stream()
            .flatMap(track -> track.lamps().stream())
            .distinct()
            .allMatch(lamp -> situations.stream().anyMatch(o -> covers(o, situation, lamp)));
    return covered ? Optional.of(Unseen.COVERED) : Optional.empty();
  }

  static boolean isAlways(Situation situation) {
    return situation.trigger().conditions().isEmpty() && situation.afterMs().signum() == 0;
  }

  private boolean covers(Situation other, Situation situation, String lamp) {
    return other.priority() > situation.priority()
        && other.scene().flatMap(id -> Show.scene(scenes, id)).stream()
            .anyMatch(scene -> Show.drives(scene, lamp))
        && follows(other, situation);
  }

  /** Whether whatever makes a situation active makes another active as soon, and as long. */
  static boolean follows(Situation other, Situation situation) {
    return isAlways(other)
        || (other.trigger().join() == Join.ALL
            && situation.trigger().join() == Join.ALL
            && !other.toggle()
            && !situation.toggle()
            && situation.lingerMs().compareTo(other.lingerMs()) <= 0
            && other.afterMs().compareTo(situation.afterMs()) <= 0
            && situation.trigger().conditions().containsAll(other.trigger().conditions()));
  }

  private boolean impossible(Situation situation) {
    List<Condition> conditions = situation.trigger().conditions();
    if (conditions.isEmpty()) {
      return false;
    }
    if (situation.trigger().join() == Join.ANY) {
      return conditions.stream().allMatch(this::impossible);
    }
    boolean brief = conditions.stream().anyMatch(condition -> condition.taps().isPresent());
    // The frame after taps is the first that a delay can end in.
    return (brief && situation.afterMs().signum() > 0)
        || conditions.stream().anyMatch(this::impossible)
        || conditions.stream()
            .anyMatch(one -> conditions.stream().anyMatch(other -> exclude(one, other)));
  }

  private boolean impossible(Condition condition) {
    Criterion criterion = condition.criterion();
    if (criterion instanceof Criterion.Width width) {
      Span span = Span.on(width);
      int reach = centreReach(width);
      return span.from > ChannelReading.GREATEST_US + reach
          || span.to < ChannelReading.LEAST_US - reach;
    } else if (criterion instanceof Criterion.Lost lost) {
      return rig.inputs().stream()
          .anyMatch(in -> in.id().equals(lost.channel()) && in.kind() == InputKind.SWITCH);
    } else if (criterion instanceof Criterion.SituationIs other) {
      return (other.active() ? never : always).contains(other.other());
    } else if (criterion instanceof Criterion.EndedWithin ended) {
      return ended.withinMs().signum() == 0
          || never.contains(ended.other())
          || always.contains(ended.other());
    }
    return false;
  }

  private int centreReach(Criterion.Width width) {
    return rig.inputs().stream()
            .filter(input -> width.input().equals(Optional.of(input.id())))
            .map(Input::centre)
            .anyMatch(Centre.POWER_UP::equals)
        ? CENTRE_REACH_US
        : 0;
  }

  /** Whether two conditions are never on in the same frame. */
  static boolean exclude(Condition one, Condition other) {
    if (one.taps().isPresent() || other.taps().isPresent()) {
      return false;
    }
    Criterion a = one.criterion();
    Criterion b = other.criterion();
    if (!a.input().equals(b.input()) || !a.situation().equals(b.situation())) {
      return false;
    } else if (a instanceof Criterion.Width width) {
      return b instanceof Criterion.Lost
          || (b instanceof Criterion.Width w && !Span.kept(width).meets(Span.kept(w)));
    } else if (a instanceof Criterion.SwitchIs contact) {
      return b instanceof Criterion.SwitchIs c && c.on() != contact.on();
    } else if (a instanceof Criterion.SituationIs state) {
      return (b instanceof Criterion.SituationIs s && s.active() != state.active())
          || (state.active() && b instanceof Criterion.EndedWithin);
    }
    return false;
  }

  /** Widths from one to another, both included. */
  private record Span(int from, int to) {
    /** At which it goes on. */
    static Span on(Criterion.Width width) {
      return width instanceof Criterion.Between
          ? of(width, 0)
          // Above and below leave their own end out.
          : of(width, -1);
    }

    /** At which it can be on. */
    static Span kept(Criterion.Width width) {
      return of(width, width.hysteresisUs());
    }

    private static Span of(Criterion.Width width, int wider) {
      if (width instanceof Criterion.Above above) {
        return new Span(above.aboveUs() - wider, Integer.MAX_VALUE);
      } else if (width instanceof Criterion.Below below) {
        return new Span(Integer.MIN_VALUE, below.belowUs() + wider);
      }
      Criterion.Between between = (Criterion.Between) width;
      return new Span(between.fromUs() - wider, between.toUs() + wider);
    }

    boolean meets(Span other) {
      return from <= other.to && other.from <= to;
    }
  }
}
