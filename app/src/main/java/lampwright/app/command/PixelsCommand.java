package lampwright.app.command;

import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import lampwright.engine.facts.SourcedNumber;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.PixelType;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Lists the built-in pixel types. */
@Command(
    name = "pixels",
    mixinStandardHelpOptions = true,
    description = {
      "Lists the built-in pixel types with their figures and the source of each.",
      "An estimate has no published source: measure a part, or check its datasheet."
    },
    footer = {"", "Examples:", "  lampwright pixels", "  lampwright pixels sk6812"})
final class PixelsCommand implements Callable<Integer> {
  private final Terminal terminal;

  @Spec private CommandSpec spec;

  @Parameters(
      arity = "0..1",
      paramLabel = "WORD",
      defaultValue = "",
      description = "lists only types whose id contains this word")
  private String word;

  PixelsCommand(Terminal terminal) {
    this.terminal = terminal;
  }

  @Override
  public Integer call() {
    String wanted = word.toLowerCase(Locale.ROOT);
    List<PixelType> found =
        BuiltInPixelTypes.all().stream().filter(type -> type.id().contains(wanted)).toList();
    if (found.isEmpty()) {
      List<String> known = BuiltInPixelTypes.ids();
      throw new ParameterException(spec.commandLine(), UnknownWord.of("WORD", word, known));
    }
    found.forEach(this::print);
    return ExitCode.DONE;
  }

  private void print(PixelType type) {
    terminal.out().println(type.id());
    for (SourcedNumber number : BuiltInPixelTypes.numbers(type.id())) {
      terminal
          .out()
          .printf(
              Locale.ROOT, "  %-14s %-10s %s%n", number.item(), number.value(), number.origin());
    }
  }
}
