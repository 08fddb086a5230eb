package lampwright.app.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.Callable;
import lampwright.app.review.Reviews;
import lampwright.engine.document.Project;
import lampwright.engine.meter.ShowMeasure;
import lampwright.engine.render.FrameTable;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Review;
import lampwright.engine.scene.Scene;
import lampwright.exporters.CancelledException;
import lampwright.exporters.firmware.FirmwareMemory;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Measures scenes. */
@Command(
    name = "measure",
    mixinStandardHelpOptions = true,
    description = {
      "Renders scenes and measures them: current, voltage at the pixels, data transfer time, memory,"
          + " flash rates and colours.",
      "Findings come first, each with figure, limit, source and remedy."
    },
    footer = {
      "",
      "Examples:",
      "  lampwright measure samples/recovery-tractor.lampwright.json --scene working",
      "  lampwright measure samples/harbour-dusk.lampwright.json --json"
    })
final class MeasureCommand implements Callable<Integer> {
  private static final String JSON = "--json";

  private final Terminal terminal;

  @Mixin private ProjectFile file;
  @Mixin private SceneChoice choice;

  @Option(names = JSON, description = "print the figures as JSON")
  private boolean json;

  MeasureCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  /** The command of a plain command line, which measures every scene. */
  static Optional<MeasureCommand> plain(Terminal terminal, String[] arguments) {
    return PlainWords.of(arguments, Set.of(JSON)).map(words -> plain(terminal, words));
  }

  private static MeasureCommand plain(Terminal terminal, PlainWords words) {
    MeasureCommand command = new MeasureCommand(terminal);
    command.file = new ProjectFile(Path.of(words.file()));
    command.choice = new SceneChoice();
    command.json = words.flags().contains(JSON);
    return command;
  }

  @Override
  public Integer call() throws IOException, CancelledException {
    Optional<Project> read = file.read(terminal);
    if (read.isEmpty()) {
      return ExitCode.PROJECT_HAS_ERRORS;
    }
    Project project = read.get();
    List<Measured> reports = new ArrayList<>();
    for (Scene scene : choice.of(project)) {
      reports.add(
          Measured.of(
              project,
              FrameTable.of(project.rig(), scene),
              new TerminalProgress(terminal, "measuring " + scene.id())));
    }
    FirmwareMemory.Known memory =
        FirmwareMemory.known(
            project,
            choice.of(project),
            oneByOne(reports),
            new TerminalProgress(terminal, "packing all scenes"));
    List<Finding> ofProject = new ArrayList<>(Reviews.ofProject(project, memory));
    Optional<ShowMeasure> show = Review.measureShow(project);
    show.ifPresent(of -> ofProject.addAll(Review.ofShow(project, of)));
    List<Finding> findings = Review.sorted(ofProject);
    terminal.endProgress();
    if (json) {
      MeasureJson.write(project, findings, show, memory.taken(), reports, terminal.out());
    } else {
      new MeasureText(terminal.out()).write(project, findings, show, memory.taken(), reports);
    }
    return ExitCode.DONE;
  }

  /** What the scenes take packed one by one; empty if one can't be packed. */
  private static OptionalLong oneByOne(List<Measured> reports) {
    long bytes = 0;
    for (Measured measured : reports) {
      if (measured.packedBytes().isEmpty()) {
        return OptionalLong.empty();
      }
      bytes += measured.packedBytes().getAsInt();
    }
    return OptionalLong.of(bytes);
  }
}
