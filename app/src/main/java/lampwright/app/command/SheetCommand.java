package lampwright.app.command;

import java.io.IOException;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import lampwright.app.sheet.Sheets;
import lampwright.engine.document.Project;
import lampwright.exporters.CancelledException;
import lampwright.exporters.sheet.BuildSheet;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Writes the build sheet of a project. */
@Command(
    name = "sheet",
    mixinStandardHelpOptions = true,
    description = {
      "Writes the build sheet: findings, a checklist for the first power-up, chains in data order with"
          + " pixel numbers and lamps, wiring with the parts that findings ask for, pins, currents,"
          + " situations in words, and strip charts of all scenes.",
      "A *.html file needs no other file; a *.pdf prints. Both do without colour. The same project"
          + " gives the same bytes."
    },
    footer = {
      "",
      "Examples:",
      "  lampwright sheet samples/bench-rgbw.lampwright.json --to bench.pdf",
      "  lampwright sheet samples/recovery-tractor.lampwright.json --to tractor.html"
    })
final class SheetCommand implements Callable<Integer> {
  private final Terminal terminal;

  @Mixin private ProjectFile file;
  @Mixin private OutputFile output;

  SheetCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() throws IOException, CancelledException {
    Sheets.Form form = Sheets.Form.valueOf(output.form("html", "pdf").toUpperCase(Locale.ROOT));
    Optional<Project> project = file.read(terminal);
    if (project.isEmpty()) {
      return ExitCode.PROJECT_HAS_ERRORS;
    }
    BuildSheet sheet = Sheets.of(project.get(), new TerminalProgress(terminal, "packing"));
    terminal.endProgress();
    Sheets.write(sheet, form, output.path());
    output.report(terminal);
    return ExitCode.DONE;
  }
}
