package lampwright.app.workshop.edit;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Chain;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;

/** What lamps and scenes do when the parts that they rest on are changed or removed. */
final class RigEdits {
  private RigEdits() {}

  /** Changes each run of pixels; lamps without any are removed, with what they do. */
  static Project withRuns(
      Project project, Rig rig, List<Chain> chains, Function<PixelRun, Optional<PixelRun>> change) {
    List<Lamp> lamps =
        rig.lamps().stream().map(l -> runs(l, change)).flatMap(Optional::stream).toList();
    return without(project, rig, chains, rig.outputs(), lamps);
  }

  /** A lamp with each run of pixels changed; empty if none is left. */
  static Optional<Lamp> runs(Lamp lamp, Function<PixelRun, Optional<PixelRun>> change) {
    if (!(lamp.fitting() instanceof Fitting.Pixels f)) {
      return Optional.of(lamp);
    }
    List<PixelRun> kept = f.runs().stream().map(change).flatMap(Optional::stream).toList();
    return kept.isEmpty()
        ? Optional.empty()
        : Optional.of(Lamp.FITTING.with(lamp, new Fitting.Pixels(kept)));
  }

  /**
   * The rig with other parts; lamps that are gone leave the scenes, and tracks without any go too.
   */
  static Project without(
      Project project, Rig rig, List<Chain> chains, List<DriverOutput> outputs, List<Lamp> lamps) {
    Set<String> known = new HashSet<>(lamps.stream().map(Lamp::id).toList());
    List<Scene> scenes =
        tracks(
            project,
            t -> {
              List<String> kept = t.lamps().stream().filter(known::contains).toList();
              return kept.isEmpty() ? Optional.empty() : Optional.of(Track.LAMPS.with(t, kept));
            });
    return rebuilt(project, rig.with(chains, outputs, lamps), scenes);
  }

  /** Rig and scenes at once: between them tracks would name lamps that are not there. */
  static Project rebuilt(Project project, Rig rig, List<Scene> scenes) {
    return Project.SHAPE.draft(project).set(Project.RIG, rig).set(Project.SCENES, scenes).make();
  }

  /** The scenes with each track changed, or left out where the change gives none. */
  static List<Scene> tracks(Project project, Function<Track, Optional<Track>> change) {
    return project.scenes().stream()
        .map(
            s ->
                Scene.TRACKS.with(
                    s, s.tracks().stream().map(change).flatMap(Optional::stream).toList()))
        .toList();
  }
}
