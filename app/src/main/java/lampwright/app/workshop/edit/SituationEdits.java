package lampwright.app.workshop.edit;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import lampwright.engine.document.Project;
import lampwright.engine.scene.Scene;
import lampwright.engine.situation.Condition;
import lampwright.engine.situation.Criterion;
import lampwright.engine.situation.Situation;
import lampwright.engine.situation.Trigger;

/**
 * What is done to situations. A condition may name only situations earlier in the list; here that
 * order follows by itself, so that nobody has to keep it by hand.
 */
public final class SituationEdits {
  private static final int STEP = 10;
  private static final int MOST = 1000;

  private SituationEdits() {}

  /** The situations by priority, the highest first; equal ones in the order of the list. */
  public static List<Situation> ladder(Project project) {
    return project.situations().stream()
        .sorted(Comparator.comparing(Situation::priority).reversed())
        .toList();
  }

  /** A situation by its id. */
  public static Optional<Situation> find(Project project, String id) {
    return project.situations().stream().filter(s -> s.id().equals(id)).findFirst();
  }

  /** Adds one above all others, without a scene: it takes no lamp until it gets one. */
  public static Project add(Project project, String id) {
    int top = project.situations().stream().mapToInt(Situation::priority).max().orElse(-STEP);
    List<Situation> all = new ArrayList<>(project.situations());
    all.add(Situation.PRIORITY.with(Situation.of(id, Trigger.ALWAYS), Math.min(MOST, top + STEP)));
    return Project.SITUATIONS.with(project, all);
  }

  /** Changes one. */
  public static Project change(Project project, String id, UnaryOperator<Situation> change) {
    return Project.SITUATIONS.with(
        project,
        inOrder(
            project.situations().stream()
                .map(s -> s.id().equals(id) ? change.apply(s) : s)
                .toList()));
  }

  /** Gives one another id, in the conditions of others too. */
  public static Project rename(Project project, String from, String to) {
    return Project.SITUATIONS.with(
        project,
        project.situations().stream()
            .map(s -> s.id().equals(from) ? Situation.ID.with(s, to) : s)
            .map(s -> withCriteria(s, c -> renamed(c, from, to)))
            .toList());
  }

  private static Criterion renamed(Criterion criterion, String from, String to) {
    if (!criterion.situation().equals(Optional.of(from))) {
      return criterion;
    }
    return ConditionKind.of(criterion).make(to, criterion);
  }

  /** Removes one; refused by the model while others name it. */
  public static Project remove(Project project, String id) {
    return Project.SITUATIONS.with(
        project, project.situations().stream().filter(s -> !s.id().equals(id)).toList());
  }

  /** Those whose conditions name a situation. */
  public static List<String> naming(Project project, String id) {
    return project.situations().stream()
        .filter(s -> names(s).contains(id))
        .map(Situation::id)
        .toList();
  }

  /** Those that show a scene. */
  public static List<String> showing(Project project, String scene) {
    return project.situations().stream()
        .filter(s -> s.scene().equals(Optional.of(scene)))
        .map(Situation::id)
        .toList();
  }

  /** Removes a scene; situations that show it light nothing then. */
  public static Project withoutScene(Project project, String scene) {
    List<Scene> scenes = project.scenes().stream().filter(s -> !s.id().equals(scene)).toList();
    // At once: between the two something would name what is not there.
    return Project.SHAPE
        .draft(project)
        .set(Project.SCENES, scenes)
        .set(
            Project.SITUATIONS,
            project.situations().stream()
                .map(
                    s ->
                        s.scene().equals(Optional.of(scene))
                            ? Situation.SCENE.with(s, Optional.empty())
                            : s)
                .toList())
        .make();
  }

  /**
   * Moves one past its neighbour on the ladder. Two that differ exchange their priorities; equal
   * ones, and what would be equal then, are parted by as little as that takes.
   *
   * @param by 1 up, -1 down
   */
  public static Project raise(Project project, String id, int by) {
    List<Situation> up = new ArrayList<>(ladder(project));
    Collections.reverse(up);
    int at = up.stream().map(Situation::id).toList().indexOf(id);
    int to = at + by;
    if (at < 0 || to < 0 || to >= up.size()) {
      return project;
    }
    int low = Math.min(at, to);
    int[] priorities = up.stream().mapToInt(Situation::priority).toArray();
    Collections.swap(up, at, to);
    // Equal ones are in the order of the list, which does not follow.
    for (int i = Math.max(1, low); i < priorities.length; i++) {
      if (priorities[i] <= priorities[i - 1]) {
        priorities[i] = priorities[i - 1] + 1;
      } else if (i > low + 1) {
        break;
      }
    }
    if (priorities[priorities.length - 1] > MOST) {
      for (int i = 0; i < priorities.length; i++) {
        priorities[i] = i * STEP;
      }
    }
    Map<String, Integer> wanted = new HashMap<>();
    for (int i = 0; i < priorities.length; i++) {
      wanted.put(up.get(i).id(), priorities[i]);
    }
    return Project.SITUATIONS.with(
        project,
        project.situations().stream()
            .map(s -> Situation.PRIORITY.with(s, wanted.getOrDefault(s.id(), s.priority())))
            .toList());
  }

  /** The situations that a condition of one may name: all that don't look at it themselves. */
  public static List<String> visible(Project project, String id) {
    Set<String> looking = new HashSet<>(Set.of(id));
    // Those after it in the list only: none names a later one.
    for (Situation s : project.situations()) {
      if (names(s).stream().anyMatch(looking::contains)) {
        looking.add(s.id());
      }
    }
    return project.situations().stream()
        .map(Situation::id)
        .filter(s -> !looking.contains(s))
        .toList();
  }

  /** Gives a situation other conditions, joined as before. */
  public static Situation withConditions(Situation situation, List<Condition> conditions) {
    return Situation.TRIGGER.with(situation, new Trigger(situation.trigger().join(), conditions));
  }

  /** Changes what each condition of a situation looks at. */
  static Situation withCriteria(Situation situation, UnaryOperator<Criterion> change) {
    return withConditions(
        situation,
        situation.trigger().conditions().stream()
            .map(c -> new Condition(change.apply(c.criterion()), c.taps()))
            .toList());
  }

  private static List<String> names(Situation situation) {
    return situation.trigger().conditions().stream()
        .flatMap(c -> c.criterion().situation().stream())
        .toList();
  }

  // What is named comes first, all else as it was. A circle stays as it is: the model refuses it.
  private static List<Situation> inOrder(List<Situation> all) {
    List<Situation> ordered = new ArrayList<>();
    Set<String> known = new HashSet<>();
    all.forEach(s -> place(s, all, known, ordered));
    return ordered;
  }

  private static void place(
      Situation situation, List<Situation> all, Set<String> known, List<Situation> into) {
    if (!known.add(situation.id())) {
      return;
    }
    List<String> first = names(situation);
    all.stream().filter(s -> first.contains(s.id())).forEach(s -> place(s, all, known, into));
    into.add(situation);
  }
}
