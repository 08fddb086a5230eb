package lampwright.app.workshop.edit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import lampwright.engine.document.Project;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.PixelRun;
import lampwright.engine.rig.Rig;
import lampwright.engine.scene.Scene;
import lampwright.engine.scene.Track;

/** What is done to lamps; what they do in scenes follows. */
public final class LampEdits {
  private LampEdits() {}

  /**
   * Makes a lamp of pixels that no lamp has.
   *
   * @param pixels their numbers
   */
  public static Project addOfPixels(Project project, String chain, Set<Integer> pixels) {
    String id = Projects.freeId("lamp", project.rig().lamps().stream().map(Lamp::id).toList());
    Lamp lamp = Lamp.ofPixels(id, runs(chain, pixels).toArray(PixelRun[]::new));
    return withLamp(project, lamp);
  }

  /** Makes a lamp of an output that no lamp has. */
  public static Project addOfOutput(Project project, String output) {
    Set<String> taken = project.rig().lamps().stream().map(Lamp::id).collect(Collectors.toSet());
    String id = taken.contains(output) ? Projects.freeId("lamp", taken) : output;
    return withLamp(project, Lamp.ofOutput(id, output));
  }

  /** Changes a lamp. */
  public static Project change(Project project, String id, UnaryOperator<Lamp> change) {
    Rig rig = project.rig();
    return Project.RIG.with(
        project,
        Rig.LAMPS.with(
            rig, rig.lamps().stream().map(l -> l.id().equals(id) ? change.apply(l) : l).toList()));
  }

  /** Renames a lamp, in the scenes too. */
  public static Project rename(Project project, String from, String to) {
    Rig rig = project.rig();
    List<Lamp> lamps =
        rig.lamps().stream().map(l -> l.id().equals(from) ? Lamp.ID.with(l, to) : l).toList();
    List<Scene> scenes =
        RigEdits.tracks(
            project,
            t ->
                Optional.of(
                    Track.LAMPS.with(
                        t, t.lamps().stream().map(l -> l.equals(from) ? to : l).toList())));
    return RigEdits.rebuilt(project, Rig.LAMPS.with(rig, lamps), scenes);
  }

  /** Removes a lamp, and what it does in the scenes. */
  public static Project remove(Project project, String lamp) {
    Rig rig = project.rig();
    return RigEdits.without(
        project,
        rig,
        rig.chains(),
        rig.outputs(),
        rig.lamps().stream().filter(l -> !l.id().equals(lamp)).toList());
  }

  private static Project withLamp(Project project, Lamp lamp) {
    List<Lamp> lamps = new ArrayList<>(project.rig().lamps());
    lamps.add(lamp);
    return Project.RIG.with(project, Rig.LAMPS.with(project.rig(), lamps));
  }

  /** Pixels of a chain as runs, in data order. */
  static List<PixelRun> runs(String chain, Set<Integer> pixels) {
    List<PixelRun> runs = new ArrayList<>();
    for (int pixel : new TreeSet<>(pixels)) {
      PixelRun last = runs.isEmpty() ? null : runs.get(runs.size() - 1);
      if (last != null && last.end() == pixel) {
        runs.set(runs.size() - 1, new PixelRun(chain, last.from(), last.count() + 1));
      } else {
        runs.add(new PixelRun(chain, pixel, 1));
      }
    }
    return runs;
  }

  /** Gives a group of lamps another name, or none. */
  public static Project renameGroup(Project project, String from, String to) {
    Rig rig = project.rig();
    return Project.RIG.with(
        project,
        Rig.LAMPS.with(
            rig,
            rig.lamps().stream()
                .map(lamp -> lamp.group().equals(from) ? Lamp.GROUP.with(lamp, to) : lamp)
                .toList()));
  }
}
