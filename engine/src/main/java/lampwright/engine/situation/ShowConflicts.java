package lampwright.engine.situation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;

/**
 * What keeps situations that are valid each from being played together. It can come and go with
 * each edit, so it is no fault of the project.
 *
 * @param rates scenes of another rate than the first that a situation names
 * @param priorities situations of the priority of an earlier one with which they have a lamp in
 *     common
 */
public record ShowConflicts(List<UnlikeRate> rates, List<EqualPriority> priorities) {
  /**
   * A scene of another rate.
   *
   * @param situation that names it, by its place
   */
  public record UnlikeRate(int situation, Scene scene, Scene first) {}

  /**
   * Two situations of one priority.
   *
   * @param situation the later one, by its place
   * @param earlier the earlier one
   * @param lamp id of a lamp that both have
   */
  public record EqualPriority(int situation, int earlier, String lamp) {}

  /** The conflicts of these, whatever of them is missing left out. */
  public static ShowConflicts of(List<Scene> scenes, List<Situation> situations) {
    List<Optional<Scene>> named =
        situations.stream().map(s -> s.scene().flatMap(id -> Show.scene(scenes, id))).toList();
    Optional<Scene> first = named.stream().flatMap(Optional::stream).findFirst();
    List<UnlikeRate> rates = new ArrayList<>();
    List<EqualPriority> priorities = new ArrayList<>();
    for (int i = 0; i < situations.size(); i++) {
      Optional<Scene> scene = named.get(i);
      if (scene.isEmpty()) {
        continue;
      }
      // As numbers: 50 and 50.0 are one rate.
      if (scene.get().framesPerSecond().compareTo(first.orElseThrow().framesPerSecond()) != 0) {
        rates.add(new UnlikeRate(i, scene.get(), first.orElseThrow()));
      }
      for (int j = 0; j < i; j++) {
        boolean equal = situations.get(i).priority() == situations.get(j).priority();
        Optional<String> lamp =
            equal ? named.get(j).flatMap(other -> common(scene.get(), other)) : Optional.empty();
        if (lamp.isPresent()) {
          priorities.add(new EqualPriority(i, j, lamp.get()));
          break;
        }
      }
    }
    return new ShowConflicts(List.copyOf(rates), List.copyOf(priorities));
  }

  /** Whether nothing keeps them from being played. */
  public boolean none() {
    return rates.isEmpty() && priorities.isEmpty();
  }

  private static Optional<String> common(Scene one, Scene other) {
    return one.tracks().stream()
        .map(Track::lamps)
        .flatMap(List::stream)
        .filter(lamp -> Show.drives(other, lamp))
        .findFirst();
  }
}
