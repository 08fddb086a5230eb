package lampwright.app.command;

import com.google.common.collect.LinkedListMultimap;
import com.google.common.collect.ListMultimap;
import java.io.IOException;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.project.ColourReach;
import lampwright.engine.project.Project;
import lampwright.engine.project.ProjectReader;
import lampwright.engine.project.ReadResult;
import lampwright.engine.project.Severity;
import lampwright.engine.render.FrameTable;
import lampwright.engine.scene.Scene;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Says everything that is wrong with a project. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    description = {
      "Reads a project and says every problem and caution in it, each with line, column, the path of"
          + " the field, what stands there and what is allowed; then renders its scenes and says what passes"
          + " a limit of supply, wires, data line, controller or eye.",
      "Ends with exit code 1 if there is an error."
    },
    footer = {"", "Example:", "  lampwright check samples/bench-rgbw.lampwright.json"})
final class CheckCommand implements Callable<Integer> {
  private final Terminal terminal;

  @Mixin private ProjectFile file;

  CheckCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException {
    ReadResult result = ProjectReader.read(file.path());
    result.lines().forEach(terminal.err()::println);
    long errors = count(result, Severity.ERROR);
    long cautions = count(result, Severity.CAUTION);
    if (result.project().isPresent()) {
      Set<String> found = cautions(result.project().get());
      found.forEach(text -> terminal.err().println(result.source() + ": caution: " + text));
      cautions += found.size();
    }
    terminal
        .out()
        .println(
            result.source()
                + ": "
                + counted(errors, "error")
                + ", "
                + counted(cautions, "caution"));
    return result.project().isPresent() ? ExitCode.DONE : ExitCode.PROJECT_HAS_ERRORS;
  }

  // What concerns the rig alone is found in every scene, and said once.
  private Set<String> cautions(Project project) {
    Set<String> found = new LinkedHashSet<>();
    ColourReach.of(project).forEach(reach -> found.add(reach.text()));
    ListMultimap<String, String> scenesOf = LinkedListMultimap.create();
    for (int i = 0; i < project.scenes().size(); i++) {
      Scene scene = project.scenes().get(i);
      terminal.progress("measuring " + scene.id(), i, project.scenes().size());
      SceneReport report = SceneReport.of(FrameTable.of(project.rig(), scene));
      report.advice().forEach(advice -> scenesOf.put(advice.text(), scene.id()));
    }
    terminal.endProgress();
    for (String text : scenesOf.keySet()) {
      List<String> scenes = scenesOf.get(text);
      boolean all = scenes.size() == project.scenes().size();
      found.add((all ? "" : "scene " + String.join(", ", scenes) + ": ") + text);
    }
    return found;
  }

  private static long count(ReadResult result, Severity severity) {
    return result.problems().stream().filter(p -> p.severity() == severity).count();
  }

  private static String counted(long count, String what) {
    return (count == 0 ? "no" : count) + " " + what + (count == 1 ? "" : "s");
  }
}
