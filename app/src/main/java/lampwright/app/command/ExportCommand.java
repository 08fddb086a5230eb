package lampwright.app.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import lampwright.app.export.ExportFormats;
import lampwright.app.export.ExportPart;
import lampwright.app.export.ExportRun;
import lampwright.app.review.Reviews;
import lampwright.engine.check.SafeText;
import lampwright.engine.document.Project;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.render.FrameTable;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Review;
import lampwright.engine.scene.Scene;
import lampwright.exporters.CancelledException;
import lampwright.exporters.ExportOptions;
import lampwright.exporters.Progress;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Writes scenes in the requested formats. */
@Command(
    name = "export",
    mixinStandardHelpOptions = true,
    description = {
      "Renders scenes and writes their bytes. All files are written to a temporary folder first and then"
          + " moved into place, so a failure leaves no partial and no changed file.",
      ""
    },
    footer = {
      "",
      "Examples:",
      "  lampwright export samples/recovery-tractor.lampwright.json --to out",
      "  lampwright export samples/harbour-dusk.lampwright.json --to out --as hex --at 0x4000"
    })
final class ExportCommand implements Callable<Integer> {
  private final Terminal terminal;

  private CommandSpec spec;
  @Mixin private ProjectFile file;
  @Mixin private SceneChoice choice;

  @Option(
      names = "--to",
      paramLabel = "DIR",
      required = true,
      description = "output folder; created if missing")
  private Path folder;

  @Option(
      names = "--as",
      paramLabel = "FORMAT",
      split = ",",
      description = "comma-separated formats. Default: c")
  private List<String> formats = new ArrayList<>(List.of("c"));

  @Option(
      names = "--at",
      paramLabel = "ADDRESS",
      description = "address of the first byte in hex files, such as 0x4000. Default: 0")
  private String address = "0";

  ExportCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Spec
  void spec(CommandSpec spec) {
    this.spec = spec;
    List<String> lines = new ArrayList<>(List.of("", "Formats:"));
    for (String key : ExportFormats.keys()) {
      lines.add(String.format("  %-10s%s", key, ExportFormats.summary(key)));
    }
    lines.addAll(List.of(spec.usageMessage().footer()));
    spec.usageMessage().footer(lines.toArray(String[]::new));
  }

  @Override
  public Integer call() throws IOException, CancelledException {
    checkFormats();
    ExportOptions options = options();
    Optional<Project> read = file.read(terminal);
    if (read.isEmpty()) {
      return ExitCode.PROJECT_HAS_ERRORS;
    }
    Project project = read.get();
    ExportRun run = ExportRun.of(project, choice.of(project), formats, options, folder);
    List<Path> written = new ArrayList<>();
    List<Finding> shown = List.of();
    try {
      shown = run.write(watcher(), written::add);
    } finally {
      terminal.endProgress();
      // A folder that was moved into place is there, even if what came after it failed.
      written.forEach(path -> terminal.out().println(ProjectFile.shown(path)));
    }
    review(project, run, shown);
    return ExitCode.DONE;
  }

  // What is exported is reviewed, and not the scenes that are left out.
  private void review(Project project, ExportRun run, List<Finding> shown)
      throws CancelledException {
    List<SceneReport> reports = new ArrayList<>();
    for (Scene scene : choice.of(project)) {
      terminal.progress("measuring " + scene.id(), reports.size(), project.scenes().size());
      reports.add(SceneReport.of(FrameTable.of(project.rig(), scene)));
    }
    List<Finding> findings =
        new ArrayList<>(
            Reviews.of(project, reports, new TerminalProgress(terminal, "packing all scenes")));
    terminal.endProgress();
    run.parts().forEach(part -> findings.addAll(part.facts().findings()));
    findings.addAll(shown);
    FindingText.print(file.shown(), Review.sorted(findings), terminal.err());
  }

  private ExportRun.Watcher watcher() {
    return new ExportRun.Watcher() {
      @Override
      public Progress begins(ExportPart part) {
        String what = part.scene().map(id -> id + " as ").orElse("") + part.format();
        return new TerminalProgress(terminal, what);
      }

      @Override
      public void ends() {
        terminal.endProgress();
      }
    };
  }

  private void checkFormats() {
    List<String> known = ExportFormats.keys();
    for (String key : formats) {
      if (!known.contains(key)) {
        throw wrong(UnknownWord.of("--as", key, known));
      }
    }
  }

  private ExportOptions options() {
    try {
      return ExportFormats.optionsAt(address);
    } catch (IllegalArgumentException notAnAddress) {
      throw wrong(
          "--at: "
              + SafeText.text(address)
              + ": must be an address between 0 and "
              + ExportOptions.address(ExportOptions.MAX_ADDRESS));
    }
  }

  private ParameterException wrong(String message) {
    return new ParameterException(spec.commandLine(), message);
  }
}
