package lampwright.app.workshop.edit;

import com.google.common.collect.ImmutableSet;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Lamp;
import lampwright.engine.scene.Scene;

/**
 * What is selected: a scene, and lamps and cues of it, in the order in which they were selected.
 * The last one is the one that forms show.
 *
 * @param scene id of the scene on the bench; empty if the project has none
 * @param lamps ids
 * @param cues of that scene
 */
public record Selection(
    Optional<String> scene, ImmutableSet<String> lamps, ImmutableSet<CueRef> cues) {
  public static final Selection NOTHING =
      new Selection(Optional.empty(), ImmutableSet.of(), ImmutableSet.of());

  /** The first scene, nothing else. */
  public static Selection first(Project project) {
    return NOTHING.within(project);
  }

  /** Another scene, nothing of it selected; the lamps stay. */
  public Selection withScene(String newScene) {
    return new Selection(Optional.of(newScene), lamps, ImmutableSet.of());
  }

  public Selection withLamps(Collection<String> newLamps) {
    return new Selection(scene, ImmutableSet.copyOf(newLamps), cues);
  }

  public Selection withCues(Collection<CueRef> newCues) {
    return new Selection(scene, lamps, ImmutableSet.copyOf(newCues));
  }

  /** The lamp selected last. */
  public Optional<String> lamp() {
    return last(lamps.asList());
  }

  /** The cue selected last. */
  public Optional<CueRef> cue() {
    return last(cues.asList());
  }

  /** What of it a project has; its first scene if it has not that scene. */
  public Selection within(Project project) {
    Optional<Scene> kept = scene.flatMap(project::scene);
    Optional<Scene> now = kept.or(() -> project.scenes().stream().findFirst());
    Set<String> known =
        project.rig().lamps().stream().map(Lamp::id).collect(Collectors.toUnmodifiableSet());
    return new Selection(
        now.map(Scene::id),
        lamps.stream().filter(known::contains).collect(ImmutableSet.toImmutableSet()),
        kept.map(
                s ->
                    cues.stream()
                        .filter(c -> c.in(s).isPresent())
                        .collect(ImmutableSet.toImmutableSet()))
            .orElse(ImmutableSet.of()));
  }

  private static <T> Optional<T> last(List<T> all) {
    return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1));
  }
}
