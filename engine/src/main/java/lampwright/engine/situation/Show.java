package lampwright.engine.situation;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.Ordering;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import lampwright.engine.check.Checks;
import lampwright.engine.rig.Input;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;

/**
 * What a model does in its situations: its inputs, its situations with their scenes, one clock for
 * all of them, and for each lamp those that may have it. Immutable.
 */
public final class Show {
  private final Rig rig;
  private final ShowClock clock;
  private final List<Situation> situations;
  private final List<Optional<Scene>> scenes;
  private final ImmutableList<ImmutableList<Integer>> order;

  private Show(Rig rig, ShowClock clock, List<Situation> situations, List<Optional<Scene>> scenes) {
    this.rig = rig;
    this.clock = clock;
    this.situations = List.copyOf(situations);
    this.scenes = List.copyOf(scenes);
    this.order = rig.lamps().stream().map(this::order).collect(ImmutableList.toImmutableList());
  }

  /**
   * The show of a project; empty if no situation names a scene.
   *
   * @throws lampwright.engine.check.InvalidModelException if something that is named is missing, if
   *     two scenes differ in rate, or two situations of one priority have a lamp in common
   */
  public static Optional<Show> of(Rig rig, List<Scene> scenes, List<Situation> situations) {
    Checks.of("project").addAll(SituationFaults.find(rig.inputs(), scenes, situations)).done();
    ShowConflicts conflicts = ShowConflicts.of(scenes, situations);
    Checks checks = Checks.of("project");
    conflicts
        .rates()
        .forEach(
            rate ->
                checks.add(
                    "situations[" + rate.situation() + "].scene",
                    rate.scene().id(),
                    "must have the frame rate of scene " + rate.first().id()));
    conflicts
        .priorities()
        .forEach(
            equal ->
                checks.add(
                    "situations[" + equal.situation() + "].priority",
                    Integer.toString(situations.get(equal.situation()).priority()),
                    "must differ from situations[" + equal.earlier() + "]"));
    checks.done();
    List<Optional<Scene>> named =
        situations.stream().map(s -> s.scene().flatMap(id -> scene(scenes, id))).toList();
    return named.stream()
        .flatMap(Optional::stream)
        .findFirst()
        .map(scene -> new Show(rig, new ShowClock(scene.framesPerSecond()), situations, named));
  }

  /** The same; also none where they can't be played together. */
  public static Optional<Show> ifPlayable(Rig rig, List<Scene> scenes, List<Situation> situations) {
    return ShowConflicts.of(scenes, situations).none()
        ? of(rig, scenes, situations)
        : Optional.empty();
  }

  static Optional<Scene> scene(List<Scene> scenes, String id) {
    return scenes.stream().filter(scene -> scene.id().equals(id)).findFirst();
  }

  static boolean drives(Scene scene, String lamp) {
    return scene.tracks().stream().anyMatch(track -> track.lamps().contains(lamp));
  }

  private ImmutableList<Integer> order(Lamp lamp) {
    return IntStream.range(0, situations.size())
        .boxed()
        .filter(i -> scenes.get(i).filter(scene -> drives(scene, lamp.id())).isPresent())
        .sorted(Ordering.natural().reverse().onResultOf(i -> situations.get(i).priority()))
        .collect(ImmutableList.toImmutableList());
  }

  public Rig rig() {
    return rig;
  }

  public ShowClock clock() {
    return clock;
  }

  public List<Input> inputs() {
    return rig.inputs();
  }

  public List<Situation> situations() {
    return situations;
  }

  /** The first scene that a situation names. */
  public Scene firstScene() {
    return scenes.stream().flatMap(Optional::stream).findFirst().orElseThrow();
  }

  /** The scene of a situation, if it has one. */
  public Optional<Scene> scene(int situation) {
    return scenes.get(situation);
  }

  /** The situations that may have a lamp, by their places, the one of highest priority first. */
  public List<Integer> wanting(int lamp) {
    return order.get(lamp);
  }

  /** The machine at its start, before frame 0. */
  public ShowMachine machine() {
    return new ShowMachine(this);
  }

  /** The readings and situations of this show, before frame 0. */
  List<InputReading> readings() {
    List<InputReading> readings = new ArrayList<>();
    inputs().forEach(input -> readings.add(InputReading.of(input, clock)));
    return readings;
  }
}
