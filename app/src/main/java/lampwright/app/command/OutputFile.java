package lampwright.app.command;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.Spec.Target;

/** The one file that a command writes; the end of its name is its form. */
final class OutputFile {
  @Spec(Target.MIXEE)
  private CommandSpec spec;

  @Option(
      names = "--to",
      paramLabel = "FILE",
      required = true,
      description = "output file, whose name ends with its form; its folder is created if missing")
  private Path file;

  /** The file as named on the command line. */
  Path path() {
    return file;
  }

  /**
   * Its form: what the name has behind its last point, in lower case.
   *
   * @param known the forms that there are
   * @throws ParameterException if it is none of them
   */
  String form(String... known) {
    String name = String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT);
    String form = name.substring(name.lastIndexOf('.') + 1);
    if (name.indexOf('.') < 0 || !List.of(known).contains(form)) {
      String last = known[known.length - 1];
      throw new ParameterException(
          spec.commandLine(),
          "--to: "
              + ProjectFile.shown(file)
              + ": must end with "
              + Arrays.stream(known, 0, known.length - 1)
                  .map(one -> "." + one)
                  .collect(Collectors.joining(", "))
              + " or ."
              + last);
    }
    return form;
  }

  /** Names it on standard output, as an export names its files. */
  void report(Terminal terminal) {
    terminal.out().println(ProjectFile.shown(file));
  }
}
