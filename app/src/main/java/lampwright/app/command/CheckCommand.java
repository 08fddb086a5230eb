package lampwright.app.command;

import java.io.IOException;
import java.util.concurrent.Callable;
import lampwright.engine.project.ProjectReader;
import lampwright.engine.project.ReadResult;
import lampwright.engine.project.Severity;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Says everything that is wrong with a project. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    description = {
      "Reads a project and says every problem and caution in it, each with line, column, the path of"
          + " the field, what stands there and what is allowed.",
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
    terminal
        .out()
        .println(
            result.source()
                + ": "
                + counted(errors, "error")
                + ", "
                + counted(count(result, Severity.CAUTION), "caution"));
    return result.project().isPresent() ? ExitCode.DONE : ExitCode.PROJECT_HAS_ERRORS;
  }

  private static long count(ReadResult result, Severity severity) {
    return result.problems().stream().filter(p -> p.severity() == severity).count();
  }

  private static String counted(long count, String what) {
    return (count == 0 ? "no" : count) + " " + what + (count == 1 ? "" : "s");
  }
}
