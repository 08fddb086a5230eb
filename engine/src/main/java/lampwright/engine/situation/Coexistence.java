package lampwright.engine.situation;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import lampwright.engine.scene.Scene;

/**
 * Which situations of a show can be active in the same frame, as far as that is known without
 * trying drives: what it rules out never happens, but not all that never happens is ruled out.
 * Immutable.
 */
public final class Coexistence {
  private final List<Situation> situations;
  private final Map<String, Integer> places = new HashMap<>();
  private final BitSet always = new BitSet();
  private final BitSet never = new BitSet();
  // Of each situation, all that are active whenever it is, itself included.
  private final List<BitSet> with = new ArrayList<>();
  // Of each, those that are not active while it is.
  private final List<BitSet> without = new ArrayList<>();

  private Coexistence(Show show) {
    situations = show.situations();
    List<Optional<SituationReach.Unseen>> unseen =
        SituationReach.of(show.rig(), scenes(show), situations);
    for (int i = 0; i < situations.size(); i++) {
      places.put(situations.get(i).id(), i);
      never.set(i, unseen.get(i).equals(Optional.of(SituationReach.Unseen.IMPOSSIBLE)));
      always.set(i, !never.get(i) && SituationReach.isAlways(situations.get(i)));
    }
    for (int i = 0; i < situations.size(); i++) {
      with.add(with(i));
    }
    for (int i = 0; i < situations.size(); i++) {
      without.add(without(i));
    }
    spread();
  }

  /** What is known of a show. */
  public static Coexistence of(Show show) {
    return new Coexistence(show);
  }

  private static List<Scene> scenes(Show show) {
    List<Scene> scenes = new ArrayList<>();
    for (int i = 0; i < show.situations().size(); i++) {
      show.scene(i).filter(scene -> !scenes.contains(scene)).ifPresent(scenes::add);
    }
    return scenes;
  }

  /** Whether a situation, by its place, is active from the first frame on, in every drive. */
  public boolean always(int situation) {
    return always.get(situation);
  }

  /** Whether a situation, by its place, is active in no frame of any drive. */
  public boolean never(int situation) {
    return never.get(situation);
  }

  /**
   * Whether it may be that of some situations exactly these are active.
   *
   * @param active by their places
   * @param of those that are looked at; {@code active} and any others
   */
  public boolean possible(BitSet active, BitSet of) {
    BitSet looked = (BitSet) of.clone();
    looked.andNot(active);
    if (active.intersects(never) || looked.intersects(always)) {
      return false;
    }
    for (int i = active.nextSetBit(0); i >= 0; i = active.nextSetBit(i + 1)) {
      if (with.get(i).intersects(looked) || without.get(i).intersects(active)) {
        return false;
      }
    }
    return true;
  }

  // A situation names only earlier ones, so that theirs are known.
  private BitSet with(int place) {
    BitSet found = new BitSet();
    found.set(place);
    Situation situation = situations.get(place);
    for (int i = 0; i < situations.size(); i++) {
      if (i != place && SituationReach.follows(situations.get(i), situation)) {
        found.set(i);
      }
    }
    if (asConditions(situation)) {
      for (Condition condition : situation.trigger().conditions()) {
        if (condition.criterion() instanceof Criterion.SituationIs is && is.active()) {
          int other = places.getOrDefault(is.other(), place);
          found.set(other);
          if (other < place) {
            found.or(with.get(other));
          }
        }
      }
    }
    return found;
  }

  private BitSet without(int place) {
    BitSet found = new BitSet();
    Situation situation = situations.get(place);
    if (!asConditions(situation)) {
      return found;
    }
    for (Condition condition : situation.trigger().conditions()) {
      boolean notActive =
          condition.criterion() instanceof Criterion.EndedWithin
              || (condition.criterion() instanceof Criterion.SituationIs is && !is.active());
      if (notActive) {
        condition.criterion().situation().map(places::get).ifPresent(found::set);
      }
    }
    for (int i = 0; i < situations.size(); i++) {
      if (i != place && asConditions(situations.get(i)) && exclude(situation, situations.get(i))) {
        found.set(i);
      }
    }
    return found;
  }

  // What one excludes, all exclude that are active only together with it, and the other way round.
  private void spread() {
    List<BitSet> direct = without.stream().map(bits -> (BitSet) bits.clone()).toList();
    for (int i = 0; i < situations.size(); i++) {
      for (int j = 0; j < situations.size(); j++) {
        if (excludes(direct, i, j) || excludes(direct, j, i)) {
          without.get(i).set(j);
        }
      }
    }
  }

  private boolean excludes(List<BitSet> direct, int one, int other) {
    BitSet companions = with.get(other);
    return with.get(one).stream().anyMatch(i -> direct.get(i).intersects(companions));
  }

  // Whether every one of its conditions is on in each frame in which it is active.
  private static boolean asConditions(Situation situation) {
    return (situation.trigger().join() == Join.ALL || situation.trigger().conditions().size() == 1)
        && !situation.toggle()
        && situation.lingerMs().signum() == 0;
  }

  private static boolean exclude(Situation one, Situation other) {
    return one.trigger().conditions().stream()
        .anyMatch(
            a ->
                other.trigger().conditions().stream()
                    .anyMatch(b -> SituationReach.exclude(a, b) || SituationReach.exclude(b, a)));
  }
}
