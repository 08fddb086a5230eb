package lampwright.app.command;

import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import lampwright.engine.check.SafeText;
import lampwright.engine.facts.SourcedNumber;
import lampwright.engine.rig.BuiltInPixelTypes;
import lampwright.engine.rig.PixelType;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Lists the pixel types that every project knows. */
@Command(
    name = "pixels",
    mixinStandardHelpOptions = true,
    description = {
      "Lists the built-in pixel types, their numbers and where these come from.",
      "An estimate was not found in a published document: measure a piece, or look it up in the"
          + " datasheet of your part."
    },
    footer = {"", "Examples:", "  lampwright pixels", "  lampwright pixels sk6812"})
final class PixelsCommand implements Callable<Integer> {
  private final Terminal terminal;

  @Spec private CommandSpec spec;

  @Parameters(
      arity = "0..1",
      paramLabel = "WORD",
      defaultValue = "",
      description = "lists only types with this word in their id")
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
      String known =
          BuiltInPixelTypes.all().stream().map(PixelType::id).collect(Collectors.joining(", "));
      throw new ParameterException(
          spec.commandLine(),
          "WORD: " + SafeText.text(word, 60) + ": must be part of one of " + known);
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
