package lampwright.app.workshop.edit;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import lampwright.engine.document.Project;
import lampwright.engine.rig.DriverOutput;
import lampwright.engine.rig.Fitting;
import lampwright.engine.rig.Lamp;
import lampwright.engine.rig.Rig;

/** What is done to driver outputs; their lamps, and what these do in scenes, follow. */
public final class OutputEdits {
  private OutputEdits() {}

  /** Adds a driver output. */
  public static Project add(Project project) {
    Rig rig = project.rig();
    List<DriverOutput> outputs = new ArrayList<>(rig.outputs());
    outputs.add(
        DriverOutput.of(
            Projects.freeId("output", outputs.stream().map(DriverOutput::id).toList())));
    return Project.RIG.with(project, Rig.OUTPUTS.with(rig, outputs));
  }

  /** Changes an output. */
  public static Project change(Project project, String id, UnaryOperator<DriverOutput> change) {
    Rig rig = project.rig();
    return Project.RIG.with(
        project,
        Rig.OUTPUTS.with(
            rig,
            rig.outputs().stream().map(o -> o.id().equals(id) ? change.apply(o) : o).toList()));
  }

  /** Renames an output, in its lamp too. */
  public static Project rename(Project project, String from, String to) {
    Rig rig = project.rig();
    List<DriverOutput> outputs =
        rig.outputs().stream()
            .map(o -> o.id().equals(from) ? DriverOutput.ID.with(o, to) : o)
            .toList();
    List<Lamp> lamps =
        rig.lamps().stream()
            .map(
                l ->
                    l.fitting() instanceof Fitting.Output f && f.output().equals(from)
                        ? Lamp.FITTING.with(l, new Fitting.Output(to))
                        : l)
            .toList();
    return Project.RIG.with(project, rig.with(rig.chains(), outputs, lamps));
  }

  /** Removes an output and its lamp. */
  public static Project remove(Project project, String output) {
    Rig rig = project.rig();
    List<DriverOutput> outputs =
        rig.outputs().stream().filter(o -> !o.id().equals(output)).toList();
    List<Lamp> lamps =
        rig.lamps().stream()
            .filter(l -> !(l.fitting() instanceof Fitting.Output f && f.output().equals(output)))
            .toList();
    return RigEdits.without(project, rig, rig.chains(), outputs, lamps);
  }
}
