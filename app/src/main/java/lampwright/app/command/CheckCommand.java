package lampwright.app.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import lampwright.app.review.Reviews;
import lampwright.engine.document.Project;
import lampwright.engine.json.ProjectReader;
import lampwright.engine.json.ReadResult;
import lampwright.engine.meter.SceneReport;
import lampwright.engine.render.FrameTable;
import lampwright.engine.review.Finding;
import lampwright.engine.review.Review;
import lampwright.engine.review.Severity;
import lampwright.engine.scene.Scene;
import lampwright.exporters.CancelledException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Lists every finding about a project. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    description = {
      "Lists every finding about a project: errors in the file with line, column and allowed values;"
          + " dangers, cautions and notes on supply, wiring, data line, controller, timeline and light,"
          + " each with its figure, limit, source and remedy. docs/findings.md explains the codes.",
      "Exit code 1 if there is an error; with --strict also if there is a danger or a caution."
    },
    footer = {
      "",
      "Examples:",
      "  lampwright check samples/bench-rgbw.lampwright.json",
      "  lampwright check samples/harbour-dusk.lampwright.json --strict --json"
    })
final class CheckCommand implements Callable<Integer> {
  /** Fields are added, never changed, while this number stays the same. */
  private static final int FORM = 1;

  private static final String JSON = "--json";
  private static final String STRICT = "--strict";

  private final Terminal terminal;

  @Mixin private ProjectFile file;

  @Option(names = JSON, description = "print the findings as JSON")
  private boolean json;

  @Option(names = STRICT, description = "exit code 1 also for dangers and cautions")
  private boolean strict;

  CheckCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  /** The command of a plain command line. */
  static Optional<CheckCommand> plain(Terminal terminal, String[] arguments) {
    return PlainWords.of(arguments, Set.of(JSON, STRICT)).map(words -> plain(terminal, words));
  }

  private static CheckCommand plain(Terminal terminal, PlainWords words) {
    CheckCommand command = new CheckCommand(terminal);
    command.file = new ProjectFile(Path.of(words.file()));
    command.json = words.flags().contains(JSON);
    command.strict = words.flags().contains(STRICT);
    return command;
  }

  @Override
  public Integer call() throws IOException, CancelledException {
    ReadResult result = ProjectReader.read(file.path());
    List<Finding> findings =
        result.project().isPresent()
            ? Review.located(review(result.project().get()), result.positions())
            : Review.ofFile(result);
    if (json) {
      PrettyJson.print(
          terminal.out(),
          to -> {
            to.writeStartObject();
            to.writeNumberProperty("lampwrightCheck", FORM);
            to.writeStringProperty("file", result.source());
            for (Severity severity : Severity.values()) {
              to.writeNumberProperty(severity.key() + "s", count(findings, result, severity));
            }
            FindingJson.write(to, findings);
            to.writeEndObject();
          });
    } else {
      print(result, findings);
    }
    boolean bad =
        result.project().isEmpty()
            || findings.stream()
                .anyMatch(
                    f -> f.severity() == Severity.ERROR || (strict && f.severity().problem()));
    return bad ? ExitCode.PROJECT_HAS_ERRORS : ExitCode.DONE;
  }

  private List<Finding> review(Project project) throws CancelledException {
    List<SceneReport> reports = new ArrayList<>();
    for (int i = 0; i < project.scenes().size(); i++) {
      Scene scene = project.scenes().get(i);
      terminal.progress("measuring " + scene.id(), i, project.scenes().size());
      reports.add(SceneReport.of(FrameTable.of(project.rig(), scene)));
    }
    List<Finding> findings =
        Reviews.of(project, reports, new TerminalProgress(terminal, "packing"));
    terminal.endProgress();
    return findings;
  }

  private void print(ReadResult result, List<Finding> findings) {
    if (result.project().isPresent()) {
      FindingText.print(result.source(), findings, terminal.err());
    } else {
      result.lines().forEach(terminal.err()::println);
    }
    String counts =
        Arrays.stream(Severity.values())
            .map(severity -> counted(count(findings, result, severity), severity.key()))
            .collect(Collectors.joining(", "));
    terminal.out().println(result.source() + ": " + counts);
  }

  private static long count(List<Finding> findings, ReadResult result, Severity severity) {
    long listed = findings.stream().filter(f -> f.severity() == severity).count();
    return severity == Severity.ERROR ? listed + result.unlisted() : listed;
  }

  private static String counted(long count, String what) {
    return String.format(
        Locale.ROOT,
        "%s %s%s",
        count == 0 ? "no" : Long.toString(count),
        what,
        count == 1 ? "" : "s");
  }
}
